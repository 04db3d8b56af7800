package runs

import (
	"math"

	"stillair/runs/air"
	"stillair/runs/measure"
	"stillair/runs/usual"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Weather reports give the pressure reduced to sea level. Entered as that of
// the place it makes the air too dense: by 3.5 % at 300 m, by a fifth at 1500
// m. The altitude distinguishes the two: at sea level the pressure is 1013 ± 10
// hPa (mid-latitudes, common practice), at the place less by the ratio of the
// standard atmosphere.
const (
	seaLevelSD   = 1000.0 // Pa
	leastAlt     = 200.0  // m, below which the two hardly differ
	clearlySea   = 3.0    // log of the likelihood ratio, 20 to 1: the pressure is reduced, and is corrected
	perhapsSea   = 0.0    // even: the rider is asked
	enteredSD    = 150.0  // Pa
	reducedSD    = 400.0  // Pa, of one that was reduced by unknown rules with altitudes of a phone
	byAltitudeSD = 1200.0 // Pa, of one from the altitude alone
	barometerSD  = 150.0  // Pa
	apartPa      = 500.0  // Pa between the entered pressure and the barometer, from which the latter is used
)

// settlePressure uses the entered air pressure if it fits the place, else the
// phone's barometer, else the standard atmosphere at the altitude.
func (c *conditions) settlePressure(log *sensors.Log) {
	entered := c.ride.Air.Pressure
	mean, measured := meanPressure(log.Pressure)
	switch {
	case measured && !math.IsNaN(entered) && math.Abs(entered-mean) > apartPa:
		c.warnings = append(c.warnings, finding.New(codeBarometer, finding.Pressure("entered", entered), finding.Pressure("measured", mean)))
		c.air.Pressure = measure.Value{X: mean, SE: barometerSD}
	case !math.IsNaN(entered):
		c.entered = true
		c.air.Pressure = c.enteredPressure(entered, altitude(log))
	case measured:
		c.air.Pressure = measure.Value{X: mean, SE: barometerSD}
	default:
		c.defaults = append(c.defaults, "air.pressure_hpa")
		_, p, _ := air.Standard(altitude(log))
		c.air.Pressure = measure.Value{X: p, SE: byAltitudeSD}
	}
	c.ride.Air.Pressure = c.air.Pressure.X
}

// enteredPressure is the pressure at the place, from the entered one.
func (c *conditions) enteredPressure(entered, alt float64) measure.Value {
	ratio := pressureRatio(alt)
	asReduced := (entered - usual.Pascals) / seaLevelSD
	asLocal := (entered/ratio - usual.Pascals) / seaLevelSD
	odds := (asLocal*asLocal - asReduced*asReduced) / 2
	local := entered * ratio
	args := []finding.Arg{finding.Pressure("entered", entered), finding.Distance("altitude", alt), finding.Pressure("local", local)}
	switch {
	case alt < leastAlt || odds < perhapsSea || asLocal < 0:
		return measure.Value{X: entered, SE: enteredSD}
	case odds < clearlySea:
		c.warnings = append(c.warnings, finding.New(codeMaybeSeaLevel, args...))
		return measure.Value{X: (entered + local) / 2, SE: (entered - local) / 2}
	}
	c.warnings = append(c.warnings, finding.New(codeSeaLevel, args...))
	return measure.Value{X: local, SE: reducedSD}
}

// pressureRatio is the pressure at an altitude over that at sea level.
func pressureRatio(alt float64) float64 {
	_, p, _ := air.Standard(alt)
	return p / usual.Pascals
}

func meanPressure(readings []sensors.Pressure) (pa float64, ok bool) {
	sum, n := 0.0, 0
	for _, p := range readings {
		if !math.IsNaN(p.Pa) {
			sum, n = sum+p.Pa, n+1
		}
	}
	return sum / float64(n), n > 0
}
