// Package measure defines the type of every computed quantity, a number with
// its standard uncertainty, and the propagation of uncertainty (JCGM 100:2008,
// the "GUM", section 5).
package measure

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Value is an estimate X with its standard uncertainty SE, both in the unit
// that the field's doc gives.
type Value struct{ X, SE float64 }

// Unknown is the value of what was not measured.
func Unknown() Value { return Value{math.NaN(), math.NaN()} }

// Known reports whether the value was measured at all.
func (v Value) Known() bool { return !math.IsNaN(v.X) }

// Times returns the value multiplied by a factor that has no uncertainty: a
// change of unit.
func (v Value) Times(k float64) Value { return Value{v.X * k, math.Abs(k) * v.SE} }

// Interval returns the interval that holds the true value with probability p,
// with dof degrees of freedom behind SE (Student's t; GUM annex G.3). A dof
// that is infinite or not positive is taken as infinite.
func (v Value) Interval(p, dof float64) [2]float64 {
	h := Quantile(p, dof) * v.SE
	return [2]float64{v.X - h, v.X + h}
}

// Quantile returns the coverage factor of a two-sided interval with
// probability p and dof degrees of freedom.
func Quantile(p, dof float64) float64 {
	upper := 1 - (1-p)/2
	if dof <= 0 || math.IsInf(dof, 1) {
		return distuv.UnitNormal.Quantile(upper)
	}
	return distuv.StudentsT{Sigma: 1, Nu: dof}.Quantile(upper)
}

// TwoSided returns the two-sided p-value of v against zero, with dof degrees of
// freedom (Student's t).
func (v Value) TwoSided(dof float64) float64 {
	t := math.Abs(v.X / v.SE)
	if dof <= 0 || math.IsInf(dof, 1) {
		return 2 * distuv.UnitNormal.Survival(t)
	}
	return 2 * distuv.StudentsT{Sigma: 1, Nu: dof}.Survival(t)
}
