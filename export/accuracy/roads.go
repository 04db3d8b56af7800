package accuracy

import (
	"math/rand/v2"

	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// The figures of coast-downs, relative to the truth.
const (
	cda = "CdA"
	crr = "Crr"
)

// coastTest is a simulated test that goes straight into the fit, without the
// path from a log, so that thousands take a minute.
type coastTest struct {
	loadtest.Test
	known roadload.Options
	rough float64 // standard deviation of the road's slope about the mean; 0: smooth
	noPos bool    // fixes without positions
	draw  uint64  // separates the random numbers of cases
}

const roughLength = 150.0 // m over which the slope of a rough road changes

// roll rides the test with a seed.
func (c coastTest) roll(seed uint64) []roadload.Run {
	r := rand.New(rand.NewPCG(seed, c.draw))
	if c.rough > 0 {
		c.Road = loadtest.Rough(r, c.rough, roughLength)
	}
	runs := c.Ride(r)
	for i := range runs {
		if c.noPos {
			runs[i].Pos = nil
		}
	}
	return runs
}

// bound is the Cramér-Rao bound of CdA and Crr for the true noise of the test,
// on a smooth road without heights: the reference of the limits.
func (c coastTest) bound(runs []roadload.Run) (cdaVar, crrVar float64, err error) {
	known := c.known
	known.Noise = c.Noise
	known.Noise.RoadSD = 0
	bare := append([]roadload.Run(nil), runs...)
	for i := range bare {
		bare[i].Pos, bare[i].Height = nil, nil
	}
	cov, err := roadload.Bound(bare, []roadload.Design{{CdA: c.Bike.CdA, Crr: c.Bike.Crr}}, known)
	if err != nil {
		return 0, 0, err
	}
	return cov.At(0, 0), cov.At(1, 1), nil
}

// ride rolls, fits and compares.
func (c coastTest) ride(seed uint64) (Record, error) {
	runs := c.roll(seed)
	e, err := roadload.Fit(runs, c.known)
	if err != nil {
		return Record{}, err
	}
	cdaVar, crrVar, err := c.bound(runs)
	if err != nil {
		return Record{}, err
	}
	var r Record
	l := e.Loads[0]
	r.Values = append(r.Values,
		relative(cda, l.CdA, l.CdACI, c.Bike.CdA, cdaVar),
		relative(crr, l.Crr, l.CrrCI, c.Bike.Crr, crrVar))
	return r, nil
}

// relative is a figure as a share of its truth.
func relative(what string, v measure.Value, ci [2]float64, truth, boundVar float64) Value {
	return Value{What: what, Err: v.X/truth - 1, SE: v.SE / truth, Bound: root(boundVar) / truth,
		Held: ci[0] <= truth && truth <= ci[1]}
}

func smoothRoad() Study {
	s := Study{Name: "coast-downs", Title: "Coast-downs on a smooth road", Unit: percent,
		About: "Five opposite pairs from 110 to 30 km/h, fixes once a second, each pair in a wind of its own with gusts. The fit knows neither the gusts nor the receiver's errors: it learns them. That the road is smooth it knows in the first cases; in the others it knows nothing and has no positions, so that the road might be rough, and its intervals are a little wide."}
	for i, b := range loadtest.Bikes {
		for _, wind := range []float64{0.5, 1.5} {
			t := coastTest{Test: loadtest.Default(b, wind), known: loadtest.KnownSmooth(wind), noPos: true, draw: uint64(100 + i)}
			limits := []Limit{atMost(cda, Bias, 0.003), atMost(crr, Bias, 0.01), atMost(cda, OverBound, 1.10),
				atMost(crr, OverBound, 1.10), inside(cda, Coverage, 0.93, 0.97), inside(crr, Coverage, 0.93, 0.97)}
			if wind == 1.5 {
				limits = append(limits, atMost(cda, Spread, 0.016), atMost(crr, Spread, 0.027))
			}
			s.Cases = append(s.Cases, Case{Name: b.Name + ", wind " + metres(wind), Seeds: 1000, Limits: limits, Ride: t.ride})
			t.known = loadtest.Known(wind)
			s.Cases = append(s.Cases, Case{Name: b.Name + ", wind " + metres(wind) + ", road unknown", Seeds: 300, Ride: t.ride,
				Limits: []Limit{atMost(cda, OverBound, 1.15), atMost(crr, OverBound, 1.15), inside(cda, Coverage, 0.93, 0.985), inside(crr, Coverage, 0.93, 0.985)}})
		}
	}
	return s
}

func roughRoad() Study {
	s := Study{Name: "rough-road", Title: "Coast-downs on a rough road", Unit: percent,
		About: "The slope of the road wanders by 0.2 % over 150 m, the same for all runs. The bound is that of a smooth road. Runs that begin at the two ends of one stretch mirror each other and cannot tell its profile from drag; a barometer can, or starts that lie apart. They lie apart by chance, or each pair starts farther on its way than the one before, out and back. The commonest test of all, every pair from the same two places by a phone without a barometer, has neither."}
	for i, b := range loadtest.Bikes {
		for _, c := range []struct {
			name    string
			baro    bool
			scatter float64
			farther float64 // along its direction each pair starts than the one before, m
			noPos   bool
			limits  []Limit
		}{
			{"barometer", true, 30, 0, false, []Limit{atMost(cda, OverBound, 1.4), inside(cda, Coverage, 0.92, 0.97)}},
			{"starts 250 m apart", false, 250, 0, false, []Limit{inside(cda, Coverage, 0.92, 0.97)}},
			{"each pair 200 m farther on", false, 30, 200, false, []Limit{atMost(cda, OverBound, 1.4), inside(cda, Coverage, 0.92, 0.97)}},
			{"all pairs from the same two places", false, 30, 0, false, []Limit{inside(cda, Coverage, 0.92, 0.985), inside(crr, Coverage, 0.92, 0.985)}},
			{"no positions", false, 30, 0, true, []Limit{inside(cda, Coverage, 0.90, 0.97), inside(crr, Coverage, 0.90, 0.995)}},
		} {
			t := coastTest{Test: loadtest.Default(b, 1.5), known: loadtest.Known(1.5), rough: 0.002, noPos: c.noPos, draw: uint64(120 + i)}
			t.Baro, t.Press, t.Scatter, t.Farther, t.Length = c.baro, 0.15, c.scatter, c.farther, 1200
			s.Cases = append(s.Cases, Case{Name: b.Name + ", " + c.name, Seeds: 300, Ride: t.ride,
				Limits: c.limits})
		}
	}
	return s
}

func gustyDays() Study {
	s := Study{Name: "gusts", Title: "Days gustier or calmer than expected", Unit: percent,
		About: "As on a road known to be smooth, in a wind of 1.5 m/s, but the gusts are half or twice what the fit expects before it has seen the runs."}
	for i, b := range loadtest.Bikes {
		for _, c := range []struct {
			name   string
			factor float64
		}{{"half the gusts", 0.5}, {"twice the gusts", 2}} {
			t := coastTest{Test: loadtest.Default(b, 1.5), known: loadtest.KnownSmooth(1.5), noPos: true, draw: uint64(140 + i)}
			t.Noise.GustSD *= c.factor
			s.Cases = append(s.Cases, Case{Name: b.Name + ", " + c.name, Seeds: 500, Ride: t.ride,
				Limits: []Limit{inside(cda, Coverage, 0.92, 0.97), inside(crr, Coverage, 0.92, 0.97)}})
		}
	}
	return s
}
