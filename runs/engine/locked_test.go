package engine

import (
	"math"
	"math/rand/v2"
	"testing"
)

// slowing is the signal of a phone at 100 Hz, with noise of 1 m/s², while a vehicle
// slows from 30 to 10 m/s in 30 s; shake is the vibration as a function of time and
// distance.
func slowing(seed uint64, shake func(t, s float64) float64) Signal {
	rng := rand.New(rand.NewPCG(seed, 5))
	var sig Signal
	for i := range 3000 {
		t := float64(i) / 100
		s := 30*t - t*t/3
		sig.T, sig.S = append(sig.T, t), append(sig.S, s)
		sig.X = append(sig.X, rng.NormFloat64()+shake(t, s))
	}
	return sig
}

// TestLocked: a line proportional to road speed is found at its place, even
// though it is aliased for most of the time; an idling engine, including its
// second order, and noise give no line.
func TestLocked(t *testing.T) {
	const amplitude = 0.7
	turn := func(turns float64) float64 { return amplitude * math.Sin(2*math.Pi*turns) }
	tests := []struct {
		name     string
		shake    func(t, s float64) float64
		perMetre float64 // 0: none
	}{
		{"in gear", func(_, s float64) float64 { return turn(4.1 * s) }, 4.1},
		{"in a low gear", func(_, s float64) float64 { return turn(8.3 * s) }, 8.3},
		{"idling", func(t, _ float64) float64 { return turn(20*t) + turn(40*t) }, 0},
		{"idling ever slower", func(t, _ float64) float64 { return turn(25*t - 0.1*t*t) }, 0},
		{"nothing", func(_, _ float64) float64 { return 0 }, 0},
	}
	for _, tt := range tests {
		for seed := range uint64(6) {
			quiet := slowing(seed+100, func(_, _ float64) float64 { return 0 })
			l := NewSpectrum([]Signal{quiet, slowing(seed, tt.shake)}, 1.6, 11).Clearest()
			switch {
			case tt.perMetre == 0 && l.Strength() > 7:
				t.Errorf("%s: a line of %.2f a metre at %.1f", tt.name, l.PerMetre, l.Strength())
			case tt.perMetre > 0 && (l.Strength() < 10 || math.Abs(l.PerMetre/tt.perMetre-1) > 0.01):
				t.Errorf("%s: %.3f a metre at %.1f, want %.3f", tt.name, l.PerMetre, l.Strength(), tt.perMetre)
			}
		}
	}
	if l := NewSpectrum(nil, 1.6, 11).Clearest(); l != (Line{}) {
		t.Errorf("no signal has %+v", l)
	}
}
