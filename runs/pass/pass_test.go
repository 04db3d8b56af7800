package pass

import (
	"fmt"
	"math"
	"testing"

	"stillair/fusion"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// sure is a track whose distances have independent errors of a centimetre.
type sure struct{}

func (sure) SD(terms []fusion.Term) float64 {
	sum := 0.0
	for _, t := range terms {
		sum += t.S * t.S
	}
	return 0.01 * math.Sqrt(sum)
}

// rider rides on a plane, without errors.
type rider struct {
	track   fusion.Track
	fixes   []sensors.Fix
	e, n    float64 // m
	heading float64 // degrees
	t, s, v float64
}

// Metres in a degree at the equator of WGS 84 (handbook tables, from memory).
const perLon, perLat = 111319.49, 110574.28

func (r *rider) move(a, seconds float64) {
	for range int(math.Round(seconds * 10)) {
		r.track.T, r.track.S, r.track.V, r.track.A = append(r.track.T, r.t), append(r.track.S, r.s), append(r.track.V, r.v), append(r.track.A, a)
		if len(r.track.T)%10 == 1 {
			f := sensors.NewFix(r.t, r.v)
			f.LonDeg, f.LatDeg = r.e/perLon, r.n/perLat
			r.fixes = append(r.fixes, f)
		}
		way := math.Max(0, r.v+a*0.05) * 0.1
		sin, cos := math.Sincos(r.heading * math.Pi / 180)
		r.e, r.n, r.s, r.t = r.e+way*sin, r.n+way*cos, r.s+way, r.t+0.1
		r.v = math.Max(0, r.v+a*0.1)
	}
}

// upTo accelerates with constant power against drag, m·v·dv/dt = P/v − k·v² with a fade
// of 280 m, for a bike that could reach top; then it holds its speed.
func (r *rider) upTo(v, top, far float64) {
	const fade = 280.0
	for begun := r.s; r.s-begun < far; {
		a := 0.0
		if now := math.Max(r.v, 5); r.v < v {
			a = math.Min(4, top*top*top/(3*fade)*(1/now-now*now/(top*top*top)))
		}
		r.move(a, 0.1)
	}
}

func (r *rider) halt() { r.move(-3, r.v/3+2) }

// back turns on the spot.
func (r *rider) back() { r.halt(); r.heading += 180 }

func (r *rider) ride() Ride {
	return Ride{Track: &r.track, Errors: sure{}, Fixes: r.within, Setup: func(float64) string { return "" }, Fade: func(string) float64 { return 280 }}
}

// within are the fixes between two times.
func (r *rider) within(from, to float64) (out []sensors.Fix) {
	for _, f := range r.fixes {
		if f.T >= from && f.T <= to {
			out = append(out, f)
		}
	}
	return out
}

// TestFind checks what counts as a pass, on a bike that reaches 50 m/s.
func TestFind(t *testing.T) {
	tests := []struct {
		name    string
		ride    func(r *rider)
		change  func(p *Ride)
		passes  int
		reason  finding.Code
		figures int
	}{
		{name: "there and back", ride: func(r *rider) { r.upTo(50, 50, 4000); r.back(); r.upTo(50, 50, 4000); r.halt() }, passes: 1, figures: 5},
		{name: "with room for half a kilometre", ride: func(r *rider) { r.upTo(50, 50, 1550); r.back(); r.upTo(50, 50, 1550); r.halt() }, passes: 1, figures: 3},
		{name: "twice", ride: func(r *rider) {
			for range 2 {
				r.upTo(50, 50, 3000)
				r.back()
				r.upTo(50, 50, 3000)
				r.back()
			}
		}, passes: 2, figures: 5},
		{name: "one way only", ride: func(r *rider) { r.upTo(50, 50, 4000); r.halt() }},
		{name: "the same way twice", ride: func(r *rider) {
			r.upTo(50, 50, 4000)
			r.back()
			r.upTo(20, 50, 4400)
			r.back()
			r.upTo(50, 50, 4000)
			r.halt()
		}},
		{name: "without room", ride: func(r *rider) { r.upTo(50, 50, 1000); r.back(); r.upTo(50, 50, 1000); r.halt() }},
		{name: "after more than an hour", ride: func(r *rider) { r.upTo(50, 50, 4000); r.back(); r.move(0, 3700); r.upTo(50, 50, 4000); r.halt() }},
		{name: "beside another road", ride: func(r *rider) { r.upTo(50, 50, 4000); r.back(); r.e += 300; r.upTo(50, 50, 4000); r.halt() }},
		{name: "another stretch of the road", ride: func(r *rider) { r.upTo(50, 50, 4000); r.back(); r.n += 4000; r.upTo(50, 50, 4000); r.halt() }},
		{name: "across", ride: func(r *rider) { r.upTo(50, 50, 4000); r.back(); r.heading += 40; r.upTo(50, 50, 4000); r.halt() }},
		{name: "with another setup", ride: func(r *rider) { r.upTo(50, 50, 4000); r.back(); r.upTo(50, 50, 4000); r.halt() }, change: func(p *Ride) {
			p.Setup = func(at float64) string { return fmt.Sprint(at > 150) }
		}},
		{name: "slow beside the rest of the ride", ride: func(r *rider) {
			r.heading = 90
			r.upTo(50, 50, 3000)
			r.halt()
			r.heading = 0
			r.upTo(42, 42, 4000)
			r.back()
			r.upTo(42, 42, 4000)
			r.halt()
		}},
		{name: "cruising at 30 m/s", ride: func(r *rider) { r.upTo(30, 50, 4000); r.back(); r.upTo(30, 50, 4000); r.halt() }},
		{name: "a little less than it had", ride: func(r *rider) { r.upTo(47, 50, 4000); r.back(); r.upTo(47, 50, 4000); r.halt() }},
		{name: "a little less, its drag unknown", ride: func(r *rider) { r.upTo(47, 50, 4000); r.back(); r.upTo(47, 50, 4000); r.halt() }, change: func(p *Ride) {
			p.Fade = func(string) float64 { return 180 }
		}, passes: 1, reason: codeEased, figures: 5},
		{name: "once as fast in no time", ride: func(r *rider) {
			r.upTo(50, 50, 4000)
			r.back()
			r.upTo(50, 50, 4000)
			r.back()
			r.upTo(49.5, 90, 4000)
			r.halt()
		}, passes: 1, reason: codeEased, figures: 5},
		{name: "already going at its beginning", ride: func(r *rider) { r.v = 46; r.upTo(50, 50, 4000); r.back(); r.upTo(50, 50, 4000); r.halt() },
			passes: 1, reason: codeUnseen, figures: 5},
		{name: "into a coast-down", ride: func(r *rider) { r.upTo(50, 50, 4000); r.back(); r.upTo(50, 50, 4000); r.halt() }, change: func(p *Ride) {
			slows := 0
			for p.Track.T[slows] < 50 || p.Track.V[slows] > 49 {
				slows++
			}
			p.Coasts = []fusion.Span{{From: p.Track.T[slows], To: p.Track.T[slows] + 5}}
		}, passes: 1, reason: codeRunUp, figures: 5},
		{name: "much slower one way", ride: func(r *rider) { r.upTo(50, 50, 4000); r.back(); r.upTo(40, 40, 4000); r.halt() }, passes: 1, reason: codeApart, figures: 5},
		{name: "with a hole in one leg", ride: func(r *rider) { r.upTo(50, 50, 1900); r.back(); r.upTo(50, 50, 1900); r.halt() }, change: func(p *Ride) {
			p.Track.Gaps = []fusion.Span{{From: 21, To: 44}}
		}},
		{name: "without positions", ride: func(r *rider) {
			r.upTo(50, 50, 4000)
			r.back()
			r.upTo(50, 50, 4000)
			r.halt()
			for i := range r.fixes {
				r.fixes[i].LatDeg, r.fixes[i].LonDeg = math.NaN(), math.NaN()
			}
		}},
		{name: "standing", ride: func(r *rider) { r.move(0, 100) }},
		{name: "nothing", ride: func(*rider) {}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := &rider{}
			tt.ride(r)
			in := r.ride()
			if tt.change != nil {
				tt.change(&in)
			}
			got := Find(in)
			if len(got) != tt.passes {
				t.Fatalf("%d passes, want %d: %+v", len(got), tt.passes, got)
			}
			for _, p := range got {
				if len(p.Figures) != tt.figures || p.Accepted() != (tt.reason == "") || tt.reason != "" && !finding.Any(p.Reasons, tt.reason) {
					t.Errorf("%d figures, want %d; reasons %v, want %v", len(p.Figures), tt.figures, p.Reasons, tt.reason)
				}
			}
		})
	}
}

