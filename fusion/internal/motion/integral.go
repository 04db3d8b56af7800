package motion

// Integral is a running integral and the integral of that.
type Integral struct {
	T     []float64
	Once  []float64
	Twice []float64
}

// Integrate integrates f by the trapezoidal rule.
func (s *Series) Integrate(f []float64) Integral {
	out := Integral{T: s.T, Once: s.Sheet(), Twice: s.Sheet()}
	out.Once[0], out.Twice[0] = 0, 0
	for i := 1; i < len(f); i++ {
		h := s.T[i] - s.T[i-1]
		out.Once[i] = out.Once[i-1] + h*(f[i-1]+f[i])/2
		out.Twice[i] = out.Twice[i-1] + h*out.Once[i-1] + h*h*(2*f[i-1]+f[i])/6
	}
	return out
}

// Once is the running integral of f alone; f gives the value at each sample.
func (s *Series) Once(f func(i int) float64) []float64 {
	out := s.Sheet()
	out[0] = 0
	last := f(0)
	for i := 1; i < len(out); i++ {
		now := f(i)
		out[i] = out[i-1] + (s.T[i]-s.T[i-1])*(last+now)/2
		last = now
	}
	return out
}

// Over returns the integral and the double integral of f over samples i to j,
// both starting from zero at i.
func (g Integral) Over(i, j int) (once, twice float64) {
	return g.Once[j] - g.Once[i], g.Twice[j] - g.Twice[i] - g.Once[i]*(g.T[j]-g.T[i])
}
