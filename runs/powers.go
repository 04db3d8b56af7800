package runs

import (
	"math"
	"slices"

	"stillair/runs/air"
	"stillair/runs/compare"
	"stillair/runs/effect"
	"stillair/runs/power"
	"stillair/runs/roadload"
	"stillair/runs/usual"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// PowerCurve is the power at the road of one setup in one gear.
type PowerCurve struct {
	Setup      string
	Gear       string  // its name in ride.json; empty: not known
	RPMPerMPS  float64 // of that gear; NaN: not known
	RevsFrom   RevsFrom
	Curve      *power.Curve
	Correction float64           // factor of SAE J1349 from the day's air to standard air; not applied to Curve
	Notes      []finding.Finding // notes for the reader
}

// RPM is the engine speed at each speed of the curve, 1/min; nil where the
// gear is not known.
func (p PowerCurve) RPM() []float64 {
	if math.IsNaN(p.RPMPerMPS) {
		return nil
	}
	return p.Curve.RPM(p.RPMPerMPS)
}

// measurePowers computes the power curves of all setups with accepted pulls.
func measurePowers(result *Result, log *sensors.Log, known conditions) {
	groups, day, correction := bySetupAndGear(pullsOf(result, log, known.ride)), dayOf(result, known), correctionOf(known.air)
	bikes, said, outdone := make([]power.Bike, len(groups)), make([][]finding.Finding, len(groups)), make([]int, len(groups))
	for g, group := range groups {
		load, notes := loadOf(result, log, known, group[0].setup)
		bikes[g], said[g] = power.Bike{Load: load, MassSD: known.ride.MassSD, RotatingMass: known.ride.RotatingMass}, notes
		outdone[g] = outdoneBy(groups, g, bikes[g], day)
	}
	for g, group := range groups {
		if outdone[g] >= 0 {
			continue
		}
		bike, notes := bikes[g], said[g]
		pulls, below := atFullThrottle(pairPulls(group), bike, day)
		for k, by := range outdone {
			if by == g {
				below = append(below, groups[k][0].pull)
			}
		}
		for _, p := range below {
			notes = append(notes, finding.New(codeBelowEnvelope, finding.Count("run", p.ID)).OfRun(p.ID))
		}
		for _, part := range power.Parts(pulls) {
			curve, err := power.NewCurve(part, bike, day, math.NaN(), math.NaN())
			if err != nil {
				result.Warnings = append(result.Warnings, finding.New(codeNoCurve, sensors.Cause(err)))
				continue
			}
			c := PowerCurve{Setup: group[0].setup, Curve: curve, Correction: correction, Notes: slices.Clone(notes)}
			c.name(group)
			result.Powers = append(result.Powers, c)
		}
	}
}

// name sets what is known of the gear of a curve.
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

// loadOf is the road load of a setup as measured, or as it is on most bikes.
func loadOf(result *Result, log *sensors.Log, known conditions, setup string) (effect.Load, []finding.Finding) {
	l := effect.Usual(known.ride.Mass, known.air.Density().X, gravityAt(log))
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

// heldBack is the measured road load with the uncertainty from noise alone. The
// assumptions behind the split into air and tyres, and the errors of mass and
// density in a drag area, do not affect the total force measured in the
// coast-downs, and pulls of the same ride have the same wind, tyres and
// posture. The effect of mass on power is included separately.
func heldBack(m RoadLoad, g float64) effect.Load {
	l := m.Load(g)
	l.CdA.SE, l.Crr.SE, l.Cov = m.CdANoise, m.CrrNoise, m.CovNoise
	return l
}

// dayOf returns the standard deviations of wind and slope for the ride.
func dayOf(result *Result, known conditions) power.Day {
	noise := roadload.DefaultOptions(known.ride.WindSD).Noise
	if result.Estimate != nil {
		noise = result.Estimate.Noise
	}
	return power.Day{WindSD: known.ride.WindSD, GustSD: noise.GustSD, GustTime: noise.GustTime, GradeSD: usual.Grade}
}

// correctionOf is the factor of SAE J1349 for the day's air.
func correctionOf(day air.State) float64 {
	t, p := day.Temperature.X, day.Pressure.X
	return air.SAEJ1349(p-air.VapourPressure(t, p, day.Humidity.X), t)
}

// comparePowers tests the mean power of two setups over their common speeds, in
// the same gear.
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

// samePower finds the curves of two setups in one gear; of several the two with
// most common speeds.
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
