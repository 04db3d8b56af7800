package sourcetest

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/median"
)

// Limits that every correct source meets. They are wide: they detect a wrong
// unit or a wrong field, not a bad sensor.
const (
	interleave              = 2.5        // s, by which a sample may be older than the newest of another kind
	leastForce, mostForce   = 7.0, 14.0  // m/s², of the median size of the specific force
	mostTurn                = 6.0        // rad/s, of the median turn rate (exceeded by any bend in deg/s)
	mostSpeed               = 150.0      // m/s
	leastPascal, mostPascal = 3e4, 1.1e5 // Pa, from above the highest pass to a deep mine
)

// first keeps the first case of each problem and counts the others.
type first struct {
	order []string
	count map[string]int
	where map[string]int
}

func (f *first) add(at int, problem string) {
	if f.count == nil {
		f.count, f.where = map[string]int{}, map[string]int{}
	}
	if f.count[problem] == 0 {
		f.order = append(f.order, problem)
		f.where[problem] = at
	}
	f.count[problem]++
}

func (f *first) list() []string {
	var out []string
	for _, p := range f.order {
		out = append(out, fmt.Sprintf("call %d: %s (%d times)", f.where[p], p, f.count[p]))
	}
	return out
}

// inspect checks every call, their order, and the size of the measured values.
func inspect(calls []call) []string {
	var f first
	inOrder(&f, calls)
	oneAfterAnother(&f, calls)
	for i, c := range calls {
		var bad []string
		switch {
		case c.motion != nil:
			bad = motionProblems(*c.motion)
		case c.fix != nil:
			bad = fixProblems(*c.fix)
		case c.pressure != nil:
			bad = pressureProblems(*c.pressure)
		case c.sound != nil:
			bad = soundProblems(*c.sound)
		default:
			bad = stateProblems(*c.state)
		}
		for _, b := range bad {
			f.add(i, b)
		}
	}
	return append(f.list(), sizes(calls)...)
}

func kind(c call) string {
	switch {
	case c.motion != nil:
		return "motion"
	case c.fix != nil:
		return "fix"
	case c.pressure != nil:
		return "pressure"
	case c.sound != nil:
		return "sound"
	}
	return "state"
}

func inOrder(f *first, calls []call) {
	last := map[string]float64{}
	newest := math.Inf(-1)
	for i, c := range calls {
		t, k := c.time(), kind(c)
		if math.IsNaN(t) || math.IsInf(t, 0) {
			f.add(i, k+" with a time that is no finite number")
			continue
		}
		if before, ok := last[k]; ok {
			switch {
			case t < before:
				f.add(i, k+" earlier than the one before it")
			case t == before && k != "state":
				f.add(i, k+" twice with the same time")
			}
		}
		if t < newest-interleave {
			f.add(i, fmt.Sprintf("%s more than %g s behind what came before it", k, interleave))
		}
		last[k] = t
		newest = max(newest, t)
	}
}

func motionProblems(m sensors.Motion) (bad []string) {
	if !finite(m.Force.X, m.Force.Y, m.Force.Z) {
		bad = append(bad, "motion with a specific force that is no finite number")
	}
	if anyInf(m.Turn.X, m.Turn.Y, m.Turn.Z) {
		bad = append(bad, "motion with an infinite turn rate")
	}
	if absent := countNaN(m.Turn.X, m.Turn.Y, m.Turn.Z); absent == 1 || absent == 2 {
		bad = append(bad, "motion with a turn rate of which a part is absent")
	}
	return bad
}

func fixProblems(x sensors.Fix) (bad []string) {
	say := func(wrong bool, what string) {
		if wrong {
			bad = append(bad, "fix with "+what)
		}
	}
	say(!finite(x.Speed), "a speed that is no finite number")
	say(x.Speed < 0 || x.Speed > mostSpeed, fmt.Sprintf("a speed outside 0 to %g m/s", mostSpeed))
	say(anyInf(x.SpeedSD, x.LatDeg, x.LonDeg, x.HSD, x.Alt, x.BearingDeg), "an infinite number")
	say(countNaN(x.LatDeg, x.LonDeg) == 1, "half a position")
	say(math.Abs(x.LatDeg) > 90 || math.Abs(x.LonDeg) > 180, "a position off the globe")
	say(x.BearingDeg < 0 || x.BearingDeg >= 360, "a bearing outside 0 to 360°")
	say(x.SpeedSD < 0 || x.HSD < 0, "a negative standard deviation")
	say(!x.UTC.IsZero() && (x.UTC.Year() < 1980 || x.UTC.Year() > 2200), "a UTC before there were satellites, or far ahead")
	return bad
}

func pressureProblems(p sensors.Pressure) []string {
	if !(p.Pa >= leastPascal && p.Pa <= mostPascal) {
		return []string{fmt.Sprintf("pressure outside %g to %g Pa", leastPascal, mostPascal)}
	}
	return nil
}

func stateProblems(s sensors.State) (bad []string) {
	if s.Sensor != sensors.SensorSound && !slices.Contains(sensorNames(), s.Sensor) {
		bad = append(bad, fmt.Sprintf("state of an unknown sensor %q", s.Sensor))
	}
	if !slices.Contains([]sensors.Condition{sensors.Working, sensors.Asking, sensors.Denied, sensors.Missing,
		sensors.Silent, sensors.Available}, s.Condition) {
		bad = append(bad, fmt.Sprintf("state with an unknown condition %q", s.Condition))
	}
	return bad
}

// sizes checks that the accelerometer measures gravity and that the gyroscope
// is not in degrees.
func sizes(calls []call) (bad []string) {
	var force, turn []float64
	for _, c := range calls {
		if c.motion == nil {
			continue
		}
		force = append(force, r3.Norm(c.motion.Force))
		if c.motion.HasTurn() {
			turn = append(turn, r3.Norm(c.motion.Turn))
		}
	}
	if m := median.Of(force); m < leastForce || m > mostForce {
		bad = append(bad, fmt.Sprintf("the median specific force is %.3g m/s², which is not the size of gravity", m))
	}
	if m := median.Of(turn); m > mostTurn {
		bad = append(bad, fmt.Sprintf("the median turn rate is %.3g rad/s: is it in degrees?", m))
	}
	return bad
}

// accounted checks that each sensor either delivered or had its condition reported.
func accounted(calls []call) (bad []string) {
	seen := map[sensors.Sensor]bool{}
	for _, c := range calls {
		switch {
		case c.motion != nil:
			seen[sensors.SensorMotion] = true
			if c.motion.HasTurn() {
				seen[sensors.SensorTurn] = true
			}
		case c.fix != nil:
			seen[sensors.SensorFix] = true
		case c.pressure != nil:
			seen[sensors.SensorPressure] = true
		case c.sound != nil:
			seen[sensors.SensorSound] = true
		case c.state.Condition != sensors.Working:
			seen[c.state.Sensor] = true
		}
	}
	for _, s := range sensorNames() {
		if !seen[s] {
			bad = append(bad, fmt.Sprintf("nothing came from sensor %q and no State said why", s))
		}
	}
	return bad
}

// sensorNames are the sensors whose absence a source must report.
func sensorNames() []sensors.Sensor {
	return []sensors.Sensor{sensors.SensorMotion, sensors.SensorTurn, sensors.SensorFix, sensors.SensorPressure}
}
