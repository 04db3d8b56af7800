package engine

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestPowersAgainstDefinition: the recursion over the phases agrees with the
// sum that defines the power, over thousands of phases.
func TestPowersAgainstDefinition(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	x, s := make([]float64, 150), make([]float64, 150)
	for i := range x {
		x[i], s[i] = rng.NormFloat64(), 30+0.3*float64(i)
	}
	const low, step = 2.5, 1e-3
	got := make([]float64, 6000)
	powers(got, x, s, low, step)
	for k := 0; k < len(got); k += 37 {
		var re, im float64
		for i := range x {
			a := 2 * math.Pi * (low + float64(k)*step) * (s[i] - s[0])
			re, im = re+x[i]*math.Cos(a), im+x[i]*math.Sin(a)
		}
		if want := re*re + im*im; math.Abs(got[k]-want) > 1e-8*(1+want) {
			t.Fatalf("phase %d: %v, want %v", k, got[k], want)
		}
	}
}

func BenchmarkPick(b *testing.B) {
	rng := rand.New(rand.NewPCG(5, 5))
	var sig Signal
	for i := range 1000 {
		at := float64(i) / 100
		s := 20*at + at*at
		sig.T, sig.S = append(sig.T, at), append(sig.S, s)
		sig.X = append(sig.X, rng.NormFloat64()+2*math.Sin(2*math.Pi*193/60*s)+math.Sin(4*math.Pi*193/60*s))
	}
	ratios := []float64{417, 300, 234, 193, 165, 146}
	for b.Loop() {
		if which, err := Pick([]Signal{sig}, ratios, 2); err != nil || which != 3 {
			b.Fatal(which, err)
		}
	}
}
