package effect

import (
	"math"
	"sort"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// Available is the power at the road that a bike has at full throttle, over
// road speed in one gear, as pulls measured it.
type Available struct {
	Speed []float64       // m/s, ascending
	Power []measure.Value // W
}

// Limit is the cause that limits a top speed.
type Limit string

// Causes of a limit.
const (
	ByPower  Limit = "power"       // available power meets road load
	ByGear   Limit = "gearing"     // the engine's speed limit comes first
	NotInRun Limit = "not reached" // the measured curve ends before either
)

// Top is a top speed. Where Limit is NotInRun, Speed is the end of the
// measured power curve, which the top speed exceeds: nothing is extrapolated.
type Top struct {
	Speed measure.Value // m/s
	Limit Limit
}

// TopSpeed finds where available power meets the road load on the level in
// still air. gearLimit is the road speed at the engine's limit in that gear,
// m/s; +Inf where it is not known.
func TopSpeed(l Load, av Available, gearLimit float64) (Top, error) {
	if err := l.Check(); err != nil {
		return Top{}, err
	}
	n := len(av.Speed)
	if n < 2 || n != len(av.Power) || !sort.Float64sAreSorted(av.Speed) {
		return Top{}, finding.Fail("worth.no_curve")
	}
	surplus := func(i int) float64 { return av.Power[i].X - l.Power(av.Speed[i]).X }
	if surplus(0) <= 0 {
		return Top{}, finding.Fail("worth.curve_too_high")
	}
	for i := 1; i < n; i++ {
		if surplus(i) > 0 {
			continue
		}
		v := crossing(l, av, i)
		if v.X >= gearLimit {
			break
		}
		return Top{Speed: v, Limit: ByPower}, nil
	}
	if gearLimit <= av.Speed[n-1] {
		return Top{Speed: measure.Value{X: gearLimit}, Limit: ByGear}, nil
	}
	return Top{Speed: measure.Value{X: av.Speed[n-1]}, Limit: NotInRun}, nil
}

// crossing is where the straight line between points i−1 and i of the curve
// meets the load.
func crossing(l Load, av Available, i int) measure.Value {
	v0, v1 := av.Speed[i-1], av.Speed[i]
	p0, p1 := av.Power[i-1], av.Power[i]
	rise := (p1.X - p0.X) / (v1 - v0)
	v := bisect(v0, v1, func(v float64) float64 { return l.Power(v).X - p0.X - rise*(v-v0) })
	w := (v - v0) / (v1 - v0)
	// Errors of neighbouring points of one curve are fully correlated.
	se := (1-w)*p0.SE + w*p1.SE
	return measure.Value{X: v, SE: math.Hypot(se, l.Power(v).SE) / (l.slope(v) - rise)}
}
