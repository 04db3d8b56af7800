package fusion_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/fusion"
	"stillair/fusion/internal/opendrive"
	"stillair/sensors"
)

// retimed is one way in which a phone hands over the same motion.
type retimed struct {
	name  string
	spoil func(*sensors.Log)
}

func retimings() []retimed {
	out := []retimed{{"whole", func(*sensors.Log) {}}}
	for _, r := range []struct {
		name string
		hz   float64
	}{{"5 Hz", 5}, {"8 Hz", 8}, {"10 Hz", 10}, {"12.5 Hz", 12.5}, {"16 Hz", 16}, {"20 Hz", 20}, {"25 Hz", 25}, {"30 Hz", 30}, {"40 Hz", 40}} {
		out = append(out, retimed{r.name, func(l *sensors.Log) { l.Motion = thinned(l.Motion, r.hz) }})
	}
	return append(out,
		retimed{"jittered", func(l *sensors.Log) { jitter(l.Motion) }},
		retimed{"bursts of eight", func(l *sensors.Log) { bursts(l.Motion) }})
}

// thinned keeps the reading next after each tick of a clock of that rate.
func thinned(all []sensors.Motion, hz float64) []sensors.Motion {
	var out []sensors.Motion
	next := all[0].T
	for _, m := range all {
		if m.T >= next-1e-6 {
			out = append(out, m)
			next += 1 / hz
		}
	}
	return out
}

// jitter stamps each reading up to 4 ms off, never out of order.
func jitter(all []sensors.Motion) {
	rng := rand.New(rand.NewPCG(7, 8))
	for i := range all {
		all[i].T += 0.004 * (2*rng.Float64() - 1)
	}
}

// bursts stamps eight readings at a time within a millisecond, when the last
// of them is there.
func bursts(all []sensors.Motion) {
	for i := 0; i < len(all); i += 8 {
		end := min(i+8, len(all))
		last := all[end-1].T
		for k := i; k < end; k++ {
			all[k].T = last + 1e-4*float64(k-end+1)
		}
	}
}

// TestAnyMotionRate holds the real drive against its wheels for every way in
// which a phone may stamp its motion.
func TestAnyMotionRate(t *testing.T) {
	for _, c := range retimings() {
		t.Run(c.name, func(t *testing.T) {
			d, err := opendrive.Read("../testdata", 1)
			if err != nil {
				t.Fatal(err)
			}
			c.spoil(&d.Log)
			tr, err := fusion.Smooth(&d.Log, fusion.Options{})
			if err != nil {
				t.Fatal(err)
			}
			_, rms := d.Against(func(at float64) float64 { return tr.At(at).V }, 3, 57)
			t.Logf("lag %.3f ± %.3f s, rms %.3f m/s, notes %v", tr.Lag.Seconds, tr.Lag.SE, rms, tr.Notes)
			if !(rms <= 0.10) {
				t.Errorf("%.3f m/s rms off the wheels, want at most 0.10", rms)
			}
			for i := range tr.T {
				if x := tr.V[i] + tr.A[i] + tr.S[i] + tr.VSD[i] + tr.ASD[i]; math.IsNaN(x) || math.IsInf(x, 0) {
					t.Fatalf("not finite at %.2f s", tr.T[i])
				}
			}
		})
	}
}
