package roadload

import (
	"fmt"
	"math"
	"testing"
)

// TestDerivatives compares the columns of jac with differences of whole
// integrations, for speeds and heights.
func TestDerivatives(t *testing.T) {
	opts := DefaultOptions(1.5)
	opts.WarmUpSD = 0.1
	runs := rolled(true, false)
	opts.Noise.ShiftSD = 1
	s := newSystem(coasts(runs), opts)
	s.guess()
	for i := 2; i < s.lay.size; i++ {
		s.state.beta[i] = 0.002 * math.Sin(float64(i))
	}
	s.state.beta[s.lay.press] = 0.2
	s.state.beta[s.lay.wind] = 1.3
	c := s.runs[1]
	c.start = 29
	predict := func() (v, h []float64) {
		c.integrate(s.lay, &s.state)
		for i := range c.t {
			v = append(v, c.v[i])
			// the residual of heightRow, with random effects removed
			row := c.rowOf(c.jac, i, 1)
			left := row[len(row)-1]
			for j := 2; j < len(c.cols); j++ {
				left -= row[c.own+j] * s.state.beta[c.cols[j]]
			}
			h = append(h, c.height[i]-left)
		}
		return v, h
	}
	predict()
	jac := append([]float64(nil), c.jac...)
	compare := func(name string, column int, x *float64, step float64) {
		*x += step
		v1, h1 := predict()
		*x -= 2 * step
		v0, h0 := predict()
		*x += step
		for i := range c.t {
			for ch, d := range []float64{(v1[i] - v0[i]) / (2 * step), (h1[i] - h0[i]) / (2 * step)} {
				got := c.rowOf(jac, i, ch)[column]
				if math.Abs(got-d) > 2e-4*math.Max(math.Abs(d), 1) {
					t.Fatalf("%s, fix %d, measurement %d: %v, differences say %v", name, i, ch, got, d)
				}
			}
		}
	}
	compare("start", 0, &c.start, 1e-4)
	for j, g := range c.cols {
		compare(fmt.Sprintf("unknown %d", g), c.own+j, &s.state.beta[g], 1e-5)
	}
}

// TestStepModel compares the closed form of a step with many small ones.
func TestStepModel(t *testing.T) {
	n := DefaultOptions(1.5).Noise
	const a, b, h, parts = 0.04, 0.05, 1.3, 20000
	one := n.initial()
	c := &coast{t: []float64{0, h}, decay: make([]float64, 1), push: []float64{b}, fades: fades{steps: make([]fade, 1)}}
	c.damp(0, a*h)
	m := c.stepAt(n, 0)
	one.step(&m)
	p := n.initial()
	dt := h / parts
	for range parts {
		// Euler's step of dP/dt = A·P + P·Aᵀ + Q
		vv := 2 * (-a*p[0][0] - b*p[0][1])
		vg := -a*p[0][1] - b*p[1][1] - p[0][1]/n.GustTime
		gg := -2*p[1][1]/n.GustTime + 2*n.GustSD*n.GustSD/n.GustTime
		p[0][0], p[0][1], p[1][1] = p[0][0]+dt*vv, p[0][1]+dt*vg, p[1][1]+dt*gg
	}
	for _, c := range []struct {
		name      string
		got, want float64
	}{{"δv·δv", one[0][0], p[0][0]}, {"δv·g", one[0][1], p[0][1]}, {"g·g", one[1][1], p[1][1]}} {
		if math.Abs(c.got-c.want) > 1e-3*math.Abs(c.want) {
			t.Errorf("%s: %v, small steps say %v", c.name, c.got, c.want)
		}
	}
	if d := one.transposed(); d != one {
		t.Error("the covariance is not symmetric")
	}
}

// TestShockIsARefit: the test for a jump agrees with a fit with the jump as an
// additional unknown.
func TestShockIsARefit(t *testing.T) {
	opts := DefaultOptions(1.5)
	s := newSystem(coasts(rolled(true, false)), opts)
	s.guess()
	if _, err := s.fitAt(opts.Noise); err != nil {
		t.Fatal(err)
	}
	s.linearise(opts.Noise)
	if _, err := s.evaluate(opts.Noise); err != nil {
		t.Fatal(err)
	}
	const run, fix = 2, 7
	got := s.shocks(s.runs[run])[fix]
	c := s.runs[run]
	c.cut(fix, 0)
	start := c.start
	c.attach(s.lay)
	c.start = start
	s.linearise(opts.Noise)
	if _, err := s.evaluate(opts.Noise); err != nil {
		t.Fatal(err)
	}
	s.improve(1)
	if want := c.steps[0]; math.Abs(got.estimate-want) > 1e-3*math.Abs(want)+1e-5 {
		t.Errorf("jump %v, a refit says %v", got.estimate, want)
	}
}
