package runs

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"stillair/runs/engine"
)

// accelerated is the signal of a phone during a push from 12 to 30 m/s in 5 s at 100
// readings a second: noise, and lines at given turns per metre.
func accelerated(seed uint64, lines ...float64) engine.Spectrum {
	rng := rand.New(rand.NewPCG(seed, 11))
	var sig engine.Signal
	for i := range 500 {
		at := float64(i) / 100
		way := 12*at + 1.8*at*at
		x := rng.NormFloat64()
		for _, line := range lines {
			x += math.Sin(2 * math.Pi * (line*way + 0.3*line))
		}
		sig.T, sig.X, sig.S = append(sig.T, at), append(sig.X, x), append(sig.S, way)
	}
	return engine.NewSpectrum([]engine.Signal{sig}, fewestTurns, mostPushing)
}

// TestGearLines: pushes in two gears are distinguished by their lines, whatever the
// orders of the engine; a line that also occurs while coasting does not count.
func TestGearLines(t *testing.T) {
	nan := math.NaN()
	const third, fourth, chain = 4.6, 3.6, 5.3
	tests := []struct {
		name   string
		pushes [][]float64 // lines of each
		rolled [][]float64 // lines of each coast-down
		want   []float64
	}{
		{"two gears", [][]float64{{third}, {third}, {fourth}, {fourth}}, nil, []float64{third, third, fourth, fourth}},
		{"one that shows nothing", [][]float64{{third}, {third}, {}, {fourth}, {fourth}}, nil, []float64{third, third, nan, fourth, fourth}},
		{"one gear alone", [][]float64{{third}, {third}, {third}}, nil, []float64{nan, nan, nan}},
		{"one gear alone, and not while rolling", [][]float64{{third}, {third}, {}}, [][]float64{{}, {}}, []float64{third, third, nan}},
		{"a line in all of them that is the chain's", [][]float64{{chain}, {chain}, {third, chain}, {third, chain}}, [][]float64{{chain}, {chain}}, []float64{nan, nan, third, third}},
		{"two orders of each", [][]float64{{third, 2 * third}, {2 * third}, {fourth, 2 * fourth}, {2 * fourth}}, nil, []float64{third, third, fourth, fourth}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			for seed := range uint64(5) {
				var all []engine.Spectrum
				var own []engine.Line
				for k, lines := range tt.pushes {
					s := accelerated(100*seed+uint64(k), lines...)
					all, own = append(all, s), append(own, s.Clearest())
				}
				var rolling []engine.Spectrum
				for k, lines := range tt.rolled {
					rolling = append(rolling, accelerated(100*seed+90+uint64(k), lines...))
				}
				gears := gearsOf(all, own, rolling)
				for k, want := range tt.want {
					got := gears.of(all[k])
					near := slices.ContainsFunc(got, func(line float64) bool {
						return math.Abs(line/want-1) < sameLine || math.Abs(line/(2*want)-1) < sameLine
					})
					if near == math.IsNaN(want) || got == nil != math.IsNaN(want) {
						t.Errorf("seed %d, push %d: lines %.2f, want %.2f of %.2f", seed, k+1, got, want, gears)
					}
				}
			}
		})
	}
}

// TestGearing: for neighbouring gears the lines give the ratio; for gears farther apart
// they only show that the gears differ, since one of the lines may be of another order.
func TestGearing(t *testing.T) {
	nan := math.NaN()
	tests := []struct {
		name       string
		a, b       drive
		scale      float64
		known, two bool
	}{
		{"ratios of one gear", drive{ratio: 146}, drive{ratio: 147}, 146.0 / 147, true, false},
		{"ratios of two", drive{ratio: 193}, drive{ratio: 146}, 193.0 / 146, true, true},
		{"lines of one gear", drive{ratio: nan, lines: gearLine{4.6}}, drive{ratio: nan, lines: gearLine{4.6}}, 1, true, false},
		{"lines of neighbours", drive{ratio: nan, lines: gearLine{4.6}}, drive{ratio: nan, lines: gearLine{3.6}}, 4.6 / 3.6, true, true},
		{"lines far apart", drive{ratio: nan, lines: gearLine{7.2}}, drive{ratio: nan, lines: gearLine{3.6}}, 1, false, true},
		{"lines of two orders and of one", drive{ratio: nan, lines: gearLine{4.6, 9.2}}, drive{ratio: nan, lines: gearLine{7.2}}, 9.2 / 7.2, true, true},
		{"a line beside nothing", drive{ratio: nan, lines: gearLine{4.6}}, drive{ratio: nan}, 1, false, false},
	}
	for _, tt := range tests {
		scale, known, two := tt.a.gearing(tt.b)
		if math.Abs(scale-tt.scale) > 1e-12 || known != tt.known || two != tt.two {
			t.Errorf("%s: %v, %v, %v, want %v, %v, %v", tt.name, scale, known, two, tt.scale, tt.known, tt.two)
		}
	}
}
