package device

import (
	"math"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// patience is the time without samples after which the rider is warned, in
// seconds. A receiver reports once a second and may miss a few under a bridge;
// the gyroscope is part of the motion samples.
var patience = map[sensors.Sensor]float64{
	sensors.SensorMotion:   1,
	sensors.SensorTurn:     2,
	sensors.SensorFix:      5,
	sensors.SensorPressure: 5,
	sensors.SensorSound:    2,
}

// Reasons for a sensor without samples.
const (
	NothingYet  finding.Code = "sensor.nothing_yet"
	NothingMore finding.Code = "sensor.nothing_more"
	NoTurn      finding.Code = "sensor.no_turn"
	NoSpeed     finding.Code = "sensor.no_speed"
)

// watch tracks the condition of each sensor and reports changes only.
type watch struct {
	is   map[sensors.Sensor]Report
	why  map[sensors.Sensor]finding.Finding // the driver's reason for a sensor that may fall silent
	seen map[sensors.Sensor]float64         // when the last sample came, s
	bare float64                            // when the last fix without a speed came, s
	from float64                            // when the source began, s
}

func newWatch(now float64) *watch {
	return &watch{is: map[sensors.Sensor]Report{}, why: map[sensors.Sensor]finding.Finding{}, seen: map[sensors.Sensor]float64{}, bare: math.Inf(-1), from: now}
}

// heard takes a report of the driver. A working sensor reported as silent may
// have missed only one report; it counts as silent when no more arrive.
func (w *watch) heard(t Report) []Report {
	if t.Condition == sensors.Silent && w.is[t.Sensor].Condition == sensors.Working {
		w.why[t.Sensor] = t.Detail
		return nil
	}
	delete(w.seen, t.Sensor) // earlier samples do not count any more
	return w.changed(t)
}

// hole reports a gap for motion and fixes, if they had delivered.
func (w *watch) hole(h sensors.Hole) (marks []sensors.State) {
	for _, s := range []sensors.Sensor{sensors.SensorMotion, sensors.SensorFix} {
		if _, ever := w.seen[s]; !ever {
			continue
		}
		mark := h.State(s)
		w.is[s] = Report{Sensor: s, Condition: mark.Condition, Detail: mark.Detail}
		marks = append(marks, mark)
	}
	return marks
}

// changed takes the new state of a sensor and returns it if it has changed.
func (w *watch) changed(t Report) []Report {
	if w.is[t.Sensor].same(t) {
		return nil
	}
	w.is[t.Sensor] = t
	return []Report{t}
}

// saw checks the contents of a batch, and the time, and returns the changes.
func (w *watch) saw(b *Batch, now float64) (changes []Report) {
	w.count(b, now)
	for _, s := range []sensors.Sensor{sensors.SensorMotion, sensors.SensorTurn, sensors.SensorFix, sensors.SensorPressure, sensors.SensorSound} {
		if c, ok := w.judge(s, now); ok {
			changes = append(changes, w.changed(c)...)
		}
	}
	return changes
}

func (w *watch) count(b *Batch, now float64) {
	for _, m := range b.Motion {
		w.hear(sensors.SensorMotion, now)
		if m.HasTurn() {
			w.hear(sensors.SensorTurn, now)
		}
	}
	for _, f := range b.Fixes {
		if !math.IsNaN(f.Speed) {
			w.hear(sensors.SensorFix, now)
		} else {
			w.bare = now
		}
	}
	if len(b.Pressure) > 0 {
		w.hear(sensors.SensorPressure, now)
	}
	if len(b.Sound) > 0 {
		w.hear(sensors.SensorSound, now)
	}
}

func (w *watch) hear(s sensors.Sensor, now float64) {
	w.seen[s] = now
	delete(w.why, s)
}

// judge determines the condition of a sensor from the time of its last sample.
// One that the driver reported as denied, missing or asking stays so until it
// delivers.
func (w *watch) judge(s sensors.Sensor, now float64) (Report, bool) {
	last, ever := w.seen[s]
	switch {
	case ever && now-last <= patience[s]:
		return Report{Sensor: s, Condition: sensors.Working}, true
	case s == sensors.SensorFix && now-w.bare <= patience[s]:
		return Report{s, sensors.Available, finding.New(NoSpeed)}, true
	case s == sensors.SensorTurn && !ever && w.withoutTurn(now):
		return Report{s, sensors.Missing, finding.New(NoTurn)}, true
	case ever && w.is[s].Condition == sensors.Working:
		return Report{s, sensors.Silent, w.silence(s)}, true
	case !ever && w.is[s].Condition == sensors.Available && now-w.from > 2*patience[s]:
		return Report{s, sensors.Available, finding.New(NothingYet)}, true
	}
	return Report{}, false
}

// silence is why a sensor stopped, as far as the driver reported it.
func (w *watch) silence(s sensors.Sensor) finding.Finding {
	if why, ok := w.why[s]; ok && !why.IsZero() {
		return why
	}
	return finding.New(NothingMore)
}

// withoutTurn reports whether motion arrives without a turn rate for long enough to
// conclude that there is none.
func (w *watch) withoutTurn(now float64) bool {
	last, ever := w.seen[sensors.SensorMotion]
	return ever && now-last <= patience[sensors.SensorMotion] && now-w.from > 2*patience[sensors.SensorTurn]
}
