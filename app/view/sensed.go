package view

import (
	"fmt"
	"math"

	"stillair/app/recorder"
	"stillair/export/shown"
	"stillair/fusion"
	"stillair/runs"
	"stillair/sensors"
)

// Sensed describes how the phone's sensors worked over a recording, and the
// offset between its two clocks.
func (c Context) Sensed(senses []recorder.Sense, track *fusion.Track) []SenseLine {
	t := c.Book.Senses
	titles := map[sensors.Sensor]string{sensors.SensorFix: t.Satellites, sensors.SensorMotion: t.Motion, sensors.SensorTurn: t.Turn,
		sensors.SensorPressure: c.named(nameBarometer)}
	var out []SenseLine
	for _, x := range senses {
		if x.Count < 2 || math.IsNaN(x.Rate) {
			continue
		}
		most := 0
		if x.Rate < 3 {
			most = 1
		}
		out = append(out, SenseLine{Sensor: x.Sensor, Title: titles[x.Sensor], Words: fmt.Sprintf(t.Rate, c.Number(x.Rate, most), c.gaps(x))})
	}
	if track == nil || !(track.Lag.Seconds > 0) {
		return out
	}
	l := SenseLine{Title: t.Clocks, Words: fmt.Sprintf(t.LagAssumed, c.Number(track.Lag.Seconds, 2))}
	if track.Lag.Found {
		r := c.reading(shown.Time, track.Lag.Seconds, shown.Normal95*track.Lag.SE)
		l.Words = fmt.Sprintf(t.LagFound, r.Number, r.Spread)
		if s := track.Receiver.Smoothing; s > 0.05 {
			l.Detail = fmt.Sprintf(t.Smoothing, c.Number(s, 1))
		}
	}
	return append(out, l)
}

// gaps says how often a sensor paused.
func (c Context) gaps(x recorder.Sense) string {
	t := c.Book.Senses
	switch x.Gaps {
	case 0:
		return t.NoGaps
	case 1:
		return fmt.Sprintf(t.OneGap, c.Number(x.Longest, 1))
	}
	return fmt.Sprintf(t.Gaps, x.Gaps, c.Number(x.Longest, 1))
}

// sensedLive is the same in one line, for a halt: rates are rounded, so that
// the screen need not be redrawn for each sample.
func (c Context) sensedLive(senses []recorder.Sense, leg *runs.Result) string {
	t := c.Book.Senses
	var parts []string
	for _, x := range senses {
		if x.Condition != sensors.Working || math.IsNaN(x.Rate) {
			continue
		}
		switch x.Sensor {
		case sensors.SensorFix:
			parts = append(parts, t.Satellites+" "+fmt.Sprintf(t.Rate, c.Number(max(1, math.Round(x.Rate)), 0), c.gaps(x)))
		case sensors.SensorMotion:
			parts = append(parts, t.Motion+" "+fmt.Sprintf(t.Rate, c.Number(math.Round(x.Rate/10)*10, 0), c.gaps(x)))
		}
	}
	if leg != nil && leg.Track != nil && leg.Track.Lag.Found {
		r := c.reading(shown.Time, leg.Track.Lag.Seconds, shown.Normal95*leg.Track.Lag.SE)
		parts = append(parts, fmt.Sprintf(t.LagLive, r.Number, r.Spread))
	}
	return join(". ", parts...)
}
