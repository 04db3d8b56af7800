package foreign

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs"
	"stillair/sensors/finding"
)

type anticKind int

const (
	none anticKind = iota
	wheelie
	spin // of the rear wheel
	hop
)

// antic is what a launch does in addition to going forward: from when on and for how long, s,
// and how much (wheelie: rad; others: share of the force that is lost).
type antic struct {
	kind              anticKind
	from, lasts, size float64
	hopHz             float64
}

func drawnAntic(kind anticKind, rng *rand.Rand) antic {
	between := func(a, b float64) float64 { return a + (b-a)*rng.Float64() }
	a := antic{kind: kind, from: between(0.2, 1.2), lasts: between(0.5, 1.8), hopHz: between(7, 12)}
	switch kind {
	case wheelie:
		a.size = between(0.05, 0.4)
	case spin:
		a.size = between(0.2, 0.6)
	case hop:
		a.size = between(0.3, 0.9)
	}
	return a
}

// left is the share of the force that reaches the road.
func (a antic) left(t float64) float64 {
	u := (t - a.from) / a.lasts
	if u <= 0 || u >= 1 {
		return 1
	}
	switch a.kind {
	case spin:
		return 1 - a.size*math.Min(1, math.Min(8*u, 8*(1-u)))
	case hop:
		return 1 - a.size*math.Sin(math.Pi*u)*(0.5-0.5*math.Cos(2*math.Pi*a.hopHz*(t-a.from)))
	}
	return 1
}

// lift is the angle of a wheelie with both derivatives: up slowly, and down faster, as
// a polynomial with a smooth beginning and end.
func (a antic) lift(t float64) (angle, rate, more float64) {
	if a.kind != wheelie {
		return 0, 0, 0
	}
	at := func(t float64) float64 {
		u := (t - a.from) / a.lasts
		if u <= 0 || u >= 1 {
			return 0
		}
		const peak = 0.6 // of the time
		return a.size * math.Pow(u, 3) * math.Pow(1-u, 2) / (math.Pow(peak, 3) * math.Pow(1-peak, 2))
	}
	const d = 1e-3
	return at(t), (at(t+d) - at(t-d)) / (2 * d), (at(t+d) - 2*at(t) + at(t-d)) / (d * d)
}

// mostLift is how far a launch raised the front, rad, before it ended.
func (d event) mostLift() float64 {
	most := 0.0
	for t := 0.0; t < d.to-d.from; t += 0.02 {
		angle, _, _ := d.antic.lift(t)
		most = math.Max(most, angle)
	}
	return most
}

// TestAntics: launches with a wheelie, a spinning rear wheel or hops are found, and the
// bands of their times hold. Clear wheelies get a caution where there is a gyroscope, and
// ordinary launches get none.
func TestAntics(t *testing.T) {
	const clear = 0.2 // rad
	for _, tt := range []struct {
		name string
		kind anticKind
	}{{"none", none}, {"wheelie", wheelie}, {"spin", spin}, {"hop", hop}} {
		t.Run(tt.name, func(t *testing.T) {
			var n launchTally
			lifted, said, wrongly, dropped := 0, 0, 0, 0
			each(t, few(), func(w *world) { w.launchesWith(tt.kind) }, func(seed uint64, w *world, res *runs.Result) {
				n.add(t, seed, w, res, func(d event, r *runs.Run) {
					is, up := finding.Any(r.Cautions, "launch.wheelie"), d.mostLift()
					switch {
					case up > clear && w.phone.gyro && d.antic.from+d.antic.lasts < d.to-d.from:
						lifted++
						if is {
							said++
						}
					case is && up == 0:
						wrongly++
					}
					if finding.Any(r.Cautions, "launch.thrust_dropped") {
						dropped++
					}
				})
			})
			n.judge(t)
			t.Logf("of %d wheelies %d said, %d others; %d drops of thrust said", lifted, said, wrongly, dropped)
			if float64(said) < 0.9*float64(lifted) || wrongly > 0 {
				t.Errorf("of %d wheelies %d said, %d others", lifted, said, wrongly)
			}
			if tt.kind == none && float64(dropped) > 0.02*float64(n.found) {
				t.Errorf("%d of %d ordinary launches are said to have lost thrust", dropped, n.found)
			}
		})
	}
}

// launchesWith is six launches with an antic each, drawn apart from everything else.
func (w *world) launchesWith(kind anticKind) {
	rng := rand.New(rand.NewPCG(uint64(1e6*w.cda), 17))
	w.phone.ahead, w.phone.high = 0.4+0.9*rng.Float64(), 0.7+0.5*rng.Float64()
	for range 6 {
		w.antic = drawnAntic(kind, rng)
		w.start(math.Min(0.85*w.top(), 40), false)
		w.events[len(w.events)-1].antic = w.antic
		w.antic = antic{}
		w.stopAndTurn(3.5)
		w.accelerate(0.4, 12)
		w.brake(2.5, 0)
	}
}
