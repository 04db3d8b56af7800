package plan

import (
	"math"
	"strings"
	"testing"

	"stillair/runs/effect"
	"stillair/runs/measure"
)

func naked() effect.Load {
	return effect.Load{CdA: measure.Value{X: 0.55}, Crr: measure.Value{X: 0.018}, K: 0.004, Mass: 290, Density: 1.2, Gravity: 9.81}
}

// TestChanceAgainstTables compares the power of the two-sample t test at 5 %,
// two-sided, with Cohen, Statistical Power Analysis (1988), table 2.3.5, from
// memory: n = 64 a group and d = 0.5 give 0.80, n = 17 and d = 1.0 give 0.80, n
// = 26 and d = 0.8 give 0.80.
func TestChanceAgainstTables(t *testing.T) {
	tests := []struct{ n, d float64 }{{64, 0.5}, {26, 0.8}, {17, 1.0}}
	for _, tt := range tests {
		shift := tt.d * math.Sqrt(tt.n/2)
		got := student{dof: 2*tt.n - 2, level: 0.05}.chance(shift)
		if math.Abs(got-0.80) > 0.011 {
			t.Errorf("n %v, d %v: power %.3f, table 0.80", tt.n, tt.d, got)
		}
	}
	if got := (student{dof: 6, level: 0.05}).chance(0); math.Abs(got-0.05) > 1e-4 {
		t.Errorf("no change is seen with %.4f, want the level 0.05", got)
	}
}

func TestNeededIsTheInverseOfChance(t *testing.T) {
	for _, dof := range []float64{2, 6, 20} {
		test := student{dof: dof, level: 0.05, beyond: 0.3}
		if got := test.chance(test.needed(0.8)); math.Abs(got-0.8) > 1e-4 {
			t.Errorf("dof %v: %v", dof, got)
		}
	}
}

// TestOrderIsBalanced checks that a steady drift affects all setups equally.
func TestOrderIsBalanced(t *testing.T) {
	for _, setups := range []int{2, 3, 5} {
		for _, pairs := range []int{2, 4, 8} {
			sum, n, at := make([]float64, setups), make([]int, setups), 0.0
			for _, b := range order(setups, pairs) {
				for range b.Pairs {
					sum[b.Setup] += at
					n[b.Setup]++
					at++
				}
			}
			for s := range setups {
				if n[s] != pairs || sum[s]/float64(n[s]) != sum[0]/float64(n[0]) {
					t.Errorf("%d setups, %d pairs: setup %d has %d pairs at mean place %v", setups, pairs, s, n[s], sum[s]/float64(n[s]))
				}
			}
		}
	}
}

func TestMorePairsAndLessWindHelp(t *testing.T) {
	q := Question{Setups: 2, CdA: 0.06}
	if err := check(&q, DefaultConditions(naked(), 1.5)); err != nil {
		t.Fatal(err)
	}
	before := 1.0
	for _, n := range []int{2, 4, 8} {
		p, err := lay(q, DefaultConditions(naked(), 1.5), n)
		if err != nil {
			t.Fatal(err)
		}
		calm, err := lay(q, DefaultConditions(naked(), 0.5), n)
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%d pairs: ± %.2f %%, sees 6 %% with %.0f %%; calm ± %.2f %%; road %.0f m, %.0f min", n, 100*p.SE, 100*p.Chance, 100*calm.SE, p.RoadLength, p.Seconds/60)
		if p.SE >= before || calm.SE >= p.SE {
			t.Errorf("%d pairs: ± %.4f, before ± %.4f, calm ± %.4f", n, p.SE, before, calm.SE)
		}
		before = p.SE
	}
}

func TestMakeSaysWhenItCannot(t *testing.T) {
	p, err := Make(Question{Setups: 2, CdA: 0.005}, DefaultConditions(naked(), 2))
	if err != nil {
		t.Fatal(err)
	}
	if p.Enough || len(p.Advice) == 0 {
		t.Errorf("half a percent in wind: %+v", p)
	}
	p, err = Make(Question{Setups: 2, CdA: 0.15}, DefaultConditions(naked(), 0.5))
	if err != nil {
		t.Fatal(err)
	}
	if !p.Enough || p.Pairs != 2 || p.Chance < 0.8 {
		t.Errorf("fifteen percent in calm air: %+v", p)
	}
}

// TestFromTopSpeed compares with a calculation by hand: with air drag only v ∝
// CdA^(−1/3), so 5 km/h of 200 is 3 · 2.5 % of CdA.
func TestFromTopSpeed(t *testing.T) {
	l := naked()
	l.Crr.X = 0
	if got := FromTopSpeed(l, 200/3.6, 5/3.6); math.Abs(got-0.075) > 1e-6 {
		t.Errorf("got %v, want 0.075", got)
	}
}

func TestBadQuestions(t *testing.T) {
	ok := DefaultConditions(naked(), 1)
	slow, light := ok, ok
	slow.FromMPS = slow.ToMPS + 1
	light.Load.Mass = 0
	tests := []struct {
		name string
		q    Question
		c    Conditions
		says string
	}{
		{"no setup", Question{CdA: 0.1}, ok, "plan.setups"},
		{"no change", Question{Setups: 2}, ok, "plan.change_of_drag"},
		{"certainty", Question{Setups: 2, CdA: 0.1, Chance: 1}, ok, "plan.chance"},
		{"narrow speeds", Question{Setups: 2, CdA: 0.1}, slow, "plan.speeds"},
		{"no mass", Question{Setups: 2, CdA: 0.1}, light, "no_mass"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Make(tt.q, tt.c)
			if err == nil || !strings.Contains(err.Error(), tt.says) {
				t.Errorf("got %v, want a word about %q", err, tt.says)
			}
		})
	}
}

// TestOneSetup plans the accuracy of the drag area of one setup: more pairs reduce
// the part from noise, but not the part from assumptions about tyres, cross-wind
// and posture, which is stated too.
func TestOneSetup(t *testing.T) {
	p, err := Make(Question{Setups: 1, CdA: 0.05, MaxPair: 12}, DefaultConditions(naked(), 0.5))
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d pairs: ± %.1f %% by noise, ± %.1f %% in all, chance %.0f %%", p.Pairs, 100*p.Half, 100*p.Whole, 100*p.Chance)
	if !p.Enough || p.Half > 0.05 || p.Whole < 0.08 || len(p.Blocks) != 1 || p.Blocks[0].Pairs != p.Pairs {
		t.Errorf("got %+v", p)
	}
	few, err := Make(Question{Setups: 1, CdA: 0.001, MaxPair: 4}, DefaultConditions(naked(), 2))
	if err != nil || few.Enough {
		t.Errorf("a tenth of a percent in wind: %+v, %v", few, err)
	}
}

// TestStillAir checks that a day without wind can be planned for, with the
// minimum motion of any air.
func TestStillAir(t *testing.T) {
	if _, err := Make(Question{Setups: 2, CdA: 0.02}, DefaultConditions(naked(), 0)); err != nil {
		t.Error(err)
	}
	if _, err := MakePush(PushQuestion{Push: Pulls, Setups: 2, Change: 0.04}, DefaultPush(Pulls, naked(), 0)); err != nil {
		t.Error(err)
	}
}

// TestStoppingHasAMargin compares with a calculation by hand: 110 km/h are 30.6
// m/s, from which 3 m/s² take 156 m; two seconds are 61 m, and the margin is 50
// m.
func TestStoppingHasAMargin(t *testing.T) {
	if got := stopping(110 / 3.6); math.Abs(got-267) > 1 {
		t.Errorf("got %.0f m, want 267", got)
	}
}
