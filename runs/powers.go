package runs

import (
	"cmp"
	"math"
	"slices"

	"stillair/runs/air"
	"stillair/runs/compare"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/power"
	"stillair/runs/roadload"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// PowerCurve is the power at the road of one setup in one gear.
type PowerCurve struct {
	Setup      string
	Gear       string  // as ride.json names it; empty: not known
	RPMPerMPS  float64 // of that gear; NaN: not known
	RevsFrom   RevsFrom
	Curve      *power.Curve
	Correction float64           // factor of SAE J1349 from the day's air to standard air; not applied to Curve
	Notes      []finding.Finding // what a reader should know
}

// RPM is the engine speed at each speed of the curve, 1/min; nil where the
// gear is not known.
func (p PowerCurve) RPM() []float64 {
	if math.IsNaN(p.RPMPerMPS) {
		return nil
	}
	return p.Curve.RPM(p.RPMPerMPS)
}

// What the road load is taken to be where no coast-down measured it: a
// middling motorcycle, with an uncertainty that covers most (Cossalter gives
// 0.18 to 0.7 m² for CdA).
const (
	usualCdA, usualCdASE = 0.5, 0.12
	usualCrr, usualCrrSE = 0.018, 0.005
	usualGrade           = 0.005 // standard deviation of a road's slope
)

// What belongs together: pulls on lines within so many degrees, ridden within
// so many seconds.
const (
	parallelWithin = 25.0
	pairWithin     = 30 * 60.0
)

// For how long the throttle may still be opening at the start of a pull as it
// was found, and already be closing at its end, s.
const opening, closing = 0.3, 0.2

// measurePowers works out the power curves of all setups with accepted pulls.
func measurePowers(result *Result, log *sensors.Log, known conditions) {
	correction := correctionOf(known.air)
	for _, group := range bySetupAndGear(pullsOf(result, log, known.ride)) {
		first := group[0]
		setup := first.setup
		load, notes := loadOf(result, log, known, setup)
		bike := power.Bike{Load: load, MassSD: known.ride.MassSD, RotatingMass: known.ride.RotatingMass}
		pulls, below := atFullThrottle(pairPulls(group), bike, dayOf(result, known))
		for _, p := range below {
			notes = append(notes, finding.New(codeBelowEnvelope, finding.Count("run", p.ID)).OfRun(p.ID))
		}
		for _, part := range power.Parts(pulls) {
			curve, err := power.NewCurve(part, bike, dayOf(result, known), math.NaN(), math.NaN())
			if err != nil {
				result.Warnings = append(result.Warnings, finding.New(codeNoCurve, sensors.Cause(err)))
				continue
			}
			c := PowerCurve{Setup: setup, Curve: curve, Correction: correction, Notes: slices.Clone(notes)}
			c.name(group)
			result.Powers = append(result.Powers, c)
		}
	}
}

// name notes what is known of the gear of a curve.
func (c *PowerCurve) name(group []gearedPull) {
	engine := revsOfGroup(group)
	c.Gear, c.RPMPerMPS, c.RevsFrom = engine.Gear, engine.RPMPerMPS, engine.From
	if !c.Curve.BothWays {
		c.Notes = append(c.Notes, finding.New(codeOneWay))
	}
	switch {
	case engine.Split:
		c.Notes = append(c.Notes, finding.New(codeRevsSplit))
	case !engine.known():
		c.Notes = append(c.Notes, finding.New(codeNoGear))
	}
}

// gearedPull is a pull with its setup and gear.
type gearedPull struct {
	pull    power.Pull
	setup   string
	bearing float64 // degrees; NaN: not known
	Revs
}

// pullsOf takes the accepted pulls out of the track, in order of time, and
// notes in each run what is known of its engine speed.
func pullsOf(result *Result, log *sensors.Log, ride sensors.Ride) []gearedPull {
	var accepted []*Run
	for i := range result.Runs {
		if r := &result.Runs[i]; r.Kind == Pull && r.Accepted() {
			accepted = append(accepted, r)
		}
	}
	ear := newEar(log, result.Track, ride, accepted)
	out := make([]gearedPull, len(accepted))
	parallel(len(accepted), func(i int) {
		r := accepted[i]
		out[i] = gearedPull{setup: r.Setup, bearing: r.BearingDeg, pull: power.OfTrack(result.Track, r.Start+opening, r.End-closing)}
		out[i].pull.ID = r.ID
		out[i].Revs = ear.revs(*r)
		r.Revs = &out[i].Revs
	})
	return out
}

// pairPulls gives the pulls of one curve their directions, and a number to
// each two opposite ones that follow each other.
func pairPulls(group []gearedPull) []power.Pull {
	var out []power.Pull
	pairs, open := 0, -1
	for _, g := range group {
		p := g.pull
		p.Dir = 1 // also where it is not known: as if all went one way, which gives the wide band
		if turn := math.Remainder(g.bearing-group[0].bearing, 360); math.Abs(turn) > 180-parallelWithin {
			p.Dir = -1
		}
		if open >= 0 && out[open].Dir != p.Dir && p.T[0]-out[open].T[0] < pairWithin {
			pairs++
			out[open].Pair, p.Pair = pairs, pairs
			open = -1
		} else {
			open = len(out)
		}
		out = append(out, p)
	}
	return out
}

// bySetupAndGear groups pulls that belong in one curve. Where the gear is not
// known of a pull, it goes with those through much the same speeds.
func bySetupAndGear(pulls []gearedPull) [][]gearedPull {
	var groups [][]gearedPull
	for _, p := range pulls {
		one := []gearedPull{p}
		var apart [][]gearedPull
		for _, group := range groups {
			if slices.ContainsFunc(group, func(q gearedPull) bool { return alike(q, p) }) {
				one = append(group, one...)
				continue
			}
			apart = append(apart, group)
		}
		groups = append(apart, one)
	}
	for _, group := range groups {
		slices.SortFunc(group, func(a, b gearedPull) int { return cmp.Compare(a.pull.ID, b.pull.ID) })
	}
	slices.SortFunc(groups, func(a, b []gearedPull) int { return cmp.Compare(a[0].pull.ID, b[0].pull.ID) })
	return groups
}

// alike reports whether two pulls belong in one curve: in one gear where they
// have any speed in common that can be compared, and through much the same
// speeds where the gear of one is not known.
func alike(a, b gearedPull) bool {
	if a.setup != b.setup {
		return false
	}
	lo := math.Max(a.pull.V[0], b.pull.V[0])
	hi := math.Min(a.pull.V[len(a.pull.V)-1], b.pull.V[len(b.pull.V)-1])
	if a.known() && b.known() {
		return math.Abs(a.RPMPerMPS/b.RPMPerMPS-1) < sameGear && hi-lo > leastShared
	}
	wide := math.Max(a.pull.V[len(a.pull.V)-1]-a.pull.V[0], b.pull.V[len(b.pull.V)-1]-b.pull.V[0])
	return hi-lo > 0.7*wide
}

// sameGear is how far two ratios found in one gear may be apart.
const sameGear = 0.04

// revsOfGroup is what is known most of. Where nothing is, it is said whether
// that is because vibration and sound contradict each other.
func revsOfGroup(group []gearedPull) Revs {
	best := noRevs()
	for _, p := range group {
		switch {
		case p.Gear != "":
			return p.Revs
		case p.known():
			best = p.Revs
		case !best.known():
			best.Split = best.Split || p.Split
		}
	}
	return best
}

// loadOf is the road load of a setup as measured, or as it is on most bikes.
func loadOf(result *Result, log *sensors.Log, known conditions, setup string) (effect.Load, []finding.Finding) {
	density := known.air.Density()
	l := effect.Load{
		CdA: measure.Value{X: usualCdA, SE: usualCdASE}, Crr: measure.Value{X: usualCrr, SE: usualCrrSE},
		K: roadload.DefaultOptions(0).Slope.X, Mass: known.ride.Mass, Density: density.X, Gravity: gravityAt(log),
	}
	for _, m := range result.RoadLoads {
		if m.Setup == setup || len(result.RoadLoads) == 1 {
			l = heldBack(m, l.Gravity)
			if m.Setup != setup {
				return l, []finding.Finding{finding.New(codeOthersLoad, finding.Text("setup", m.Setup))}
			}
			return l, nil
		}
	}
	return l, []finding.Finding{finding.New(codeUsualLoad)}
}

// heldBack is the road load as the day had it: with the uncertainty from noise
// alone. What the split of the force into air and tyres leans on, and what mass
// and density leave in a drag area, change none of the force that held the bike
// back in the coast-downs, and pulls of the same ride meet the same wind,
// tyres and posture. What the mass does to power as a whole is counted there.
func heldBack(m RoadLoad, g float64) effect.Load {
	l := m.Load(g)
	l.CdA.SE, l.Crr.SE, l.Cov = m.CdANoise, m.CrrNoise, m.CovNoise
	return l
}

// dayOf is how much wind and slope to allow for.
func dayOf(result *Result, known conditions) power.Day {
	noise := roadload.DefaultOptions(known.ride.WindSD).Noise
	if result.Estimate != nil {
		noise = result.Estimate.Noise
	}
	return power.Day{WindSD: known.ride.WindSD, GustSD: noise.GustSD, GustTime: noise.GustTime, GradeSD: usualGrade}
}

// correctionOf is the factor of SAE J1349 for the day's air.
func correctionOf(day air.State) float64 {
	t, p := day.Temperature.X, day.Pressure.X
	return air.SAEJ1349(p-air.VapourPressure(t, p, day.Humidity.X), t)
}

// comparePowers judges the mean power over the speeds that two setups share,
// in the same gear.
func comparePowers(result *Result, out []Comparison, matters float64) {
	var which []int
	var ds []compare.Difference
	for k, c := range out {
		d, ok := powerBetween(result, c)
		if !ok {
			continue
		}
		which = append(which, k)
		ds = append(ds, compare.Difference{Delta: d.Mean, Base: 1, DoF: d.DoF, Pairs: d.Pairs})
		if !d.Repeated {
			out[k].Notes = append(out[k].Notes, finding.New(codeByBands))
		}
	}
	for n, v := range compare.Judge(ds, matters) {
		out[which[n]].Power = &v
	}
}

// samePower finds the curves of two setups in one gear; of several the two that
// share most speeds.
func samePower(curves []PowerCurve, a, b string) (x, y *PowerCurve) {
	most := math.Inf(-1)
	for i := range curves {
		for j := range curves {
			p, q := &curves[i], &curves[j]
			if p.Setup != a || q.Setup != b || p.Gear != q.Gear {
				continue
			}
			v, w := p.Curve.Speed, q.Curve.Speed
			if shared := math.Min(v[len(v)-1], w[len(w)-1]) - math.Max(v[0], w[0]); shared > most {
				x, y, most = p, q, shared
			}
		}
	}
	return x, y
}
