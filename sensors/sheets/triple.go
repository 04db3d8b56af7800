package sheets

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors/internal/repair"
)

// triple is three columns of a sheet that are the axes of one sensor.
type triple struct {
	sheet *sheet
	axes  [3]*column
	clock *timing // once it is known
}

// triples are those of all sheets whose first axis has the role, best first.
func triples(all []*sheet, first role) []*triple {
	var out []*triple
	for _, s := range all {
		t := &triple{sheet: s, axes: [3]*column{s.find(first), s.find(first + 1), s.find(first + 2)}}
		if t.axes[0] != nil && t.axes[1] != nil && t.axes[2] != nil && t.filled() > 0 {
			out = append(out, t)
		}
	}
	slices.SortStableFunc(out, func(a, b *triple) int {
		return cmp.Or(cmp.Compare(a.rank(), b.rank()), cmp.Compare(b.filled(), a.filled()))
	})
	return out
}

func (t *triple) rank() int {
	if t.axes[0].asked {
		return -1
	}
	return t.axes[0].rank
}

// has reports whether a row has all three.
func (t *triple) has(row int) bool {
	return !math.IsNaN(t.axes[0].v[row] + t.axes[1].v[row] + t.axes[2].v[row])
}

func (t *triple) filled() (n int) {
	for row := range t.sheet.rows {
		if t.has(row) {
			n++
		}
	}
	return n
}

func (t *triple) timings(r role) []*timing {
	return t.sheet.timings(r, leastStep, mostStep, t.has)
}

// vector is one reading of a triple.
type vector struct {
	t float64
	v r3.Vec
}

// series are the readings on the chosen clock, in order, in the unit of the
// file or, if factor is not 0, multiplied by it.
func (t *triple) series(factor float64) ([]vector, repair.Disorder) {
	out := make([]vector, 0, t.filled())
	for row := range t.sheet.rows {
		if at := t.clock.at(row); t.has(row) && !math.IsNaN(at) {
			v := r3.Vec{X: t.axes[0].v[row], Y: t.axes[1].v[row], Z: t.axes[2].v[row]}
			out = append(out, vector{at, r3.Scale(factor, v)})
		}
	}
	return repair.Order(out, func(v vector) float64 { return v.t })
}

// interpolated returns the series at times in order, by linear interpolation;
// NaN if the readings around a time are further apart than gap.
func interpolated(s []vector, gap float64, times func(i int) float64, n int, put func(i int, v r3.Vec)) {
	nan := math.NaN()
	none := r3.Vec{X: nan, Y: nan, Z: nan}
	k := 0
	for i := range n {
		t := times(i)
		for k < len(s) && s[k].t < t {
			k++
		}
		switch {
		case k < len(s) && s[k].t == t:
			put(i, s[k].v)
		case k == 0 || k == len(s) || s[k].t-s[k-1].t > gap:
			put(i, none)
		default:
			a, b := s[k-1], s[k]
			put(i, r3.Add(a.v, r3.Scale((t-a.t)/(b.t-a.t), r3.Sub(b.v, a.v))))
		}
	}
}

// step is the median time between readings.
func step(s []vector) float64 {
	if len(s) < 2 {
		return 0
	}
	steps := make([]float64, len(s)-1)
	for i := range steps {
		steps[i] = s[i+1].t - s[i].t
	}
	slices.Sort(steps)
	return steps[len(steps)/2]
}
