package runs

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs/engine"
)

// TestEngineTurns: a line proportional to road speed is an engine only if the
// wheels do not explain it better. An out-of-round wheel vibrates once a turn and
// decreasingly at its multiples, some of which are in the range of engines (common
// practice).
func TestEngineTurns(t *testing.T) {
	const wheel, crank = 0.52, 4.3 // 1/m
	tests := []struct {
		name          string
		wheel, engine float64 // amplitudes, m/s²
		want          bool
	}{
		{"a gear left in", 0.2, 1, true},
		{"rolling freely on a wheel out of round", 1.5, 0, false},
		{"rolling freely", 0.1, 0, false},
	}
	for _, tt := range tests {
		for seed := range uint64(8) {
			rng := rand.New(rand.NewPCG(seed, 6))
			var sig engine.Signal
			for i := range 4000 {
				at := float64(i) / 100
				way := 28*at - 0.25*at*at
				x := rng.NormFloat64() + tt.engine*math.Sin(2*math.Pi*crank*way)
				for k := 1.0; k <= 8; k++ {
					x += tt.wheel / (k * k) * math.Sin(2*math.Pi*(k*wheel*way+0.1*k))
				}
				sig.T, sig.X, sig.S = append(sig.T, at), append(sig.X, x), append(sig.S, way)
			}
			felt := []engine.Signal{sig}
			if got := sure(engineLine(felt, engine.NewSpectrum(felt, fewestTurns, mostTurns))); got != tt.want {
				t.Errorf("%s, seed %d: an engine turns: %v", tt.name, seed, got)
			}
		}
	}
}
