package fusion_test

import (
	"math"
	"testing"

	"stillair/fusion"
	"stillair/fusion/opendrive"
)

// TestOpenDrive checks the smoother on a real road against wheel speeds. The
// lag of 0.18 s is the one at which the receiver's speeds lie closest to the
// wheels', see testdata/open-drive/README.md.
func TestOpenDrive(t *testing.T) {
	cases := []struct {
		name  string
		every int
		rms   float64 // m/s
	}{
		{name: "10 Hz", every: 1, rms: 0.07},
		{name: "thinned to 1 Hz", every: 10, rms: 0.10},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			d, err := opendrive.Read("../testdata", c.every)
			if err != nil {
				t.Fatal(err)
			}
			tr, err := fusion.Smooth(&d.Log, fusion.Options{})
			if err != nil {
				t.Fatal(err)
			}
			scale, rms := d.Against(func(at float64) float64 { return tr.At(at).V }, 3, 57)
			t.Logf("lag %.3f ± %.3f s, receiver %+v, scale %.4f, rms %.3f m/s", tr.Lag.Seconds, tr.Lag.SE, tr.Receiver, scale, rms)
			if math.Abs(tr.Lag.Seconds-0.18) > 0.06 {
				t.Errorf("lag %.3f s, want 0.18 ± 0.06", tr.Lag.Seconds)
			}
			if rms > c.rms {
				t.Errorf("%.3f m/s rms off the wheels, want at most %.2f", rms, c.rms)
			}
			whole := fusion.Span{From: tr.T[0], To: tr.T[len(tr.T)-1]}
			a, ok1 := tr.TimeAtSpeed(9, whole)
			b, ok2 := tr.TimeAtSpeed(19, whole)
			if !ok1 || !ok2 {
				t.Fatal("9 or 19 m/s not reached")
			}
			dt, se := tr.Between(a, b)
			want := d.Time(scale, 9, 19)
			t.Logf("9 to 19 m/s: %.3f ± %.3f s, wheels %.3f s", dt, se, want)
			if math.Abs(dt-want) > 0.15 {
				t.Errorf("9 to 19 m/s in %.3f s, the wheels say %.3f", dt, want)
			}
		})
	}
}
