package runs

import (
	"errors"
	"fmt"
	"math"

	"stillair/runs/compare"
	"stillair/runs/measure"
	"stillair/runs/worth"
)

// What two days differ in that nobody measured, as relative standard
// deviations of CdA and Crr: cross-wind, clothing, the tyres' and the road's
// temperature (common practice). It is added to every comparison across days.
const (
	dayToDayCdA = 0.015
	dayToDayCrr = 0.05
)

// Named is a result with the name of its ride.
type Named struct {
	Name   string
	Result *Result
}

// Across compares setups that were ridden on different rides: every setup of
// every ride with every one of another. Air and mass are corrected for, each
// ride's road by its own opposite pairs; the comparison is weaker than one
// within a ride, and says so.
func Across(rides []Named, matters float64) ([]Comparison, error) {
	if matters == 0 {
		matters = DefaultMatters
	}
	var out []Comparison
	var cda, crr []compare.Difference
	for i, a := range rides {
		for _, b := range rides[i+1:] {
			for _, la := range a.Result.RoadLoads {
				for _, lb := range b.Result.RoadLoads {
					dc, dr := acrossDays(la, lb)
					cda, crr = append(cda, dc), append(crr, dr)
					out = append(out, Comparison{A: label(a, la), B: label(b, lb), Load: &worth.Change{CdA: dc.Delta, Crr: dr.Delta, Cov: la.Cov + lb.Cov},
						Notes: []string{"ridden on different rides, so what changed between them is in the difference: weaker than A/B/B/A on one day"}})
				}
			}
		}
	}
	if len(out) == 0 {
		return nil, errors.New("fewer than two of these rides have a road load: each needs coast-downs in both directions")
	}
	vc, vr := compare.Judge(cda, matters), compare.Judge(crr, 2*matters)
	for k := range out {
		out[k].CdA, out[k].Crr = &vc[k], &vr[k]
	}
	return out, nil
}

func label(ride Named, l RoadLoad) string {
	if l.Setup == "" {
		return ride.Name
	}
	return fmt.Sprintf("%s (%s)", l.Setup, ride.Name)
}

// acrossDays is the difference of two independent road loads, with Welch's
// degrees of freedom.
func acrossDays(a, b RoadLoad) (cda, crr compare.Difference) {
	difference := func(x, y measure.Value, between float64) compare.Difference {
		between *= x.X
		va, vb := x.SE*x.SE, y.SE*y.SE
		se := math.Sqrt(va + vb + between*between)
		dof := math.Inf(1)
		if a.DoF > 0 && b.DoF > 0 {
			// The part between days is common practice, not counted from data.
			dof = math.Pow(se, 4) / (va*va/a.DoF + vb*vb/b.DoF)
		}
		return compare.Difference{Delta: measure.Value{X: y.X - x.X, SE: se}, Base: x.X, DoF: dof, Pairs: min(a.Pairs, b.Pairs)}
	}
	return difference(a.CdA, b.CdA, dayToDayCdA), difference(a.Crr, b.Crr, dayToDayCrr)
}
