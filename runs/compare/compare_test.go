package compare

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs/measure"
)

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

// TestNextKeepsItsWord compares the predicted effect of one more repeat with
// simulation: true differences are drawn from −8 to 8 %, scatter from 1 to 4 %,
// and the share of open answers that one more repeat with each setup settles is
// close to the predicted chance, both for high and for low predictions.
func TestNextKeepsItsWord(t *testing.T) {
	rng := rand.New(rand.NewPCG(14, 2))
	const matters = 0.05
	var predicted, came, count [2]float64
	for range 6000 {
		truth, scatter, n := 0.16*(rng.Float64()-0.5), 0.01+0.03*rng.Float64(), 3+rng.IntN(4)
		a, b := make([]measure.Value, n+1), make([]measure.Value, n+1)
		for i := range a {
			a[i].X, b[i].X = 1+scatter*rng.NormFloat64(), 1+truth+scatter*rng.NormFloat64()
		}
		now, then := judged(t, a[:n], b[:n], matters), judged(t, a, b, matters)
		if now.Finding != CannotTell {
			if now.Next.Chance != 1 {
				t.Fatalf("settled, and yet %+v", now.Next)
			}
			continue
		}
		k := 0
		if now.Next.Chance > 0.3 {
			k = 1
		}
		predicted[k], count[k] = predicted[k]+now.Next.Chance, count[k]+1
		if then.Finding != CannotTell {
			came[k]++
		}
	}
	for k := range count {
		f, c := predicted[k]/count[k], came[k]/count[k]
		t.Logf("of %.0f open answers %.0f %% were predicted to be settled by one more, %.0f %% were", count[k], 100*f, 100*c)
		if count[k] < 200 || math.Abs(f-c) > 0.10 {
			t.Errorf("predicted %.1f %%, came %.1f %%", 100*f, 100*c)
		}
	}
}

func judged(t *testing.T, a, b []measure.Value, matters float64) Verdict {
	t.Helper()
	d, err := Repeated(a, b)
	if err != nil {
		t.Fatal(err)
	}
	return Judge([]Difference{d}, matters)[0]
}

// TestManyEqualSetups checks that six comparisons of identical setups give
// false alarms in 5 % of cases for the six together, within the accuracy of
// 4000 draws.
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

// TestWordsAndBandAgree draws comparisons of setups whose drag truly differs by
// 0, 1, 3, 6 or 12 % either way, from 2 to 6 repeats of 1 to 4 % scatter, one to
// six comparisons together, and checks the verdicts: a difference is called
// although there is none in at most 5 of 100 (for all comparisons together), a
// difference that matters is denied in at most 5 of 100, and the words never
// contradict the band.
func TestWordsAndBandAgree(t *testing.T) {
	rng := rand.New(rand.NewPCG(14, 1))
	truths := []float64{0, 0.01, -0.01, 0.03, -0.03, 0.06, -0.06, 0.12, -0.12}
	const questions = 2000
	equal, alarms, matter, denied := 0, 0, 0, 0
	for range questions {
		matters := []float64{0.02, 0.05}[rng.IntN(2)]
		truth, together, n := truths[rng.IntN(len(truths))], 1+rng.IntN(6), 2+rng.IntN(5)
		scatter := 0.01 * float64(1+rng.IntN(4))
		var ds []Difference
		for range together {
			a, b := make([]measure.Value, n), make([]measure.Value, n)
			for i := range n {
				a[i].X, b[i].X = 1+scatter*rng.NormFloat64(), 1+truth+scatter*rng.NormFloat64()
			}
			d, err := Repeated(a, b)
			if err != nil {
				t.Fatal(err)
			}
			ds = append(ds, d)
		}
		called, deniedOne := false, false
		for _, v := range Judge(ds, matters) {
			out := v.CI[0] > 0 || v.CI[1] < 0
			within := math.Abs(v.CIPercent[0]) <= 100*matters && math.Abs(v.CIPercent[1]) <= 100*matters
			if (v.Finding == Differs) != out || v.Finding == NoneShown && !within || out != (v.P < 0.05) {
				t.Fatalf("the words disagree with the band: %+v", v)
			}
			called = called || v.Finding == Differs
			deniedOne = deniedOne || v.Finding == NoneShown
		}
		switch {
		case truth == 0:
			equal++
			if called {
				alarms++
			}
		case math.Abs(truth) >= matters:
			matter++
			if deniedOne {
				denied++
			}
		}
	}
	if rate := float64(alarms) / float64(equal); rate > 0.05+2*math.Sqrt(0.05*0.95/float64(equal)) {
		t.Errorf("a difference was called in %.1f %% of %d questions without one", 100*rate, equal)
	}
	if rate := float64(denied) / float64(matter); rate > 0.05 {
		t.Errorf("a difference that matters was denied in %.1f %% of %d questions", 100*rate, matter)
	}
}
