package roadload

import (
	"math"

	"stillair/runs/measure"
	"stillair/runs/usual"
)

// tyres is the prior for the rolling resistance of tyres. Runs of few fixes, or
// of a small range of speed, determine the force well but not its split; there
// the textbooks know more about tyres than the runs do, and the fit combines
// both. The sources are in package usual.
func tyres() measure.Value { return measure.Value{X: usual.Crr, SE: usual.CrrSD} }

const (
	// From this fraction of its standard deviation on, the prior adds a fifth
	// to the information of the runs.
	leanFrom = 0.5
	// If prior and runs differ by more than this, in standard deviations of
	// their difference, they contradict each other: the runs may not be
	// coast-downs, and the prior must not hide that (prior-predictive check:
	// Box, J. R. Stat. Soc. A 143 (1980) 383).
	contradicts = 2.0
)

// leansOn reports whether the runs determine a setup's rolling resistance so
// poorly that the prior is needed, without contradicting it.
func (e *Estimate) leansOn(prior measure.Value) bool {
	wanted := false
	for _, l := range e.Loads {
		wanted = wanted || l.Crr.SE > leanFrom*prior.SE
		if math.Abs(l.Crr.X-prior.X) > contradicts*math.Hypot(l.Crr.SE, prior.SE) {
			return false
		}
	}
	return wanted
}
