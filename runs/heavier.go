package runs

import (
	"math"
	"slices"

	"stillair/runs/power"
	"stillair/runs/roadload"
	"stillair/sensors/finding"
)

// sameEngineSD is how far, as a fraction, the thrust of one engine differs
// between two setups of a ride for causes of its own: intake air some kelvins
// warmer, hot or cooled down (common practice).
const sameEngineSD = 0.01

// unentered is a change of weight that the pulls show and nobody entered.
type unentered struct {
	share  Value // of the mass: by so much setup B is heavier than entered
	thrust Value // by so much B pushes harder at the same speed, taken with the mass as entered
}

// unenteredLoad looks for it. A coast-down gives the road load over the mass, a
// pull the acceleration; together they give the engine's force over the mass. The
// engine is the same with both setups, so the ratio of these is that of the
// masses, whatever the drag. It is false where B was weighed, where pulls of both
// in one gear are missing, where many were ridden at part throttle, or where they
// agree.
func unenteredLoad(result *Result, c Comparison) (unentered, bool) {
	if result.weighed[c.B] || oftenPart(result, c) {
		return unentered{}, false
	}
	d, ok := powerBetween(result, c)
	if !ok {
		return unentered{}, false
	}
	thrust := Value{X: d.Mean.X, SE: math.Hypot(math.Max(d.Mean.SE, d.BandSE), sameEngineSD)}
	if thrust.TwoSided(d.DoF*math.Pow(thrust.SE/d.Mean.SE, 4)) >= 0.05 {
		return unentered{}, false
	}
	ratio := 1 / (1 + thrust.X)
	return unentered{share: Value{X: ratio - 1, SE: ratio * ratio * thrust.SE}, thrust: thrust}, true
}

// oftenPart reports whether of the pulls with two setups a good part was not shown to
// be at full throttle. Those that agree so well that they count then agree by
// chance too often to weigh a bike by.
func oftenPart(result *Result, c Comparison) bool {
	full, part := 0, 0
	for _, r := range result.Runs {
		switch {
		case r.Kind != Pull || r.Setup != c.A && r.Setup != c.B:
		case r.Accepted():
			full++
		case slices.ContainsFunc(r.Reasons, func(f finding.Finding) bool { return f.Is(codeUnproven) || f.Is(codeBelowBike) }):
			part++
		}
	}
	return 2*part > full
}

// powerBetween compares the pulls of two setups in one gear.
func powerBetween(result *Result, c Comparison) (power.Difference, bool) {
	a, b := samePower(result.Powers, c.A, c.B)
	if a == nil {
		return power.Difference{}, false
	}
	d, err := power.Compare(a.Curve, b.Curve)
	return d, err == nil
}

// note says so: either the engine changed, or the weight.
func (u unentered) note(c Comparison, a RoadLoad, delta Value) finding.Finding {
	code := codeHeavier
	if u.share.X < 0 {
		code = codeLighter
	}
	return finding.New(code, finding.Text("setup", c.B), finding.Share("thrust", math.Abs(u.thrust.X)),
		finding.Mass("load", math.Abs(u.share.X)*a.Mass).With(u.share.SE*a.Mass),
		finding.Share("corrected", delta.X/a.CdA.X+u.share.X)).OfSetup(c.B)
}

// widen takes into a difference of drag area what such a load would make of it:
// until somebody weighs the bike, no sign is stated that it could turn.
func (u unentered) widen(d *roadload.LoadDifference, base float64) {
	by := math.Hypot(u.share.X, u.share.SE) * base
	se := math.Hypot(d.CdA.SE, by)
	d.DoF *= math.Pow(se/d.CdA.SE, 4)
	d.CdA.SE = se
	d.Budget = append(d.Budget, roadload.Part{Code: codeByPulls, SE: by})
}
