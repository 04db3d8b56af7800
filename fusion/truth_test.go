package fusion_test

import (
	"math"
	"testing"

	"stillair/fusion"
	"stillair/sensors/sim"
)

// townAndLaunches is an invented ride with turns, stops and launches.
func townAndLaunches(t *testing.T, seed uint64) (*fusion.Track, *sim.Truth) {
	t.Helper()
	sc := sim.DefaultScenario(sim.Bikes()[seed%3])
	sc.Plan = append([]sim.Act{sim.Town{Minutes: 4}}, sim.Launches(2, 100/3.6, 0)...)
	ride := simulate(t, sc, seed)
	tr, err := fusion.Smooth(ride.Log, fusion.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return tr, ride.Truth
}

// TestStandstills: a standstill of the track lies inside a true one, and every
// true one of some length is found.
func TestStandstills(t *testing.T) {
	for seed := range uint64(3) {
		tr, truth := townAndLaunches(t, seed+1)
		for _, s := range tr.Still {
			for at := s.From; at <= s.To; at += 0.05 {
				if v := truth.V(at); v > 0.02 {
					t.Errorf("seed %d: %.2f m/s at %.2f s, inside the standstill %.2f to %.2f s", seed, v, at, s.From, s.To)
					break
				}
			}
		}
		found, stood := 0.0, 0.0
		for i := 1; i < len(truth.Moments); i++ {
			if m := truth.Moments[i]; m.V == 0 {
				h := m.T - truth.Moments[i-1].T
				stood += h
				for _, s := range tr.Still {
					if s.Contains(m.T) {
						found += h
					}
				}
			}
		}
		t.Logf("stood for %.0f s, found %.0f s in %d standstills", stood, found, len(tr.Still))
		if found < 0.7*stood {
			t.Errorf("seed %d: of %.0f s at rest only %.0f s were found", seed, stood, found)
		}
	}
}

// TestYawAndAcceleration compares yaw rate and acceleration with the truth.
func TestYawAndAcceleration(t *testing.T) {
	tr, truth := townAndLaunches(t, 4)
	var yaw, accel, normal, n float64
	for _, m := range truth.Moments {
		at := tr.At(m.T)
		i := 0
		for lo, hi := 0, len(tr.T)-1; lo < hi; { // nearest sample at or after
			mid := (lo + hi) / 2
			if tr.T[mid] < m.T {
				lo = mid + 1
			} else {
				hi = mid
			}
			i = lo
		}
		dy := tr.Yaw[i] - m.Yaw
		da := at.A - m.A
		yaw += dy * dy
		accel += da * da
		normal += da * da / (tr.ASD[i] * tr.ASD[i])
		n++
	}
	t.Logf("yaw off by %.3f rad/s rms, acceleration by %.3f m/s², %.2f of what is said", math.Sqrt(yaw/n), math.Sqrt(accel/n), math.Sqrt(normal/n))
	if rms := math.Sqrt(yaw / n); rms > 0.05 {
		t.Errorf("yaw off by %.3f rad/s rms", rms)
	}
	if z := math.Sqrt(normal / n); z > 2 {
		t.Errorf("acceleration errs by %.2f times what is said", z)
	}
}

// TestCrossings compares the crossings of a smooth exact ride with the
// formulas of constant acceleration, t = v/a and t = √(2s/a) (textbook
// mechanics).
func TestCrossings(t *testing.T) {
	const accel, rest = 4.0, 12.0
	log := exactStarts(accel, rest)
	tr, err := fusion.Smooth(log, fusion.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, start := range []float64{rest, rest + 40, rest + 80} {
		span := fusion.Span{From: start - 1, To: start + 7}
		for _, v := range []float64{5, 10, 20, 27} {
			c, ok := tr.TimeAtSpeed(v, span)
			if !ok || math.Abs(c.T-start-v/accel) > 0.01 || !(c.SE > 0 && c.SE < 0.1) {
				t.Errorf("%v m/s at %.3f ± %.3f s, want %.3f", v, c.T-start, c.SE, v/accel)
			}
		}
		for _, s := range []float64{1, 10, 60, 90} {
			c, ok := tr.TimeAtDistance(start-0.5, s, span)
			if want := math.Sqrt(2 * s / accel); !ok || math.Abs(c.T-start-want) > 0.01 || !(c.SE > 0 && c.SE < 0.1) {
				t.Errorf("%v m at %.3f ± %.3f s, want %.3f", s, c.T-start, c.SE, want)
			}
		}
		if _, ok := tr.TimeAtSpeed(35, span); ok {
			t.Error("35 m/s was never reached")
		}
	}
}
