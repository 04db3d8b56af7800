package runs

import (
	"fmt"
	"math"
	"slices"

	"stillair/runs/compare"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/sensors/finding"
)

// Unmeasured differences between two days, as relative standard deviations of
// CdA and Crr: cross-wind, clothing, the tyres' and the road's temperature
// (common practice). It is added to every comparison across days.
const (
	dayToDayCdA = 0.015
	dayToDayCrr = 0.05
)

// Named is a result with the name of its ride.
type Named struct {
	Name   string
	Result *Result
}

// Call names one setup of a ride among several.
func (n Named) Call(setup string) string {
	if setup == "" {
		return n.Name
	}
	return fmt.Sprintf("%s (%s)", setup, n.Name)
}

// Asked holds the options of a comparison of rides.
type Asked struct {
	Matters float64 // relative difference that matters; 0: DefaultMatters
	Bikes   bool    // compare different bikes too, with a note on each comparison
}

// Across compares setups that were ridden on different rides: every setup of
// every ride with every one of another. Air and mass are corrected for. If the
// days had similar wind all rides are fitted together, so that a common road
// cancels; otherwise each ride is fitted on its own pairs. The comparison is
// weaker than one within a ride, and has a note about it. It returns a
// *sensors.InputError for one recording given twice, and for different bikes
// unless they are allowed.
func Across(rides []Named, asked Asked) ([]Comparison, error) {
	if err := refused(rides, asked); err != nil {
		return nil, err
	}
	matters := asked.Matters
	if matters == 0 {
		matters = DefaultMatters
	}
	var with []Named
	var first []int // index of the first setup of each ride in the common fit
	setups := 0
	for _, r := range rides {
		if len(r.Result.RoadLoads) > 0 {
			with, first = append(with, r), append(first, setups)
			setups += len(r.Result.RoadLoads)
		}
	}
	if len(with) < 2 {
		return nil, finding.Fail(codeFewRides)
	}
	all := together(with)
	var out []Comparison
	var cda, crr []compare.Difference
	for i, a := range with {
		for j := i + 1; j < len(with); j++ {
			for ka, la := range a.Result.RoadLoads {
				for kb, lb := range with[j].Result.RoadLoads {
					d, causes := independent(la, lb), limitsApart(la, lb)
					if all != nil {
						d = all.est.Between(first[i]+ka, first[j]+kb)
						causes = all.bounds.limitsBetween(all.est, all.opts, first[i]+ka, first[j]+kb)
					}
					dc, dr := acrossDays(d, la, lb)
					cda, crr = append(cda, dc), append(crr, dr)
					base := la.Load(a.Result.Gravity)
					out = append(out, Comparison{A: a.Call(la.Setup), B: with[j].Call(lb.Setup), Base: &base, Load: &effect.Change{CdA: dc.Delta, Crr: dr.Delta, Cov: d.Cov},
						Budget: append(d.Budget, roadload.Part{Code: codeDays, SE: dayToDayCdA * la.CdA.X}),
						Limits: mostFirst(append(causes, Limit{ByDays, dayToDayCdA * la.CdA.X})),
						Notes:  notesAcross(a.Result, with[j].Result)})
				}
			}
		}
	}
	vc, vr := compare.Judge(cda, matters), compare.Judge(crr, 2*matters)
	for k := range out {
		out[k].CdA, out[k].Crr = &vc[k], &vr[k]
	}
	return out, nil
}

// notesAcross are the findings about what weakens a comparison of two rides.
func notesAcross(a, b *Result) []finding.Finding {
	notes := []finding.Finding{finding.New(codeOtherDay)}
	if differentBikes(a, b) {
		notes = append([]finding.Finding{finding.New(codeOtherBike, bikesOf(a, b)...)}, notes...)
	}
	return notes
}

// independent is the difference of two independent road loads, with Welch's
// degrees of freedom.
func independent(a, b RoadLoad) roadload.LoadDifference {
	difference := func(x, y measure.Value) (measure.Value, float64) {
		va, vb := x.SE*x.SE, y.SE*y.SE
		dof := math.Inf(1)
		if a.DoF > 0 && b.DoF > 0 {
			dof = (va + vb) * (va + vb) / (va*va/a.DoF + vb*vb/b.DoF)
		}
		return measure.Value{X: y.X - x.X, SE: math.Sqrt(va + vb)}, dof
	}
	d := roadload.LoadDifference{Cov: a.Cov + b.Cov, Budget: budgetApart(a.Budget, b.Budget)}
	d.CdA, d.DoF = difference(a.CdA, b.CdA)
	d.Crr, d.CrrDoF = difference(a.Crr, b.Crr)
	return d
}

// budgetApart is the uncertainty budget of a difference of two independent
// figures.
func budgetApart(a, b []roadload.Part) []roadload.Part {
	out := slices.Clone(a)
	for _, p := range b {
		i := slices.IndexFunc(out, func(o roadload.Part) bool { return o.Code == p.Code })
		if i < 0 {
			out = append(out, p)
			continue
		}
		out[i].SE = math.Hypot(out[i].SE, p.SE)
	}
	return out
}

// acrossDays adds the unmeasured differences between days. They are not
// estimated from data, so they raise the degrees of freedom.
//
// Rolling resistance is compared as it would be in air of 20 °C.
func acrossDays(d roadload.LoadDifference, a, b RoadLoad) (cda, crr compare.Difference) {
	widened := func(delta measure.Value, dof, base, between float64) compare.Difference {
		se := math.Hypot(delta.SE, between*base)
		return compare.Difference{Delta: measure.Value{X: delta.X, SE: se}, Base: base,
			DoF: dof * math.Pow(se/delta.SE, 4), Pairs: min(a.Pairs, b.Pairs)}
	}
	crr = widened(towards20(d.Crr, a, b), d.CrrDoF, a.Crr.X, dayToDayCrr)
	return widened(d.CdA, d.DoF, a.CdA.X, dayToDayCdA), crr
}

// towards20 corrects a difference of rolling resistance to 20 °C: the same
// tyres have more on a cold day. The uncertainty of the coefficient is common
// to both; those of the two temperatures are independent.
func towards20(d Value, a, b RoadLoad) Value {
	if a.CrrAt20 == (Value{}) || b.CrrAt20 == (Value{}) {
		return d
	}
	const unsure = tyreCoolingSD / tyreCooling
	by := func(l RoadLoad) float64 { return l.CrrAt20.X - l.Crr.X }
	own := func(l RoadLoad) float64 { // what the temperature leaves
		carried := math.Hypot(l.Crr.SE*l.CrrAt20.X/l.Crr.X, unsure*by(l))
		return math.Sqrt(math.Max(0, l.CrrAt20.SE*l.CrrAt20.SE-carried*carried))
	}
	moved := by(b) - by(a)
	return Value{X: d.X + moved, SE: math.Hypot(math.Hypot(d.SE, unsure*moved), math.Hypot(own(a), own(b)))}
}
