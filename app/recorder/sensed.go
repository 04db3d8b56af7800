package recorder

import (
	"math"

	"stillair/sensors"
)

// Sensed summarises each sensor over a whole recording: how often it delivered,
// gaps left out, and how often and for how long it paused. A sensor that
// delivered nothing appears with a Count of 0.
func Sensed(log *sensors.Log) []Sense {
	motion, turn, fixes, pressure := newTally(sensors.SensorMotion), newTally(sensors.SensorTurn), newTally(sensors.SensorFix), newTally(sensors.SensorPressure)
	for _, m := range log.Motion {
		motion.at(m.T)
		if m.HasTurn() {
			turn.at(m.T)
		}
	}
	for _, f := range log.Fixes {
		fixes.at(f.T)
	}
	for _, p := range log.Pressure {
		pressure.at(p.T)
	}
	return []Sense{motion.sense(), turn.sense(), fixes.sense(), pressure.sense()}
}

// tally counts the samples of one sensor.
type tally struct {
	x       Sense
	steady  float64 // s between samples that no gap parts
	between int     // how many such stretches
}

func newTally(s sensors.Sensor) *tally {
	nan := math.NaN()
	return &tally{x: Sense{Sensor: s, Rate: nan, Last: nan, HSD: nan, SpeedSD: nan}}
}

func (c *tally) at(t float64) {
	c.x.Count++
	dt := t - c.x.Last
	if !(dt <= 0) {
		c.x.Last = t
	}
	switch {
	case !(dt > 0):
		return
	case dt > gapAfter(c.x.Sensor):
		c.x.Gaps++
	default:
		c.steady, c.between = c.steady+dt, c.between+1
	}
	c.x.Longest = max(c.x.Longest, dt)
}

func (c *tally) sense() Sense {
	if c.x.Count > 0 {
		c.x.Condition = sensors.Working
	}
	if c.steady > 0 {
		c.x.Rate = float64(c.between) / c.steady
	}
	return c.x
}
