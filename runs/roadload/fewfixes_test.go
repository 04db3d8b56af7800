package roadload_test

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs/roadload"
)

var fewFixDays = flag.Int("fewfixes", 24, "how many days of runs with few fixes to fit")

// TestFewFixes: runs of two to five fixes give a road load with a wide band that
// holds. They are from light bikes with much drag, which pass the speed range in a
// few seconds, and from receivers that report every two or four seconds. Many of
// them rely on the prior for tyres from the literature; their rolling resistance
// is drawn uniformly from 0.008 to 0.030.
func TestFewFixes(t *testing.T) {
	days := *fewFixDays
	if testing.Short() {
		days = 8
	}
	for every := range 3 {
		n, cda, crr, force := 0, 0, 0, 0
		var relative sample
		for seed := 0; n < days && seed < 100*days; seed++ {
			r := rand.New(rand.NewPCG(uint64(seed), uint64(101+every)))
			w := anyBike(r)
			if every == 0 {
				w.CdA, w.Mass = 0.6+0.7*r.Float64(), 90+60*r.Float64()
				w.To = w.From * (0.5 + 0.3*r.Float64())
			}
			w.Crr = 0.008 + 0.022*r.Float64() // unlike the prior for tyres in general
			runs := thinned(w.Ride(r, 0, 0, 0), 1<<every)
			if fewest, most := fixesOf(runs); fewest < 2 || most > 5 {
				continue
			}
			n++
			opts := roadload.DefaultOptions(w.Differs)
			e, err := roadload.Fit(runs, opts)
			if err != nil {
				t.Errorf("every %d s, seed %d: %v", 1<<every, seed, err)
				continue
			}
			l := e.Loads[0]
			within := func(ci [2]float64, x float64) int {
				if ci[0] < x && x < ci[1] {
					return 1
				}
				return 0
			}
			cda, crr = cda+within(l.CdACI, w.CdA), crr+within(l.CrrCI, w.Rolls())
			middle := (w.From + w.To) / 2
			if f := e.Force(0, middle, w.Entries(opts)); math.Abs(f.X-w.Force(middle)) < 1.96*f.SE {
				force++
			}
			relative = append(relative, l.CdA.SE/w.CdA)
		}
		t.Logf("every %d s: %d days; bands of CdA held on %d, of Crr on %d, force on %d; standard error of CdA %.0f %%", 1<<every, n, cda, crr, force, 100*relative.mean())
		least := float64(n)*0.95 - 2.6*math.Sqrt(0.95*0.05*float64(n))
		if float64(min(cda, crr)) < least {
			t.Errorf("every %d s: bands held too seldom", 1<<every)
		}
	}
}

// thinned keeps every n-th fix.
func thinned(runs []roadload.Run, n int) []roadload.Run {
	for i := range runs {
		r := &runs[i]
		var t, v, pos []float64
		for j := 0; j < len(r.T); j += n {
			t, v = append(t, r.T[j]), append(v, r.V[j])
			if r.Pos != nil {
				pos = append(pos, r.Pos[j])
			}
		}
		r.T, r.V, r.Pos = t, v, pos
	}
	return runs
}

// fixesOf is the minimum and the maximum number of fixes of a run.
func fixesOf(runs []roadload.Run) (fewest, most int) {
	fewest = len(runs[0].T)
	for _, r := range runs {
		fewest, most = min(fewest, len(r.T)), max(most, len(r.T))
	}
	return fewest, most
}
