package roadload

import "math"

// eliminate removes the run's own unknowns from norm by Gaussian elimination
// (Schur complement). Their rows stay for back substitution. It returns the
// logarithm of the determinant of the eliminated block.
func (c *coast) eliminate() (logDet float64) {
	w := c.width()
	for e := range c.own {
		pivotRow := c.norm[e*w : (e+1)*w]
		logDet += math.Log(pivotRow[e])
		for a := e + 1; a < w; a++ {
			f := pivotRow[a] / pivotRow[e]
			if f == 0 {
				continue
			}
			out := c.norm[a*w : (a+1)*w]
			for b := a; b < w; b++ {
				out[b] -= f * pivotRow[b]
			}
		}
	}
	return logDet
}

// eliminateFrom does the same for one more column, given by its products h with
// the others; it returns the remaining square of the column.
func (c *coast) eliminateFrom(h []float64, square float64) float64 {
	w := c.width()
	for e := range c.own {
		row := c.norm[e*w : (e+1)*w]
		f := h[e] / row[e]
		square -= f * h[e]
		for j := e; j < w; j++ {
			h[j] -= f * row[j]
		}
	}
	return square
}

// solveOwn returns the corrections to the run's own unknowns by back
// substitution of the common ones (in the order of c.cols).
func (c *coast) solveOwn(common []float64) []float64 {
	w := c.width()
	own := make([]float64, c.own)
	for e := c.own - 1; e >= 0; e-- {
		row := c.norm[e*w : (e+1)*w]
		y := row[w-1]
		for j := e + 1; j < c.own; j++ {
			y -= row[j] * own[j]
		}
		for j, b := range common {
			y -= row[c.own+j] * b
		}
		own[e] = y / row[e]
	}
	return own
}
