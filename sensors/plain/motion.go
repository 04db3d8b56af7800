package plain

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/repair"
)

var nan = math.NaN()

var motionColumns = []column{
	{"t_s", true, "s"},
	{"ax_mps2", true, "m/s²"}, {"ay_mps2", true, "m/s²"}, {"az_mps2", true, "m/s²"},
	{"gx_radps", false, "rad/s"}, {"gy_radps", false, "rad/s"}, {"gz_radps", false, "rad/s"},
}

const mostMotion = 3_000_000

// readMotion reads motion.csv and returns its samples in order, in SI units
// except for turn rates and the sign, which can only be found with the fixes.
func readMotion(f file, order *repair.Clock) ([]sensors.Motion, float64, *tally, error) {
	samples, y, err := readPieces(f, motionColumns, mostMotion, takeMotion)
	if err == nil {
		err = y.verdict("plain.want_motion")
	}
	if err != nil {
		return nil, 0, y, err
	}
	clock, err := repairClock(f.name, samples, y)
	if err != nil {
		return nil, 0, y, err
	}
	samples = order.Motion(samples)
	y.notes = append(y.notes, order.Notes(f.name)...)
	note, err := repair.Force(f.name, samples)
	if err != nil {
		return nil, 0, y, err
	}
	if note != nil {
		y.notes = append(y.notes, *note)
	}
	samples, spikes := repair.DropSpikes(samples)
	if spikes > 0 {
		y.notes = append(y.notes, repair.SpikesDropped(f.name, spikes))
	}
	return samples, clock, y, nil
}

func takeMotion(r row) (m sensors.Motion, ok bool) {
	if m.T, ok = r.need(motionColumns, 0); !ok {
		return m, false
	}
	for i, v := range [...]*float64{&m.Force.X, &m.Force.Y, &m.Force.Z} {
		if *v, ok = r.need(motionColumns, 1+i); !ok {
			return m, false
		}
	}
	m.Turn = r3.Vec{X: r.may(motionColumns, 4), Y: r.may(motionColumns, 5), Z: r.may(motionColumns, 6)}
	if !m.HasTurn() {
		if w := m.Turn; !math.IsNaN(w.X) || !math.IsNaN(w.Y) || !math.IsNaN(w.Z) {
			r.y.say(r.t.line, "half a turn", finding.New("plain.half_turn"))
		}
		m.Turn = r3.Vec{X: nan, Y: nan, Z: nan}
	}
	return m, true
}

// inOrder sorts samples and notes the changes.
func inOrder[S any](samples []S, time func(S) float64, y *tally) []S {
	samples, d := repair.Order(samples, time)
	y.notes = append(y.notes, d.Notes(y.file, "input.sample")...)
	return samples
}

// repairClock finds times that are not in seconds and returns the factor
// applied.
func repairClock(name string, samples []sensors.Motion, y *tally) (float64, error) {
	unit := repair.ClockUnit(samples)
	if math.IsNaN(unit) {
		return 0, &sensors.InputError{File: name, What: finding.New("plain.not_seconds"),
			Remedy: finding.New("plain.give_seconds")}
	}
	if unit != 1 {
		y.say(0, "clock", finding.New("plain.clock_unit", finding.Text("unit", strconv.FormatFloat(unit, 'g', -1, 64))))
		for i := range samples {
			samples[i].T *= unit
		}
	}
	return unit, nil
}
