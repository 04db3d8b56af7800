package runs

import (
	"stillair/runs/compare"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/sensors/finding"
)

// DefaultMatters is the relative difference that a comparison takes as worth
// knowing where the rider says nothing: 5 %.
const DefaultMatters = 0.05

// Comparison is the difference of setup B from setup A. Figures that could not
// be compared are nil.
type Comparison struct {
	A, B  string
	CdA   *compare.Verdict // m²
	Crr   *compare.Verdict
	Power *compare.Verdict // mean of power at the road over the speeds both have, as a fraction of A's
	Times []TimeComparison
	Load  *effect.Change    // B's road load minus A's, to calculate its effect
	Notes []finding.Finding // cautions about it

	Budget    []roadload.Part // components of the standard uncertainty of the difference of CdA, m²
	TakenBack float64         // correction of CdA per unit difference in Crr for identical tyres, m²
	WarmCdA   float64         // correction of the differences for tyres that warmed up in between: CdA in m², and Crr
	WarmCrr   float64

	// Between rides only: the road load of A in the air of its ride, and what
	// limits the certainty of the difference of CdA, the most first. Within a
	// ride LoadOf and the road loads tell both.
	Base   *effect.Load
	Limits []Limit
}

// TimeComparison compares the times of one mark.
type TimeComparison struct {
	Mark    string
	Verdict compare.Verdict // s
}

// compareSetups compares every two setups of a ride. All differences of one
// quantity are judged together, so that many setups do not find a difference
// by luck.
func compareSetups(result *Result, matters float64) []Comparison {
	names := setupNames(result)
	var out []Comparison
	for i := range names {
		for j := i + 1; j < len(names); j++ {
			out = append(out, Comparison{A: names[i], B: names[j]})
		}
	}
	compareLoads(result, out, matters)
	comparePowers(result, out, matters)
	compareTimes(result, out, matters)
	kept := out[:0]
	for _, c := range out {
		if c.CdA != nil || c.Power != nil || len(c.Times) > 0 {
			kept = append(kept, c)
		}
	}
	return kept
}

// setupNames are the setups of the accepted runs, in order of riding.
func setupNames(result *Result) []string {
	var names []string
	seen := map[string]bool{}
	for _, r := range result.Runs {
		if r.Accepted() && !seen[r.Setup] {
			seen[r.Setup] = true
			names = append(names, r.Setup)
		}
	}
	return names
}

// compareLoads judges CdA and Crr from the joint fit, in which the road and
// the wind of the hour that setups share cancel.
func compareLoads(result *Result, out []Comparison, matters float64) {
	at := map[string]int{}
	for i, l := range result.RoadLoads {
		at[l.Setup] = i
	}
	var which []int
	var cda, crr []compare.Difference
	for k, c := range out {
		a, okA := at[c.A]
		b, okB := at[c.B]
		if !okA || !okB || result.Estimate == nil {
			continue
		}
		la, lb := result.RoadLoads[a], result.RoadLoads[b]
		plain := result.Estimate.Between(a, b)
		d := plain
		if sameTyres(result, c) {
			var alike bool
			if d, alike = result.Estimate.Alike(a, b); alike {
				out[k].Notes = append(out[k].Notes, finding.New(codeTyresAlike))
			}
		}
		if load, found := unenteredLoad(result, c); found {
			out[k].Notes = append(out[k].Notes, load.note(c, la, d.CdA))
			load.widen(&d, la.CdA.X)
		} else if asked, ok := askMass(result, c, la, d.CdA); ok {
			out[k].Notes = append(out[k].Notes, asked)
		}
		pairs := min(la.Pairs, lb.Pairs)
		which = append(which, k)
		cda = append(cda, compare.Difference{Delta: d.CdA, Held: d.Held(), Base: la.CdA.X, DoF: d.DoF, Pairs: pairs})
		crr = append(crr, compare.Difference{Delta: plain.Crr, Base: la.Crr.X, DoF: plain.CrrDoF, Pairs: pairs})
		out[k].Budget, out[k].TakenBack, out[k].WarmCdA, out[k].WarmCrr = d.Budget, d.TakenBack, d.WarmCdA, d.WarmCrr
		out[k].Load = &effect.Change{CdA: d.CdA, Crr: d.Crr, Cov: d.Cov}
		if pairs < 2 {
			out[k].Notes = append(out[k].Notes, finding.New(codeOnePair))
		}
	}
	vc, vr := compare.Judge(cda, matters), compare.Judge(crr, 2*matters)
	for n, k := range which {
		out[k].CdA, out[k].Crr = &vc[n], &vr[n]
	}
}

// askMass asks whether the weight changed too, where the second setup's was not
// entered: 10 kg more, not entered, look like that much less drag.
func askMass(result *Result, c Comparison, a RoadLoad, delta Value) (finding.Finding, bool) {
	if result.weighed[c.B] {
		return finding.Finding{}, false
	}
	const load = 10.0 // kg
	effect := load / a.Mass
	return finding.New(codeMassAsked, finding.Text("setup", c.B), finding.Mass("load", load),
		finding.Share("as_drag", effect), finding.Share("corrected", delta.X/a.CdA.X+effect)).OfSetup(c.B), true
}

// sameTyres reports whether nothing entered about two setups makes their tyres
// different.
func sameTyres(result *Result, c Comparison) bool {
	tyres := func(name string) string {
		for _, s := range result.Ride.Setups {
			if s.Name == name {
				return s.Tyres
			}
		}
		return ""
	}
	return tyres(c.A) == tyres(c.B)
}

// compareTimes judges every mark that both setups have at least twice.
func compareTimes(result *Result, out []Comparison, matters float64) {
	times := map[string]map[string][]measure.Value{} // by mark and setup
	var order []string
	for _, r := range result.Runs {
		if !r.Accepted() || r.Kind == Stop {
			continue
		}
		for _, m := range r.Marks {
			t := m.Time
			if m.Rollout.Known() {
				t = m.Rollout
			}
			if !t.Known() {
				continue
			}
			if times[m.Name] == nil {
				times[m.Name] = map[string][]measure.Value{}
				order = append(order, m.Name)
			}
			times[m.Name][r.Setup] = append(times[m.Name][r.Setup], t)
		}
	}
	for _, name := range order {
		var which []int
		var ds []compare.Difference
		for k, c := range out {
			if d, err := compare.Repeated(times[name][c.A], times[name][c.B]); err == nil {
				which, ds = append(which, k), append(ds, d)
			}
		}
		for n, v := range compare.Judge(ds, matters) {
			k := which[n]
			out[k].Times = append(out[k].Times, TimeComparison{Mark: name, Verdict: v})
		}
	}
}
