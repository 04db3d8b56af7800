package roadload

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// rolled is a small synthetic set of runs with arbitrary noise: what is checked
// here holds for any data.
func rolled(heights, alts bool) []Run {
	r := rand.New(rand.NewPCG(3, 4))
	var runs []Run
	for i := range 4 {
		run := Run{ID: i + 1, Pair: i/2 + 1, Dir: float64(1 - 2*(i%2)), Mass: 290, Inertia: 301, Density: 1.2}
		v, x := 30.0, 20*float64(i)
		if run.Dir < 0 {
			x = 500 - x
		}
		for s := range 20 {
			run.T = append(run.T, float64(100*i)+float64(s)*1.1)
			run.V = append(run.V, v+0.2*r.NormFloat64())
			run.Pos = append(run.Pos, x)
			if heights {
				run.Height = append(run.Height, 0.3*r.NormFloat64()-0.004*v*v)
			}
			if alts && i%2 == 0 {
				run.Alt = append(run.Alt, 90+r.NormFloat64())
			}
			a := 0.0011*v*v + 0.18
			x += run.Dir * v * 1.1
			v -= 1.1 * a
		}
		runs = append(runs, run)
	}
	return runs
}

// errorCovariance is the covariance of a run's measurements by brute force: the
// state-space model is run over unit disturbances one by one.
func (c *coast) errorCovariance(n Noise) *mat.SymDense {
	size := len(c.t) * c.channels
	cov := mat.NewSymDense(size, nil)
	p := make([]covariance, len(c.t)) // of the state at each fix
	p[0] = n.initial()
	for i := 1; i < len(c.t); i++ {
		m := c.stepAt(n, i-1)
		p[i] = p[i-1]
		p[i].step(&m)
	}
	for i := range c.t {
		for a := range c.channels {
			// seen·F…F·P for every later fix
			cross := p[i]
			for k := i; k < len(c.t); k++ {
				for b := range c.channels {
					var left vector
					for q := range left {
						left[q] = cross[q].dot(&c.obs[k*channels+b].seen)
					}
					value := left.dot(&c.obs[i*channels+a].seen)
					if i == k && a == b {
						value += c.variance(n, i, a)
					}
					cov.SetSym(i*c.channels+a, k*c.channels+b, value)
				}
				if k < len(c.t)-1 {
					m := c.stepAt(n, k)
					for q := range cross {
						cross[q] = m.forward(cross[q])
					}
				}
			}
		}
	}
	return cov
}

// TestAgainstDense compares the filter, the elimination and Henderson's
// equations with the textbook formulas on full matrices: estimate
// (XᵀV⁻¹X)⁻¹XᵀV⁻¹y, restricted likelihood log|V| + log|XᵀV⁻¹X| + yᵀPy, with all
// random effects inside V (Searle, Casella and McCulloch, Variance Components,
// 1992, ch. 6).
func TestAgainstDense(t *testing.T) {
	for _, c := range []struct {
		name    string
		heights bool
		alts    bool // in every other run
		road    float64
		warm    float64
		slope   float64
		shift   float64
	}{
		{"smooth", false, false, 0, 0, 0, 0},
		{"rough", false, false, 0.002, 0, 0.001, 0.8},
		{"rough with heights, warming up", true, false, 0.002, 0.1, 0.001, 0},
		{"rough with some altitudes", false, true, 0.002, 0, 0.001, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			opts := DefaultOptions(1.5)
			opts.Noise.RoadSD, opts.WarmUpSD, opts.Slope.SE = c.road, c.warm, c.slope
			opts.Noise.ShiftSD = c.shift
			all := coasts(rolled(c.heights, c.alts))
			opts.Noise = opts.Noise.altitudeNoise(all)
			s := newSystem(all, opts)
			s.guess()
			for range 3 {
				s.linearise(opts.Noise)
			}
			other := opts.Noise
			other.GustSD, other.DriftTime = 0.9, 7
			first, err := s.evaluate(opts.Noise)
			if err != nil {
				t.Fatal(err)
			}
			second, err := s.evaluate(other)
			if err != nil {
				t.Fatal(err)
			}
			a, _ := s.dense(t, opts.Noise)
			b, beta := s.dense(t, other)
			// the constant of the likelihood cancels in the difference
			if d := (second - first) - (b - a); math.Abs(d) > 1e-6 {
				t.Errorf("likelihoods differ by %.8f, full matrices say %.8f", second-first, b-a)
			}
			for i, want := range beta {
				if got := s.x.AtVec(i); math.Abs(got-want) > 1e-6*math.Max(math.Abs(want), 1e-3) {
					t.Errorf("road load %d: %v, full matrices say %v", i, got, want)
				}
			}
		})
	}
}

