package sheets

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/median"
	"stillair/sensors/units"
)

// weakest is the share of gravity below which a mean acceleration does not
// contain gravity; a bike's own acceleration is rarely as large (common
// practice).
const weakest = 0.3

// recipe is how specific force is obtained.
type recipe struct {
	main    *triple // specific force, or acceleration without gravity
	gravity *triple // to be added; nil if main contains it
}

// chosen finds the acceleration among the sheets. ok is false if there is none,
// or none with gravity; bare is set in the second case.
func chosen(all []*sheet) (r recipe, bare, ok bool) {
	with := triples(all, force)
	without := triples(all, linear)
	pull := triples(all, gravity)
	for _, t := range with {
		if t.holdsGravity(pull) {
			return recipe{main: t}, false, true
		}
		without = append(without, t)
	}
	if len(without) > 0 && len(pull) > 0 {
		return recipe{main: without[0], gravity: pull[0]}, false, true
	}
	return recipe{}, len(without) > 0, false
}

// size is the median size of a triple over spans of readings long enough for
// vibration to cancel.
func (t *triple) size() float64 {
	const span = 50
	var sizes []float64
	var sum r3.Vec
	n := 0
	for row := range t.sheet.rows {
		if !t.has(row) {
			continue
		}
		sum = r3.Add(sum, r3.Vec{X: t.axes[0].v[row], Y: t.axes[1].v[row], Z: t.axes[2].v[row]})
		if n++; n == span {
			sizes = append(sizes, r3.Norm(sum)/span)
			sum, n = r3.Vec{}, 0
		}
	}
	if len(sizes) == 0 {
		return r3.Norm(sum) / math.Max(float64(n), 1)
	}
	return median.Of(sizes)
}

// holdsGravity reports whether a triple of accelerations contains gravity, by
// its size relative to a triple of gravity, or in the unit that fits.
func (t *triple) holdsGravity(pull []*triple) bool {
	if t.unitOfGravity().known() && (len(pull) == 0 || t.unitOfGravity() == pull[0].unitOfGravity()) {
		return true
	}
	size := t.size()
	if u := t.axes[0].unit; u.known() {
		return size*u.si > weakest*units.StandardGravity
	}
	return len(pull) == 0 && size > weakest*units.StandardGravity
}

// unitOfGravity is the unit in which a triple has the size of gravity.
func (t *triple) unitOfGravity() unit {
	size := t.size()
	for _, u := range spelled(ofForce) {
		if s := size * u.si / units.StandardGravity; s > 0.7 && s < 1.4 {
			return u.unit
		}
	}
	return unit{}
}

// motion makes the readings of the accelerometer, in the unit of its file, or
// in m/s² if it is the sum of two.
func (r recipe) motion() []sensors.Motion {
	nan := math.NaN()
	factor := 1.0
	if r.gravity != nil {
		own := r.main.axes[0].unit
		if !own.known() {
			own = r.gravity.unitOfGravity()
		}
		if factor = own.si; factor == 0 {
			factor = 1
		}
	}
	s, _ := r.main.series(factor)
	motion := make([]sensors.Motion, len(s))
	for i, v := range s {
		motion[i] = sensors.Motion{T: v.t, Force: v.v, Turn: r3.Vec{X: nan, Y: nan, Z: nan}}
	}
	if r.gravity == nil {
		return motion
	}
	g, _ := r.gravity.series(math.Max(r.gravity.unitOfGravity().si, 0))
	interpolated(g, math.Max(0.5, 3*step(g)), func(i int) float64 { return motion[i].T }, len(motion), func(i int, v r3.Vec) {
		motion[i].Force = r3.Add(motion[i].Force, v)
	})
	kept := motion[:0]
	for _, m := range motion {
		if !math.IsNaN(m.Force.X) {
			kept = append(kept, m)
		}
	}
	return kept
}

// addTurn adds the gyroscope's readings to those of the accelerometer.
func addTurn(motion []sensors.Motion, t *triple) {
	factor := 1.0
	if u := t.axes[0].unit; u.known() {
		factor = u.si
	}
	s, _ := t.series(factor)
	gap := math.Max(3*step(s), 0.05)
	interpolated(s, gap, func(i int) float64 { return motion[i].T }, len(motion), func(i int, v r3.Vec) { motion[i].Turn = v })
}

// readAs says how a column was interpreted.
func readAs(r role, columns, file string, u unit, why finding.Code) sensors.Note {
	args := []finding.Arg{finding.Of("what", r.name()), finding.Text("column", columns)}
	if !u.known() {
		return sensors.Note{File: file, Count: 1, What: finding.New("sheets.column", args...)}
	}
	return sensors.Note{File: file, Count: 1, What: finding.New("sheets.column_in",
		append(args, finding.Text("unit", u.name), finding.Of("why", finding.New(why)))...)}
}

func (t *triple) note(first role, u unit, why finding.Code) sensors.Note {
	return readAs(first, t.axes[0].name+", "+t.axes[1].name+", "+t.axes[2].name, t.sheet.file, u, why)
}
