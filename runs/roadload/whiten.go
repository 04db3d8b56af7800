package roadload

import "math"

// prediction holds the filter's expected state (δv, g, d) of each column.
type prediction struct{ v, g, d []float64 }

func newPrediction(width int) prediction {
	return prediction{make([]float64, width), make([]float64, width), make([]float64, width)}
}

// filtering is what the filter does at one fix: its gain, the variance of what
// the fix adds (0: the fix is left out), and the step to the next fix.
type filtering struct {
	gain     [3]float64
	variance float64
	next     stepModel
}

// whiten runs the Kalman filter over every column of jac and squares what
// comes out into norm. The filter's gain does not depend on the data, so that
// it is a linear map to independent errors of variance 1 for all columns alike.
// It returns the logarithm of the determinant of the run's error covariance.
func (c *coast) whiten(n Noise) (logDet float64) {
	w := c.width()
	clear(c.norm)
	clear(c.pred.v)
	clear(c.pred.g)
	clear(c.pred.d)
	p := n.initial()
	for i := range c.t {
		f := &c.steer[i]
		f.variance = 0
		if c.count[i] > 0 {
			p, f.gain, f.variance = p.update(n.WhiteSD * n.WhiteSD / c.count[i])
			logDet += math.Log(f.variance)
			out := c.white[i*w : (i+1)*w]
			c.take(c.jac[i*w:(i+1)*w], f, out)
			c.square(out)
		}
		if i < len(c.t)-1 {
			h := c.t[i+1] - c.t[i]
			f.next = newStepModel(n, h, c.decay[i]/h, c.push[i])
			p = p.step(&f.next)
			c.predict(&f.next)
		}
	}
	return logDet
}

// take updates the columns with one row and writes the whitened row.
func (c *coast) take(row []float64, f *filtering, out []float64) {
	v, g, d := c.pred.v, c.pred.g, c.pred.d
	scale := 1 / math.Sqrt(f.variance)
	k := f.gain
	for j, y := range row {
		e := y - v[j] - d[j]
		out[j] = e * scale
		v[j] += k[0] * e
		g[j] += k[1] * e
		d[j] += k[2] * e
	}
}

// predict carries the columns over one step.
func (c *coast) predict(m *stepModel) {
	v, g, d := c.pred.v, c.pred.g, c.pred.d
	for j := range v {
		v[j] = m.fv*v[j] + m.fvg*g[j]
		g[j] *= m.fg
		d[j] *= m.fd
	}
}

// square adds the outer product of a row to the upper half of norm.
func (c *coast) square(row []float64) {
	w := len(row)
	for a, ra := range row {
		if ra == 0 {
			continue
		}
		out := c.norm[a*w+a : (a+1)*w]
		for b, rb := range row[a:] {
			out[b] += ra * rb
		}
	}
}
