package roadload

import "math"

// prediction holds the filter's predicted state of each column.
type prediction []vector

// observation is one measurement at a fix: its coefficients on the error state,
// the row of jac, and the filter's gain and variance.
type observation struct {
	seen     vector
	gain     vector
	variance float64 // of the innovation; 0: left out
}

// Every fix may have two measurements: the speed and the height.
const channels = 2

// seesSpeed: a measured speed contains the effect of gusts and the receiver's
// slow error.
var seesSpeed = vector{1, 0, 1, 0}

// whiten runs the Kalman filter over every column of jac and accumulates the
// products of the whitened columns in norm. The filter's gain does not depend
// on the data, so it is the same linear map, to independent errors of variance
// 1, for all columns. It returns the logarithm of the determinant of the run's
// error covariance.
func (c *coast) whiten(n Noise) (logDet float64) {
	clear(c.pred)
	p := n.initial()
	det := 1.0
	for i := range c.t {
		for ch := range c.channels {
			s := &c.obs[i*channels+ch]
			s.variance = 0
			if r := c.variance(n, i, ch); r > 0 {
				p.update(s, r)
				if det *= s.variance; det < 1e-100 || det > 1e100 {
					logDet, det = logDet+math.Log(det), 1
				}
				c.take(c.rowOf(c.jac, i, ch), s, c.rowOf(c.white, i, ch))
			} else {
				clear(c.rowOf(c.white, i, ch))
			}
		}
		if i < len(c.t)-1 {
			c.step[i] = c.stepAt(n, i)
			p.step(&c.step[i])
			c.predict(&c.step[i])
		}
	}
	gram(c.norm, c.white, c.width())
	return logDet + math.Log(det)
}

// variance of the white error of a measurement; 0 where there is none.
func (c *coast) variance(n Noise, fix, channel int) float64 {
	switch {
	case channel == 0 && c.count[fix] > 0:
		return n.WhiteSD * n.WhiteSD / c.count[fix]
	case channel == 1 && c.count[fix] > 0 && !math.IsNaN(c.height[fix]):
		return c.heights.white(n)
	}
	return 0
}

// rowOf is the row of a measurement in jac or white.
func (c *coast) rowOf(rows []float64, fix, channel int) []float64 {
	w := c.width()
	at := (fix*c.channels + channel) * w
	return rows[at : at+w : at+w]
}

// take performs the Kalman update of the columns with one row and writes the
// whitened row.
func (c *coast) take(row []float64, s *observation, out []float64) {
	scale := 1 / math.Sqrt(s.variance)
	for j, y := range row {
		x := &c.pred[j]
		e := y - x.dot(&s.seen)
		out[j] = e * scale
		x[0] += s.gain[0] * e
		x[1] += s.gain[1] * e
		x[2] += s.gain[2] * e
		x[3] += s.gain[3] * e
	}
}

// predict propagates the columns over one step.
func (c *coast) predict(m *stepModel) {
	for j := range c.pred {
		x := &c.pred[j]
		x[0] = m.fv*x[0] + m.fvg*x[1]
		x[1] *= m.fg
		x[2] *= m.fd
	}
}

// gram sets the upper half of norm to rowsᵀ·rows, w columns wide. It works on
// blocks of two by two columns, so that each number loaded serves two products;
// of the lower half only the entries next to the diagonal are set.
func gram(norm, rows []float64, w int) {
	for a := 0; a < w; a += 2 {
		a1 := min(a+1, w-1)
		for b := a; b < w; b += 2 {
			b1 := min(b+1, w-1)
			var p00, p01, p10, p11 float64
			for at := 0; at < len(rows); at += w {
				row := rows[at : at+w : at+w]
				x0, x1, y0, y1 := row[a], row[a1], row[b], row[b1]
				p00 += x0 * y0
				p01 += x0 * y1
				p10 += x1 * y0
				p11 += x1 * y1
			}
			norm[a*w+b], norm[a*w+b1] = p00, p01
			norm[a1*w+b], norm[a1*w+b1] = p10, p11
		}
	}
}
