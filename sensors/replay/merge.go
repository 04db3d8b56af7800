package replay

import (
	"stillair/sensors"
	"stillair/sensors/finding"
)

// merge goes through a log in order of time. At equal times a state comes
// first, so that a sink learns that a sensor works before its first sample.
type merge struct {
	log                                 *sensors.Log
	state, motion, pressure, fix, sound int // numbers taken so far
	pick                                kind
}

type kind int

const (
	ofState kind = iota
	ofMotion
	ofPressure
	ofFix
	ofSound
)

// next picks the next sample without taking it; it returns its time, and
// false where there is none.
func (m *merge) next() (float64, bool) {
	at, found := 0.0, false
	consider := func(k kind, t float64) {
		if !found || t < at {
			at, found, m.pick = t, true, k
		}
	}
	if m.state < len(m.log.States) {
		consider(ofState, m.log.States[m.state].T)
	}
	if m.motion < len(m.log.Motion) {
		consider(ofMotion, m.log.Motion[m.motion].T)
	}
	if m.pressure < len(m.log.Pressure) {
		consider(ofPressure, m.log.Pressure[m.pressure].T)
	}
	if m.fix < len(m.log.Fixes) {
		consider(ofFix, m.log.Fixes[m.fix].T)
	}
	if m.sound < len(m.log.Sound) {
		consider(ofSound, m.log.Sound[m.sound].T)
	}
	return at, found
}

// deliver takes what next picked.
func (m *merge) deliver(sink sensors.Sink) {
	switch m.pick {
	case ofState:
		sink.State(m.log.States[m.state])
		m.state++
	case ofMotion:
		sink.Motion(m.log.Motion[m.motion])
		m.motion++
	case ofPressure:
		sink.Pressure(m.log.Pressure[m.pressure])
		m.pressure++
	case ofFix:
		sink.Fix(m.log.Fixes[m.fix])
		m.fix++
	case ofSound:
		sink.Sound(m.log.Sound[m.sound])
		m.sound++
	}
}

// absent reports the sensors without samples or states in the log. Sound is not
// among them, since most logs have none.
func absent(log *sensors.Log, start float64) []sensors.State {
	has := map[sensors.Sensor]bool{
		sensors.SensorMotion:   len(log.Motion) > 0,
		sensors.SensorFix:      len(log.Fixes) > 0,
		sensors.SensorPressure: len(log.Pressure) > 0,
	}
	for _, m := range log.Motion {
		if m.HasTurn() {
			has[sensors.SensorTurn] = true
			break
		}
	}
	for _, s := range log.States {
		has[s.Sensor] = true
	}
	var states []sensors.State
	for _, s := range []sensors.Sensor{sensors.SensorMotion, sensors.SensorTurn, sensors.SensorFix, sensors.SensorPressure} {
		if !has[s] {
			states = append(states, sensors.State{T: start, Sensor: s, Condition: sensors.Missing,
				Detail: finding.New("replay.not_recorded")})
		}
	}
	return states
}