// dense computes the restricted likelihood and the road loads on full matrices.
func (s *system) dense(t *testing.T, n Noise) (float64, []float64) {
	rows, own := 0, 0
	for _, c := range s.runs {
		rows += len(c.t) * c.channels
		own += c.own
	}
	loads := 2 * s.lay.setups
	x := mat.NewDense(rows, loads+own, nil)
	z := mat.NewDense(rows, s.lay.size, nil)
	y := mat.NewVecDense(rows, nil)
	v := mat.NewSymDense(rows, nil)
	at, ownAt := 0, loads
	for _, c := range s.runs {
		r := c.errorCovariance(n)
		for i := range len(c.t) * c.channels {
			row := c.rowOf(c.jac, i/c.channels, i%c.channels)
			for j := range c.own {
				x.Set(at+i, ownAt+j, row[j])
			}
			for j, g := range c.cols {
				if g < loads {
					x.Set(at+i, g, row[c.own+j])
				} else {
					z.Set(at+i, g, row[c.own+j])
				}
			}
			y.SetVec(at+i, row[len(row)-1])
			for j := range i + 1 {
				v.SetSym(at+i, at+j, r.At(i, j))
			}
		}
		at += len(c.t) * c.channels
		ownAt += c.own
	}
	s.addRandom(t, v, z, n)
	return reml(t, v, x, y, loads)
}

// addRandom adds z·D·zᵀ.
func (s *system) addRandom(t *testing.T, v *mat.SymDense, z *mat.Dense, n Noise) {
	s.a.Zero()
	s.prior(n)
	loads := 2 * s.lay.setups
	k := s.lay.size - loads
	inverse := mat.NewSymDense(k, nil)
	for i := range k {
		for j := range i + 1 {
			inverse.SetSym(i, j, s.a.At(loads+i, loads+j))
		}
	}
	var d mat.Dense
	if err := d.Inverse(inverse); err != nil {
		t.Fatal(err)
	}
	rows, _ := z.Dims()
	part := z.Slice(0, rows, loads, s.lay.size)
	var half, whole mat.Dense
	half.Mul(part, &d)
	whole.Mul(&half, part.T())
	for i := range rows {
		for j := range i + 1 {
			v.SetSym(i, j, v.At(i, j)+whole.At(i, j))
		}
	}
}

func reml(t *testing.T, v *mat.SymDense, x *mat.Dense, y *mat.VecDense, loads int) (float64, []float64) {
	var cv, cx mat.Cholesky
	if !cv.Factorize(v) {
		t.Fatal("V is not positive")
	}
	var vx, vy, xx mat.Dense
	if err := cv.SolveTo(&vx, x); err != nil {
		t.Fatal(err)
	}
	if err := cv.SolveTo(&vy, y); err != nil {
		t.Fatal(err)
	}
	xx.Mul(x.T(), &vx)
	_, p := x.Dims()
	sym := mat.NewSymDense(p, nil)
	for i := range p {
		for j := range i + 1 {
			sym.SetSym(i, j, (xx.At(i, j)+xx.At(j, i))/2)
		}
	}
	if !cx.Factorize(sym) {
		t.Fatal("XᵀV⁻¹X is not positive")
	}
	var xy, beta, rest mat.Dense
	xy.Mul(x.T(), &vy)
	if err := cx.SolveTo(&beta, &xy); err != nil {
		t.Fatal(err)
	}
	rest.Mul(x, &beta)
	rest.Sub(y, &rest)
	q := 0.0
	var vr mat.Dense
	if err := cv.SolveTo(&vr, &rest); err != nil {
		t.Fatal(err)
	}
	for i := range y.Len() {
		q += rest.At(i, 0) * vr.At(i, 0)
	}
	out := make([]float64, loads)
	for i := range out {
		out[i] = beta.At(i, 0)
	}
	return cv.LogDet() + cx.LogDet() + q, out
}
