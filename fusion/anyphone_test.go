package fusion_test

import (
	"math"
	"testing"

	"stillair/fusion"
	"stillair/fusion/opendrive"
)

// TestAnyMotionRate compares the real drive with its wheels for every way in
// which a phone may stamp its motion.
func TestAnyMotionRate(t *testing.T) {
	for _, c := range opendrive.Retimings() {
		t.Run(c.Name, func(t *testing.T) {
			d, err := opendrive.Read("../testdata", 1)
			if err != nil {
				t.Fatal(err)
			}
			c.Spoil(&d.Log)
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
