package detect

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/usual"
	"stillair/sensors/finding"
)

// Limits of free rolling, in addition to the priors of package usual.
const (
	steepest     = 0.025 // slope of a road that is not steep, 1
	hardest      = 0.05  // rolling resistance and slope together, 1: 0.025 each; engine drag adds 0.04 to 0.1
	gravity      = 9.81  // m/s²; close enough for bounds
	halfDensity  = 0.6   // half of the air density, kg/m³
	inertiaShare = 1 + usual.RotatingShare
	windSlack    = 0.4 // relative change of c₂ of one run by wind and gusts
	improbable   = 3.3 // standard deviations beyond which free rolling is improbable
	unmeant      = 4.2 // and beyond which free rolling was not intended
)

// bounds describe free rolling: the usual deceleration at speed zero and per
// speed squared with their standard deviations, the limits of the latter, and
// the relative uncertainty of the mass.
type bounds struct{ c0, c0SD, c2, c2SD, c2Low, c2High, unsure float64 }

// massRange returns the bounds for a mass, or for any motorcycle if it is NaN.
func massRange(mass float64) bounds {
	unsure := 0.1
	if math.IsNaN(mass) {
		mass, unsure = usual.Mass, usual.AnyMassSD
	}
	c2 := func(cda float64) float64 { return halfDensity * cda / (inertiaShare * mass) }
	return bounds{
		c0: gravity * usual.TyresCrr / inertiaShare, c0SD: gravity * math.Hypot(usual.TyresCrrSD, usual.SlowingGrade),
		c2: c2(usual.CdA), c2SD: c2(math.Hypot(usual.CdASD, unsure*usual.CdA)),
		c2Low:  (1 - windSlack) * (1 - 2*unsure) * c2(usual.LeastCdA),
		c2High: (1 + windSlack) * (1 + 2*unsure) * c2(usual.MostCdA),
		unsure: unsure,
	}
}

// strain is the normalised deviation of the mean deceleration of a piece from
// the usual one of free rolling, in standard deviations; positive if it is
// stronger.
func (b bounds) strain(s *series, p piece) float64 {
	square := 0.0
	for i := p.from; i <= p.to; i++ {
		square += s.v[i] * s.v[i] / float64(p.to-p.from+1)
	}
	usual := b.c0 + b.c2*square
	return (-meanSlope(s, p) - usual) / math.Hypot(b.c0SD, b.c2SD*square)
}

// possible reports whether a piece may be free rolling, or nearly so.
func (b bounds) possible(s *series, p piece) bool {
	return math.Abs(b.strain(s, p)) < unmeant
}

// rolling is a trajectory dv/dt = −(c0 + c2·v²) fitted to a piece.
type rolling struct{ c0, c2 float64 }

// fitRolling fits the speed itself: integrated, the equation of free rolling
// is linear in its coefficients,
//
//	v(t) = v₀ − c₀·t − c₂·∫v² dt
func fitRolling(s *series, p piece) rolling {
	n := p.to - p.from + 1
	design := mat.NewDense(n, 3, nil)
	speed := mat.NewVecDense(n, nil)
	square := 0.0
	for k := range n {
		v := s.v[p.from+k]
		if k > 0 {
			u := s.v[p.from+k-1]
			square += step * (u*u + v*v) / 2
		}
		design.SetRow(k, []float64{1, -float64(k) * step, -square})
		speed.SetVec(k, v)
	}
	var x mat.VecDense
	if err := x.SolveVec(design, speed); err != nil {
		return rolling{math.NaN(), math.NaN()}
	}
	return rolling{c0: x.AtVec(1), c2: x.AtVec(2)}
}

// alike keeps the fitted piece and those with the same trajectory: parts of the
// same interrupted run.
func (r rolling) alike(s *series, fitted piece, pieces []piece) []piece {
	const agreement = 0.3 // m/s²
	var out []piece
	for _, p := range pieces {
		v := (s.v[p.from] + s.v[p.to]) / 2
		if p == fitted || math.Abs(-meanSlope(s, p)-r.c0-r.c2*v*v) < agreement {
			out = append(out, p)
		}
	}
	return out
}

// against is the reason why a piece with the fitted trajectory cannot be free
// rolling, or "".
func (r rolling) against(b bounds, s *series, p piece) finding.Code {
	switch strain := b.strain(s, p); {
	case math.IsNaN(r.c0):
		return codeNotSmooth
	case strain > improbable:
		return codeTooHard
	case strain < -improbable:
		return codeTooLittle
	case r.c2 > b.c2High:
		return codeTooHardFast
	case r.c2 < b.c2Low:
		return codeTooLittleFast
	case r.c0 > gravity*hardest:
		return codeTooHard
	case r.c0 < -gravity*steepest:
		return codeTooLittleSlow
	}
	return ""
}

// A bend causes drag: tyres with a lateral force F at the cornering stiffness C
// run at a slip angle F/C, which costs a force of F²/C (Pacejka, Tyre and
// Vehicle Dynamics), which is a deceleration of m/C for each (m/s²)² of
// sideways acceleration. Both tyres of a motorcycle have 15 to 35 kN/rad
// (textbooks, from memory), so m/C is about 0.012 s²/m. A bend also changes the
// direction of the wind relative to the bike.
const (
	corneringLoss = 0.012 // s²/m
	bendsCaution  = 0.02  // share of the mean deceleration by bends, from which there is a caution
	tooCostly     = 0.06  // and beyond which a run does not count
	turnsWind     = 1.0   // rad that a run may turn: half of a wind along its beginning is then a cross-wind
)

// bends are the findings about bends in a piece: a reason against it, or a
// caution.
func bends(s *series, p piece) (reasons, cautions []finding.Finding) {
	turned, square, n := 0.0, 0.0, 0.0
	for i := p.from; i <= p.to; i++ {
		if math.IsNaN(s.turn[i]) {
			continue
		}
		turned += s.turn[i] * step
		square += s.turn[i] * s.v[i] * s.turn[i] * s.v[i]
		n++
	}
	cost := corneringLoss * square / math.Max(n, 1) / math.Max(-meanSlope(s, p), 0.1)
	switch {
	case math.Abs(turned) > turnsWind || cost > tooCostly:
		reasons = append(reasons, finding.New(codeBends, finding.Angle("by", math.Abs(turned)), finding.Share("cost", cost)))
	case cost > bendsCaution:
		cautions = append(cautions, finding.New(codeSomeBends, finding.Share("cost", cost)))
	}
	return reasons, cautions
}
