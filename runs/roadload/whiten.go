package roadload

import "math"

// filterBuffer holds the predicted state of each column.
type filterBuffer struct{ v, g, d []float64 }

func (f *filterBuffer) resize(_, width int) {
	f.v, f.g, f.d = make([]float64, width), make([]float64, width), make([]float64, width)
}

// whiten runs the Kalman filter over every column of jac and squares what
// comes out into norm. The filter's gain does not depend on the data, so that
// it is a linear map to independent errors of variance 1 for all columns alike.
// It returns the logarithm of the determinant of the run's error covariance.
func (c *coast) whiten(n Noise) (logDet float64) {
	w := c.width()
	clear(c.norm)
	clear(c.gain.v)
	clear(c.gain.g)
	clear(c.gain.d)
	p := n.initial()
	for i := range c.t {
		if c.count[i] > 0 {
			var k [3]float64
			var s float64
			p, k, s = p.update(n.WhiteSD * n.WhiteSD / c.count[i])
			logDet += math.Log(s)
			c.take(c.jac[i*w:(i+1)*w], k, 1/math.Sqrt(s))
			c.square()
		}
		if i < len(c.t)-1 {
			h := c.t[i+1] - c.t[i]
			m := newStepModel(n, h, c.decay[i]/h, c.push[i])
			p = p.step(&m)
			c.predict(&m)
		}
	}
	return logDet
}

// take updates the columns with one row and leaves the whitened row in c.row.
func (c *coast) take(row []float64, k [3]float64, scale float64) {
	v, g, d := c.gain.v, c.gain.g, c.gain.d
	for j, y := range row {
		e := y - v[j] - d[j]
		c.row[j] = e * scale
		v[j] += k[0] * e
		g[j] += k[1] * e
		d[j] += k[2] * e
	}
}

// predict carries the columns over one step.
func (c *coast) predict(m *stepModel) {
	v, g, d := c.gain.v, c.gain.g, c.gain.d
	for j := range v {
		v[j] = m.fv*v[j] + m.fvg*g[j]
		g[j] *= m.fg
		d[j] *= m.fd
	}
}

// square adds the outer product of c.row to the upper half of norm.
func (c *coast) square() {
	w := len(c.row)
	for a, ra := range c.row {
		if ra == 0 {
			continue
		}
		out := c.norm[a*w+a : (a+1)*w]
		for b, rb := range c.row[a:] {
			out[b] += ra * rb
		}
	}
}

// eliminate removes the run's own unknowns from norm by Gauss's steps. Their
// rows stay for solving back. It returns the logarithm of the determinant of
// what was removed.
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

// solveOwn returns what to add to the run's own unknowns when the common ones
// take the values common (in the order of c.cols).
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
