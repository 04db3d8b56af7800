package detect

import (
	"math"
	"math/rand/v2"
	"testing"
)

// whiteErrors are the errors of a speed with independent points.
type whiteErrors float64

func (w whiteErrors) SpeedCov(times []float64) [][]float64 {
	out := make([][]float64, len(times))
	for i := range out {
		out[i] = make([]float64, len(times))
		out[i][i] = float64(w * w)
	}
	return out
}

// TestFeigned distinguishes a gear change, which loses speed permanently, from
// an oscillation of the accelerometer that the satellite speeds correct.
func TestFeigned(t *testing.T) {
	const sd, at = 0.05, 60
	tests := []struct {
		name string
		v    func(t float64) float64 // about the break at 0
		want bool
	}{
		{"a gear change of 0.3 s", func(t float64) float64 { return 30 + 2.5*t - 0.9*math.Max(0, math.Min(1, (t+0.15)/0.3)) }, false},
		{"a swing and back", func(t float64) float64 { return 30 + 2.5*t - 0.9*math.Exp(-t*t/0.08) }, true},
		{"the throttle closed for good", func(t float64) float64 { return 30 + 2.5*math.Min(t, 0) - 0.6*math.Max(t, 0) }, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(1, 1))
			s := &series{errs: whiteErrors(sd)}
			for i := range 2*at + 1 {
				s.v = append(s.v, tt.v(float64(i-at)*step)+sd/5*rng.NormFloat64())
			}
			s.quick = slope(s.v, 2)
			if got := s.artefact(0, at, 2*at); got != tt.want {
				t.Errorf("feigned: %v, want %v", got, tt.want)
			}
		})
	}
}

// TestSlowLaunchIsNotBesideItself: a launch is never called slower than itself.
func TestSlowLaunchIsNotBesideItself(t *testing.T) {
	if f := notFull(20, 20); f.Code != codeLaunchSlow {
		t.Errorf("said %v of the best launch of a ride", f)
	}
	if f := notFull(20, 60); f.Code != codeLaunchPartial {
		t.Errorf("said %v of a launch at a third of the best", f)
	}
}
