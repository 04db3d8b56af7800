package compare

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs/measure"
)

// TestHolm is the worked example of the procedure: p of 0.01, 0.04, 0.03 and
// 0.005 become 0.03, 0.06, 0.06 and 0.02 (the example in the documentation of
// statistical packages, from memory; each step can be redone by hand).
func TestHolm(t *testing.T) {
	got := holm([]float64{0.01, 0.04, 0.03, 0.005})
	for i, want := range []float64{0.03, 0.06, 0.06, 0.02} {
		if math.Abs(got[i]-want) > 1e-12 {
			t.Errorf("p[%d]: got %v, want %v", i, got[i], want)
		}
	}
}

// TestRepeatedAgainstStudent is "Student"'s own table of extra hours of sleep
// with two drugs (Biometrika 6 (1908) 1), taken as independent groups: t =
// −1.8608 with 18 degrees of freedom, p = 0.07919.
func TestRepeatedAgainstStudent(t *testing.T) {
	drug1 := []float64{0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0}
	drug2 := []float64{1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4}
	d, err := Repeated(values(drug2), values(drug1))
	if err != nil {
		t.Fatal(err)
	}
	if got := d.Delta.X / d.Delta.SE; math.Abs(got+1.8608) > 5e-4 {
		t.Errorf("t = %.4f, want -1.8608", got)
	}
	if p := d.Delta.TwoSided(d.DoF); math.Abs(p-0.07919) > 5e-5 || d.DoF != 18 {
		t.Errorf("p = %.5f with %v degrees of freedom, want 0.07919 with 18", p, d.DoF)
	}
}

func values(x []float64) []measure.Value {
	v := make([]measure.Value, len(x))
	for i := range x {
		v[i].X = x[i]
	}
	return v
}

func TestRepeatedNeedsTwo(t *testing.T) {
	if _, err := Repeated(values([]float64{1}), values([]float64{1, 2})); err == nil {
		t.Error("one run was compared")
	}
}

// TestManyEqualSetups holds the false alarms of six comparisons of setups that
// are all the same to 5 % for the six together, within what 4000 draws allow.
func TestManyEqualSetups(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	const draws, pairs = 4000, 4
	alarms := 0
	for range draws {
		var means [4]float64
		var ss float64
		for s := range means {
			x := make([]measure.Value, pairs)
			for i := range x {
				x[i].X = 1 + 0.03*rng.NormFloat64()
			}
			m, q := moments(x)
			means[s], ss = m, ss+q
		}
		dof := float64(4 * (pairs - 1))
		se := math.Sqrt(ss / dof * 2 / pairs)
		var ds []Difference
		for a := range means {
			for b := a + 1; b < len(means); b++ {
				ds = append(ds, Difference{Delta: measure.Value{X: means[b] - means[a], SE: se}, Base: means[a], DoF: dof, Pairs: pairs})
			}
		}
		for _, v := range Judge(ds, 0.05) {
			if v.Finding == Differs {
				alarms++
				break
			}
		}
	}
	if rate := float64(alarms) / draws; rate > 0.055 || rate < 0.02 {
		t.Errorf("a difference was called in %.1f %% of the tests", 100*rate)
	}
}
