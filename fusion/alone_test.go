package fusion_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion"
	"stillair/fusion/opendrive"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// lines is the speed on straight lines between fixes, corrected for the lag.
func lines(fixes []sensors.Fix, lag float64) func(t float64) float64 {
	return func(t float64) float64 {
		t += lag
		i, _ := slices.BinarySearchFunc(fixes, t, func(f sensors.Fix, t float64) int {
			if f.T < t {
				return -1
			}
			return 1
		})
		switch i {
		case 0:
			return fixes[0].Speed
		case len(fixes):
			return fixes[len(fixes)-1].Speed
		}
		a, b := fixes[i-1], fixes[i]
		return a.Speed + (b.Speed-a.Speed)*(t-a.T)/(b.T-a.T)
	}
}

// TestFewFixes compares the real drive, with few fixes, with and without its
// accelerometer, with its wheel speeds and with straight lines between the
// fixes, corrected for the true lag.
func TestFewFixes(t *testing.T) {
	for _, motion := range []bool{true, false} {
		for _, every := range []int{1, 2, 5, 10, 20, 30, 50, 100} {
			t.Run(fmt.Sprintf("motion %v, a fix every %.1f s", motion, float64(every)/10), func(t *testing.T) {
				d, err := opendrive.Read("../testdata", every)
				if err != nil {
					t.Fatal(err)
				}
				if !motion {
					d.Log.Motion = nil
				}
				tr, err := fusion.Smooth(&d.Log, fusion.Options{})
				if err != nil {
					t.Fatal(err)
				}
				shift := 0.0
				if len(tr.GNSSOnly) > 0 {
					shift = 0.18 - tr.Lag.Seconds // which is not known then
				}
				_, rms := d.Against(func(at float64) float64 { return tr.At(at + shift).V }, 3, 49)
				_, drawn := d.Against(lines(d.Log.Fixes, 0.18), 3, 49)
				t.Logf("lag %.3f ± %.3f s, %.3f m/s rms off the wheels, straight lines %.3f, %+v %v", tr.Lag.Seconds, tr.Lag.SE, rms, drawn, tr.Receiver, tr.Notes)
				if !(rms <= drawn*1.02) {
					t.Errorf("%.3f m/s rms off the wheels, straight lines %.3f", rms, drawn)
				}
				for i := range tr.T {
					if x := tr.V[i] + tr.A[i] + tr.S[i] + tr.VSD[i] + tr.ASD[i]; math.IsNaN(x) || math.IsInf(x, 0) {
						t.Fatalf("not finite at %.2f s", tr.T[i])
					}
				}
			})
		}
	}
}

// TestWhyAlone checks the reason given for not using an accelerometer.
func TestWhyAlone(t *testing.T) {
	tests := []struct {
		name  string
		spoil func(*sensors.Log)
		why   finding.Code
	}{
		{"none", func(l *sensors.Log) { l.Motion = nil }, "fusion.no_motion"},
		{"few readings", func(l *sensors.Log) { l.Motion = l.Motion[:50] }, "fusion.few_motion"},
		{"two readings a second", func(l *sensors.Log) { l.Motion = opendrive.Thinned(l.Motion, 2) }, "fusion.slow_motion"},
		{"another clock", func(l *sensors.Log) {
			for i := range l.Motion {
				l.Motion[i].T += 1000
			}
		}, "fusion.clocks_apart"},
		{"it reads nothing", func(l *sensors.Log) {
			for i := range l.Motion {
				l.Motion[i].Force = r3.Vec{}
			}
		}, "mount.no_direction"},
		{"it reads gravity alone", func(l *sensors.Log) {
			for i := range l.Motion {
				l.Motion[i].Force = r3.Vec{Z: 9.8}
			}
		}, "mount.no_direction"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d, err := opendrive.Read("../testdata", 1)
			if err != nil {
				t.Fatal(err)
			}
			tt.spoil(&d.Log)
			tr, err := fusion.Smooth(&d.Log, fusion.Options{})
			if err != nil {
				t.Fatal(err)
			}
			if len(tr.GNSSOnly) != 1 || !tr.GNSSOnly[0].Why.Is(tt.why) || !finding.Any(tr.Notes, "fusion.satellites_alone") {
				t.Errorf("without the accelerometer because of %v, notes %v, want %s", tr.GNSSOnly, tr.Notes, tt.why)
			}
			shift := 0.18 - tr.Lag.Seconds // which is not known then
			if _, rms := d.Against(func(at float64) float64 { return tr.At(at + shift).V }, 3, 57); rms > 0.07 {
				t.Errorf("%.3f m/s rms off the wheels", rms)
			}
		})
	}
}
