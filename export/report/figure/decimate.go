package figure

import (
	"math"

	"gonum.org/v1/plot/plotter"
)

// decimate returns points that draw the same line as (x, y) on a picture of so
// many columns: of each column its first, lowest, highest and last point, in
// order. Points that are not finite are left out.
func decimate(x, y []float64, columns int) plotter.XYs {
	n := min(len(x), len(y))
	if n == 0 {
		return nil
	}
	width := (x[n-1] - x[0]) / float64(max(columns, 1))
	var out plotter.XYs
	for i := 0; i < n; {
		c := column{first: -1}
		end := x[i] + width
		for ; i < n && (x[i] < end || c.first < 0); i++ {
			if finite(x[i]) && finite(y[i]) {
				c.take(i, y)
			} else if c.first < 0 && !(x[i] < end) {
				i++
				break
			}
		}
		for _, k := range c.inOrder() {
			out = append(out, plotter.XY{X: x[k], Y: y[k]})
		}
	}
	return out
}

// column holds the indices of what a column of pixels shows.
type column struct{ first, low, high, last int }

func (c *column) take(i int, y []float64) {
	if c.first < 0 {
		*c = column{i, i, i, i}
		return
	}
	if y[i] < y[c.low] {
		c.low = i
	}
	if y[i] > y[c.high] {
		c.high = i
	}
	c.last = i
}

// inOrder returns the indices in order, each once.
func (c *column) inOrder() []int {
	if c.first < 0 {
		return nil
	}
	out := []int{c.first}
	for _, k := range []int{min(c.low, c.high), max(c.low, c.high), c.last} {
		if k != out[len(out)-1] {
			out = append(out, k)
		}
	}
	return out
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