// TestFigures compares the speeds of a pass in wind with the simulated ones.
func TestFigures(t *testing.T) {
	r := &rider{heading: 30}
	r.upTo(52, 52, 5000)
	r.back()
	r.upTo(48, 48, 5000)
	r.halt()
	in := r.ride()
	in.ScaleSE = 0.002
	all := Find(in)
	if len(all) != 1 {
		t.Fatalf("%d passes", len(all))
	}
	p := all[0]
	if math.Abs(p.There.BearingDeg-30) > 0.1 || math.Abs(p.Back.BearingDeg-210) > 0.1 {
		t.Errorf("bearings of %.1f and %.1f degrees", p.There.BearingDeg, p.Back.BearingDeg)
	}
	for _, f := range p.Figures {
		// A few fades on, the speed is some hundredths of a percent below the top speed.
		for _, v := range []struct{ got, want, se float64 }{{f.There.X, 52, f.There.SE}, {f.Back.X, 48, f.Back.SE}, {f.Mean.X, 50, f.Mean.SE}, {f.Half.X, 2, f.Half.SE}} {
			if math.Abs(v.got-v.want) > 0.002*50 || !(v.se > 0) {
				t.Errorf("%s: %.3f ± %.3f m/s, want %.1f", f.Name, v.got, v.se, v.want)
			}
		}
		// Two ends of a centimetre each over the time, and the scale, which is one for both.
		over := 0.01 * math.Sqrt2 * 52 / f.Distance
		if want := math.Hypot(over, 0.002*52); math.Abs(f.There.SE-want) > 0.01*want {
			t.Errorf("%s: ± %.5f m/s, want %.5f", f.Name, f.There.SE, want)
		}
		if f.Half.SE > 0.1*f.Mean.SE && f.Distance >= 1000 {
			t.Errorf("%s: the scale is one for both, but the half difference has ± %.5f beside %.5f", f.Name, f.Half.SE, f.Mean.SE)
		}
		mid := func(s fusion.Span) float64 { return in.Track.At((s.From+s.To)/2).S - r.turn() }
		if there, back := mid(f.Times[0]), mid(f.Times[1]); math.Abs(there+back) > 5 {
			t.Errorf("%s: measured %.0f m before the turn and %.0f m after", f.Name, -there, back)
		}
	}
}

// turn is the distance at which the rider first turned round, m.
func (r *rider) turn() float64 {
	for i := 1; i < len(r.track.V); i++ {
		if r.track.V[i] == 0 && r.track.V[i-1] > 0 {
			return r.track.S[i]
		}
	}
	return math.NaN()
}
