package roadload

import (
	"math"

	"stillair/runs/measure"
)

// tyres is the rolling resistance of tyres in general. Runs of few fixes, or of
// little range of speed, know the force well and not how it is parted: there the
// textbooks know more of tyres than the runs do, and the fit takes both.
//
// The spread is the root mean square, about what most motorcycles have, of what
// sources say about a Crr at standstill: 0.02 (Cossalter, Motorcycle Dynamics), 0.0136
// and 0.0169 (radial and bias-ply truck tyres) and 0.006 (both in Wong, Theory of
// Ground Vehicles, from memory), 0.009 (0.005 + 0.01/p at 2.5 bar, textbook
// formula) and 0.0058 (A over the weight at 290 kg, 40 CFR 86.529-98, figure F98-9,
// where all growth counts as air).
func tyres() measure.Value { return measure.Value{X: usualCrr, SE: 0.008} }

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
