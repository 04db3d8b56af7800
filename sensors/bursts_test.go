package sensors

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestSpread gives a minute of even motion the stamps of bursts: the readings get
// back the times at which they were measured, and the jitter of the bursts is
// reported.
func TestSpread(t *testing.T) {
	for _, tt := range []struct {
		name   string
		size   func(rng *rand.Rand) int
		jitter float64 // s
		hole   bool    // two seconds are missing
		within float64 // s by which a reading may be off
		same   bool    // nothing is changed
	}{
		{name: "one by one", size: func(*rand.Rand) int { return 1 }, same: true},
		{name: "one by one, with jitter", size: func(*rand.Rand) int { return 1 }, jitter: 0.002, same: true},
		{name: "pairs", size: func(*rand.Rand) int { return 2 }, within: 1e-6},
		{name: "8", size: func(*rand.Rand) int { return 8 }, within: 1e-6},
		{name: "8, with a hole", size: func(*rand.Rand) int { return 8 }, hole: true, within: 1e-3},
		{name: "40", size: func(*rand.Rand) int { return 40 }, within: 1e-6},
		{name: "any number", size: func(rng *rand.Rand) int { return 5 + rng.IntN(30) }, within: 1e-6},
		{name: "20, with jitter", size: func(*rand.Rand) int { return 20 }, jitter: 0.01, within: 0.05},
	} {
		rng := rand.New(rand.NewPCG(8, 20))
		log := &Log{}
		for i := 0; i < 6000; {
			n := tt.size(rng)
			last := float64(i+n-1)/100 + tt.jitter*rng.NormFloat64()
			for k := range n {
				at := float64(i + k)
				if tt.hole && at >= 3000 && at < 3200 {
					continue
				}
				log.Motion = append(log.Motion, Motion{T: last - 1e-4*float64(n-1-k), Force: r3.Vec{X: at / 100}})
			}
			i += n
		}
		got := Spread(log)
		if tt.same {
			if got != log {
				t.Errorf("%s: changed, %v", tt.name, got.Notes)
			}
			continue
		}
		if len(got.Motion) != len(log.Motion) || len(got.Notes) != 1 {
			t.Errorf("%s: %d of %d readings, notes %v", tt.name, len(got.Motion), len(log.Motion), got.Notes)
			continue
		}
		for i, m := range got.Motion {
			if i > 50 && math.Abs(m.T-m.Force.X) > tt.within || i > 0 && !(m.T > got.Motion[i-1].T) {
				t.Errorf("%s: a reading of %.3f s is at %.3f s", tt.name, m.Force.X, m.T)
				break
			}
		}
		if jitter, _ := got.Notes[0].What.Arg("jitter"); math.Abs(jitter.X-tt.jitter) > 0.1*tt.jitter+1e-4 {
			t.Errorf("%s: a jitter of %.4f s, want %.4f s", tt.name, jitter.X, tt.jitter)
		}
	}
}
