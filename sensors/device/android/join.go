package android

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/device"
)

// Kinds of event; motion.h has the same numbers.
const (
	force    = 1
	turn     = 2
	pressure = 4
)

// event is one event of a sensor.
type event struct {
	t    int64 // ns since the phone was started
	kind int32
	v    r3.Vec // m/s², rad/s, or hPa in X
}

// How far apart two turn rates may be for linear interpolation between them,
// and how long a force waits for the next, in ns.
const (
	widest  = 50e6
	longest = 150e6
)

// join gives each force the turn rate at the same time: the two sensors are
// read at different times, some milliseconds apart.
type join struct {
	noTurn bool    // the phone has no gyroscope
	forces []event // waiting for a later turn rate
	turns  []event // from the last before the first waiting force
	newest int64
}

// add takes events in order of arrival and appends to b what is ready.
func (j *join) add(events []event, b *device.Batch) {
	for _, e := range events {
		j.newest = max(j.newest, e.t)
		switch e.kind {
		case force:
			j.forces = append(j.forces, e)
		case turn:
			j.turns = append(j.turns, e)
		case pressure:
			b.Pressure = append(b.Pressure, sensors.Pressure{T: seconds(e.t), Pa: 100 * e.v.X})
		}
	}
	done := 0
	for _, f := range j.forces {
		w, ready := j.at(f.t)
		if !ready {
			break
		}
		b.Motion = append(b.Motion, sensors.Motion{T: seconds(f.t), Force: f.v, Turn: w})
		done++
	}
	j.forces = append(j.forces[:0], j.forces[done:]...)
}

// at returns the turn rate at t, NaN if there is none, and whether to wait for
// a later one first. Calls must be in order of t.
func (j *join) at(t int64) (w r3.Vec, ready bool) {
	nan := math.NaN()
	none := r3.Vec{X: nan, Y: nan, Z: nan}
	for len(j.turns) > 1 && j.turns[1].t <= t {
		j.turns = j.turns[1:]
	}
	switch {
	case j.noTurn:
		return none, true
	case len(j.turns) > 0 && j.turns[0].t == t:
		return j.turns[0].v, true
	case len(j.turns) > 0 && j.turns[0].t > t: // nothing before it
		return none, true
	case len(j.turns) < 2:
		return none, j.newest-t > longest
	}
	a, c := j.turns[0], j.turns[1]
	if c.t-a.t > widest {
		return none, true
	}
	part := float64(t-a.t) / float64(c.t-a.t)
	return r3.Add(r3.Scale(1-part, a.v), r3.Scale(part, c.v)), true
}

func seconds(ns int64) float64 { return float64(ns) / 1e9 }
