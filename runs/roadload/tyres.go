package roadload

import (
	"math"

	"stillair/runs/measure"
	"stillair/runs/usual"
)

// tyres is the rolling resistance of tyres in general. Runs of few fixes, or of
// little range of speed, know the force well and not how it is divided: there the
// textbooks know more about tyres than the runs do, and the fit takes both. The
// sources are in package usual.
func tyres() measure.Value { return measure.Value{X: usual.Crr, SE: usual.CrrSD} }

const (
	// From this share of its spread on, the prior adds a fifth to what the runs say.
	leanFrom = 0.5
	// Where it and the runs are farther apart, in standard deviations of their
	// difference, they contradict each other: the runs may not be coast-downs, and
	// the prior must not hide that (Box, J. R. Stat. Soc. A 143 (1980) 383).
	contradicts = 2.0
)

// leansOn reports whether a setup's rolling resistance is known so badly by the
// runs that a prior is wanted, and none contradicts it.
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
