package runs

import (
	"math"
	"slices"

	"stillair/runs/power"
	"stillair/runs/roadload"
	"stillair/sensors/finding"
)

// sameEngineSD is the relative standard deviation of an engine's thrust between
// two setups of a ride: intake air some kelvins warmer, a hot or cooled-down
// engine (common practice).
const sameEngineSD = 0.01

// unentered is a change of mass that the pulls show but that was not entered.
type unentered struct {
	share  Value // relative: how much heavier setup B is than entered
	thrust Value // relative: how much more thrust B has at the same speed, with the mass as entered
}

// unenteredLoad looks for one. A coast-down gives road load over mass, a pull
// the acceleration; together they give the engine's force over mass. The engine
// is the same with both setups, so the ratio of these is that of the masses,
// whatever the drag. It returns false if B was weighed, if there are no pulls
// of both in one gear, if many were at part throttle, or if the masses agree.
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

// oftenPart reports whether many of the pulls with two setups were not shown to
// be at full throttle. Those accepted because they agree then agree by chance
// too often to determine a mass.
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

// note is the finding about it: either the engine changed, or the mass.
func (u unentered) note(c Comparison, a RoadLoad, delta Value) finding.Finding {
	code := codeHeavier
	if u.share.X < 0 {
		code = codeLighter
	}
	return finding.New(code, finding.Text("setup", c.B), finding.Share("thrust", math.Abs(u.thrust.X)),
		finding.Mass("load", math.Abs(u.share.X)*a.Mass).With(u.share.SE*a.Mass),
		finding.Share("corrected", delta.X/a.CdA.X+u.share.X)).OfSetup(c.B)
}

// widen adds the effect of such a load to the uncertainty of a difference of
// drag area: until the bike is weighed, no sign is stated that the load could
// reverse.
func (u unentered) widen(d *roadload.LoadDifference, base float64) {
	by := math.Hypot(u.share.X, u.share.SE) * base
	se := math.Hypot(d.CdA.SE, by)
	d.DoF *= math.Pow(se/d.CdA.SE, 4)
	d.CdA.SE = se
	d.Budget = append(d.Budget, roadload.Part{Code: codeByPulls, SE: by})
}
