package runs

import (
	"math"

	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/sensors/finding"
)

// Load is the road load in the air of its ride, where gravity is g in m/s².
func (l RoadLoad) Load(g float64) effect.Load {
	return effect.Load{CdA: l.CdA, Crr: l.Crr, Cov: l.Cov, K: roadload.DefaultOptions(0).Slope.X,
		Mass: l.Mass, Density: l.Density, Gravity: g}
}

// LoadOf is the road load of a setup in the air of the ride, for package
// effect.
func (r *Result) LoadOf(setup string) (effect.Load, error) {
	for _, l := range r.RoadLoads {
		if l.Setup == setup {
			return l.Load(r.Gravity), nil
		}
	}
	return effect.Load{}, finding.Fail(codeNotMeasured, finding.Text("setup", setup))
}

// TopSpeeds computes the top speed of every setup whose power and road load are
// both known, in the gear with the highest one. limitRPM is the engine's speed
// limit, 1/min; +Inf where it is not known.
func (r *Result) TopSpeeds(limitRPM float64) map[string]effect.Top {
	out := map[string]effect.Top{}
	for _, p := range r.Powers {
		load, err := r.LoadOf(p.Setup)
		if err != nil {
			continue
		}
		gearLimit := math.Inf(1)
		if !math.IsNaN(p.RPMPerMPS) {
			gearLimit = limitRPM / p.RPMPerMPS
		}
		top, err := effect.TopSpeed(load, effect.Available{Speed: p.Curve.Speed, Power: p.Curve.Power}, gearLimit)
		if err != nil {
			continue
		}
		if had, ok := out[p.Setup]; !ok || top.Speed.X > had.Speed.X {
			out[p.Setup] = top
		}
	}
	return out
}

// AtSpeed holds force and power of one setup at a steady speed.
type AtSpeed struct {
	Setup    string
	Force    measure.Value // N
	Power    measure.Value // W
	AirShare float64       // of the force, 0 to 1
}

// AtSpeed computes force and power at the steady speed v in m/s for every setup
// with a road load.
func (r *Result) AtSpeed(v float64) []AtSpeed {
	var out []AtSpeed
	for _, l := range r.RoadLoads {
		load, err := r.LoadOf(l.Setup)
		if err != nil || load.Check() != nil {
			continue
		}
		out = append(out, AtSpeed{Setup: l.Setup, Force: load.Force(v), Power: load.Power(v), AirShare: load.AirShare(v)})
	}
	return out
}
