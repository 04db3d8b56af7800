package roadload

import (
	"math"
	"testing"
)

// TestBudget adds up the parts of every figure: the sum of their squares must
// be the square of the whole (GUM, section 5.1).
func TestBudget(t *testing.T) {
	o := numpyOptions()
	o.MassSD, o.DensitySD, o.LoadSD = 0.01, 0.006, []float64{0, 0.03}
	e, err := Fit(abba(), o)
	if err != nil {
		t.Fatal(err)
	}
	sum := func(all []Part) float64 {
		s := 0.0
		for _, p := range all {
			s = math.Hypot(s, p.SE)
		}
		return s
	}
	near := func(what string, got, want float64) {
		if !(math.Abs(got/want-1) < 1e-9) {
			t.Errorf("%s: the parts give %g, the figure has %g", what, got, want)
		}
	}
	for i := range e.Loads {
		cda, crr := e.Budget(i)
		whole := e.Total(i)
		near("CdA", sum(cda), whole.CdA.SE)
		near("Crr", sum(crr), whole.Crr.SE)
	}
	plain := e.Between(0, 1)
	near("difference", sum(plain.Budget), plain.CdA.SE)
	alike, ok := e.Alike(0, 1)
	if !ok || alike.TakenBack == 0 {
		t.Fatal("nothing was taken back between setups on alike tyres")
	}
	near("difference on alike tyres", sum(alike.Budget), alike.CdA.SE)
	again := plain.CdA.X - alike.TakenBack*plain.Crr.X
	if math.Abs(again-alike.CdA.X) > 1e-12 {
		t.Errorf("taken back by hand: %g, want %g", again, alike.CdA.X)
	}
}

// TestPairsAlone checks that the weighted mean of the single pairs of each
// setup is close to the joint result.
func TestPairsAlone(t *testing.T) {
	e, err := Fit(abba(), numpyOptions())
	if err != nil {
		t.Fatal(err)
	}
	for i, l := range e.Loads {
		weights, mean, n := 0.0, 0.0, 0
		for _, p := range e.Pairs {
			for _, r := range e.Runs {
				if r.Pair == p.Pair && r.Setup == i && r.Dir > 0 {
					w := 1 / (p.CdA.SE * p.CdA.SE)
					weights, mean, n = weights+w, mean+w*p.CdA.X, n+1
				}
			}
		}
		alone := 1 / math.Sqrt(weights)
		if n != l.Pairs {
			t.Errorf("setup %d: %d pairs alone, want %d", i, n, l.Pairs)
		}
		if math.Abs(mean/weights-l.CdA.X) > alone {
			t.Errorf("setup %d: pairs alone give %.4f ± %.4f, together %.4f", i, mean/weights, alone, l.CdA.X)
		}
	}
}

// TestValleysApart: the effect of a dip in the road cancels in the difference of two
// setups ridden on one road, and does not if they were ridden on different roads.
func TestValleysApart(t *testing.T) {
	valley := func(all []Part) float64 {
		for _, p := range all {
			if p.Code == codeValley {
				return p.SE
			}
		}
		t.Fatal("no part of the budget is the valley's")
		return 0
	}
	for _, apart := range []float64{0, 1e5} {
		runs := abba()
		for i := range runs {
			at := apart*float64(runs[i].Setup) + 300 - 300*runs[i].Dir // m
			for k, t := range runs[i].T {
				if k > 0 {
					at += runs[i].Dir * runs[i].V[k] * (t - runs[i].T[k-1])
				}
				runs[i].Pos = append(runs[i].Pos, at)
			}
		}
		e, err := Fit(runs, numpyOptions())
		if err != nil {
			t.Fatal(err)
		}
		first, _ := e.Budget(0)
		second, _ := e.Budget(1)
		own := math.Hypot(valley(first), valley(second))
		switch got := valley(e.Between(0, 1).Budget); {
		case apart == 0 && got > 0.3*own:
			t.Errorf("on one road: %.4f m² of %.4f are left", got, own)
		case apart > 0 && math.Abs(got/own-1) > 0.1:
			t.Errorf("on two roads: %.4f m², want %.4f", got, own)
		}
	}
}
