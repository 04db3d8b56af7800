package fusion_test

import (
	"math"
	"testing"

	"stillair/fusion"
)

// evenRide is a ride at constant speed with a fix every second.
func evenRide(seconds, vibration float64) fusion.Known {
	k := fusion.Known{WhiteSD: 0.06, DriftSD: 1e-6, DriftTime: 4}
	for t := 0.0; t <= seconds; t += 0.01 {
		k.T, k.V, k.Vibration = append(k.T, t), append(k.V, 20), append(k.Vibration, vibration)
	}
	for t := 0.5; t < seconds; t++ {
		k.Fixes = append(k.Fixes, t)
	}
	return k
}

// TestBoundClosedForm compares the bound with the closed form of the steady
// state in which only vibration changes the speed: a random walk of variance q
// per second, observed once a second with variance r, is known at a fix, from
// both sides, with the variance r·√(q/(q+4r)) (the Wiener-Kolmogorov smoother of
// a local-level model: Harvey, Forecasting, Structural Time Series Models and
// the Kalman Filter, 1989, section 4.6).
func TestBoundClosedForm(t *testing.T) {
	for _, q := range []float64{0.0004, 0.004, 0.04} {
		tr := fusion.Bound(evenRide(201, q))
		r := 0.06 * 0.06
		want := math.Sqrt(r * math.Sqrt(q/(q+4*r)))
		got := tr.VSD[10050]
		// the bias is unknown as well, but two hundred fixes pin it down
		if math.Abs(got/want-1) > 0.02 {
			t.Errorf("q = %v: standard deviation %.5f m/s at a fix in the middle, want %.5f", q, got, want)
		}
	}
}

// TestBoundFalls: better sensors can only help.
func TestBoundFalls(t *testing.T) {
	base := fusion.Bound(evenRide(60, 0.01)).VSD[3000]
	for _, c := range []struct {
		name   string
		better func(*fusion.Known)
	}{
		{"receiver", func(k *fusion.Known) { k.WhiteSD /= 2 }},
		{"vibration", func(k *fusion.Known) {
			for i := range k.Vibration {
				k.Vibration[i] /= 4
			}
		}},
		{"more fixes", func(k *fusion.Known) {
			k.Fixes = nil
			for t := 0.1; t < 60; t += 0.1 {
				k.Fixes = append(k.Fixes, t)
			}
		}},
		{"at rest", func(k *fusion.Known) { k.Still = []fusion.Span{{From: 29, To: 31}} }},
	} {
		k := evenRide(60, 0.01)
		c.better(&k)
		if got := fusion.Bound(k).VSD[3000]; got >= base {
			t.Errorf("%s: %.5f m/s, not below %.5f", c.name, got, base)
		}
	}
}
