package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/sensors/finding"
)

// Part is one part of a figure's uncertainty. The squares of all parts add up
// to the square of the whole (GUM, JCGM 100:2008, section 5.1).
type Part struct {
	Code finding.Code // its source
	SE   float64      // in the figure's unit
}

// Budget is the uncertainty budget of a setup's CdA (m²) and Crr.
func (e *Estimate) Budget(setup int) (cda, crr []Part) {
	w := make([]float64, 2*len(e.Loads))
	w[cdaAt(setup)] = 1
	cda = e.budget(w)
	clear(w)
	w[crrAt(setup)] = 1
	return cda, e.budget(w)
}

// budget is the uncertainty budget of Σ wᵢ·θᵢ as withAssumed gives it.
func (e *Estimate) budget(w []float64) []Part {
	return e.parts(w, func(j int) float64 { return e.Assumed.what[j].sd })
}

// contrastBudget is the same for a difference as contrast gives it.
func (e *Estimate) contrastBudget(w []float64) []Part {
	return e.parts(w, func(j int) float64 { return e.Assumed.shown[j].SE })
}

// parts makes a budget with the size of each assumption from sd. Mass and air
// density are common to all setups, so their parts are proportional to the
// weighted sum of the drag areas.
func (e *Estimate) parts(w []float64, sd func(j int) float64) []Part {
	v := mat.NewVecDense(len(w), w)
	scale := 0.0
	for i := range e.Loads {
		scale += w[cdaAt(i)] * e.held[cdaAt(i)]
	}
	mass, density := math.Abs(scale)*e.Assumed.massSD, math.Abs(scale)*e.Assumed.airSD
	noise := mat.Inner(v, e.Cov, v) - mass*mass - density*density
	out := []Part{{codeNoise, math.Sqrt(math.Max(0, noise))}, {codeMass, mass}, {codeAir, density}}
	for j, a := range e.Assumed.what {
		part := Part{a.code, sd(j) * math.Abs(e.Assumed.moves(j, w))}
		if last := &out[len(out)-1]; last.Code == a.code { // on another road
			last.SE = math.Hypot(last.SE, part.SE)
			continue
		}
		out = append(out, part)
	}
	own := 0.0
	for i, sd := range e.Assumed.loadSD {
		if i < len(e.Loads) {
			own = math.Hypot(own, w[cdaAt(i)]*sd*e.held[cdaAt(i)])
		}
	}
	return append(out, Part{codeOwnLoad, own})
}
