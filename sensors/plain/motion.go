package plain

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/mend"
)

var nan = math.NaN()

var motionColumns = []column{
	{"t_s", true, "seconds on the clock of all files"},
	{"ax_mps2", true, "m/s²"}, {"ay_mps2", true, "m/s²"}, {"az_mps2", true, "m/s²"},
	{"gx_radps", false, "rad/s"}, {"gy_radps", false, "rad/s"}, {"gz_radps", false, "rad/s"},
}

const mostMotion = 3_000_000

// readMotion reads motion.csv and returns its samples in order, in SI units
// but for turn rates and the sign, which need the fixes to be found.
func readMotion(f file) ([]sensors.Motion, float64, *tally, error) {
	samples, y, err := readPieces(f, motionColumns, mostMotion, takeMotion)
	if err == nil {
		err = y.verdict("motion samples")
	}
	if err != nil {
		return nil, 0, y, err
	}
	samples = inOrder(samples, mend.MotionTime, y)
	clock, err := mendClock(f.name, samples, y)
	if err != nil {
		return nil, 0, y, err
	}
	note, err := mend.Force(f.name, samples)
	if err != nil {
		return nil, 0, y, err
	}
	if note != nil {
		y.notes = append(y.notes, *note)
	}
	samples, spikes := mend.DropSpikes(samples)
	if spikes > 0 {
		y.notes = append(y.notes, sensors.Note{File: f.name, Count: spikes, What: finding.Said(mend.SpikeText)})
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
			r.y.say(r.t.line, "half a turn", "a part of the turn rate is missing; all of it is taken as absent")
		}
		m.Turn = r3.Vec{X: nan, Y: nan, Z: nan}
	}
	return m, true
}

// inOrder sorts samples and notes what that took.
func inOrder[S any](samples []S, time func(S) float64, y *tally) []S {
	samples, d := mend.Order(samples, time)
	if d.Moved > 0 {
		y.notes = append(y.notes, sensors.Note{File: y.file, Count: d.Moved, What: finding.Said("a sample came after a later one; they are sorted")})
	}
	if d.Doubled > 0 {
		y.notes = append(y.notes, sensors.Note{File: y.file, Count: d.Doubled, What: finding.Said("a sample had the time of one before it and is left out")})
	}
	return samples
}

// mendClock finds times that are not in seconds and returns what they were
// multiplied by.
func mendClock(name string, samples []sensors.Motion, y *tally) (float64, error) {
	unit := mend.ClockUnit(samples)
	if math.IsNaN(unit) {
		return 0, &sensors.InputError{File: name, What: finding.Said("t_s does not look like seconds: most samples are more than 1.5 s apart"),
			Remedy: finding.Said("give times in seconds, and at least 20 samples a second")}
	}
	if unit != 1 {
		y.say(0, "clock", fmt.Sprintf("t_s goes in steps of %g s and is taken as seconds in all files", unit))
		for i := range samples {
			samples[i].T *= unit
		}
	}
	return unit, nil
}
