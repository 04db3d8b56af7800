package motion

import "math"

// Mean is the running mean of f over 2·half+1 samples. At the ends the window
// is cut, never shifted beyond the data.
func Mean(f []float64, half int) []float64 {
	out := make([]float64, len(f))
	if half <= 0 {
		copy(out, f)
		return out
	}
	var sum float64
	lo, hi := 0, 0 // the sum covers f[lo:hi]
	for i := range f {
		for hi < len(f) && hi <= i+half {
			sum += f[hi]
			hi++
		}
		for lo < i-half {
			sum -= f[lo]
			lo++
		}
		out[i] = sum / float64(hi-lo)
	}
	return out
}

// Smooth is f under a triangular window that reaches reach seconds to either
// side: two running means, no phase shift.
func (s *Series) Smooth(f []float64, reach float64) []float64 {
	half := s.Half(reach / 2)
	return Mean(Mean(f, half), half)
}

// Half is how many samples reach seconds are.
func (s *Series) Half(reach float64) int { return int(math.Round(reach / s.Step)) }

// bands are the reaches of the triangular windows, s, whose differences cut
// out the bands from which the noise near zero frequency is judged: about 2 to
// 4, 4 to 8 and 8 to 16 Hz, above what a rider does to the bike's speed.
var bands = [...]float64{0.04, 0.08, 0.16, 0.32}

// bandAvg is half the width over which their power is averaged, s.
const bandAvg = 0.5

// Density is the two-sided spectral density of f around each sample, m²/s³ for
// f in m/s²: what a white noise of the same strength would add to the variance
// of the speed each second. It is the least of those of the bands: a line of
// the engine that lies in one of them says nothing about zero frequency, while
// one that sweeps through zero passes all of them.
func (s *Series) Density(f []float64) []float64 {
	out := make([]float64, len(f))
	power := make([]float64, len(f))
	near, nearGain := s.window(f, bands[0]), s.weights(bands[0])
	for k := 1; k < len(bands); k++ {
		far, farGain := s.window(f, bands[k]), s.weights(bands[k])
		for i := range power {
			d := near[i] - far[i]
			power[i] = d * d
		}
		// White noise of variance σ² has density σ²·Step; the difference of
		// the windows passes σ² times the sum of its squared weights.
		scale := s.Step / squares(nearGain, farGain)
		for i, p := range Mean(power, s.Half(bandAvg)) {
			if p *= scale; k == 1 || p < out[i] {
				out[i] = p
			}
		}
		near, nearGain = far, farGain
	}
	return out
}

// bandLong is half the width over which the power of a slow band is averaged, s.
const bandLong = 0.8

// Band is the density judged from the band between two windows alone.
func (s *Series) Band(f []float64, near, far float64) []float64 {
	a, b := s.window(f, near), s.window(f, far)
	for i := range a {
		a[i] = (a[i] - b[i]) * (a[i] - b[i])
	}
	scale := s.Step / squares(s.weights(near), s.weights(far))
	out := Mean(a, s.Half(bandLong))
	for i := range out {
		out[i] *= scale
	}
	return out
}

// window is f under a triangular window at least a sample wide to either side.
func (s *Series) window(f []float64, reach float64) []float64 {
	half := max(1, s.Half(reach/2))
	return Mean(Mean(f, half), half)
}

// weights are those of window, from its middle to its end.
func (s *Series) weights(reach float64) []float64 {
	half := max(1, s.Half(reach/2))
	n := 2*half + 1
	w := make([]float64, n)
	for i := range w {
		w[i] = float64(n-i) / float64(n*n)
	}
	return w
}

// squares is the sum of the squares of the difference of two windows.
func squares(a, b []float64) float64 {
	var sum float64
	for i := range b {
		d := b[i]
		if i < len(a) {
			d -= a[i]
		}
		if i > 0 {
			d *= math.Sqrt2 // both sides
		}
		sum += d * d
	}
	return sum
}

// Shake is the rms of the specific force above a few Hz around each sample,
// all three axes together, m/s².
func (s *Series) Shake() []float64 {
	out := make([]float64, len(s.T))
	axis := make([]float64, len(s.T))
	for a := range 3 {
		for i, f := range s.Force {
			axis[i] = [3]float64{f.X, f.Y, f.Z}[a]
		}
		slow := Mean(axis, s.Half(0.15))
		for i := range axis {
			d := axis[i] - slow[i]
			out[i] += d * d
		}
	}
	out = Mean(out, s.Half(bandAvg))
	for i := range out {
		out[i] = math.Sqrt(math.Max(out[i], 0))
	}
	return out
}

// Integral is a running integral and the integral of that.
type Integral struct {
	T     []float64
	Once  []float64
	Twice []float64
}

// Integrate takes f as straight lines between the samples.
func (s *Series) Integrate(f []float64) Integral {
	n := len(f)
	out := Integral{T: s.T, Once: make([]float64, n), Twice: make([]float64, n)}
	for i := 1; i < n; i++ {
		h := s.T[i] - s.T[i-1]
		out.Once[i] = out.Once[i-1] + h*(f[i-1]+f[i])/2
		out.Twice[i] = out.Twice[i-1] + h*out.Once[i-1] + h*h*(2*f[i-1]+f[i])/6
	}
	return out
}

// Over gives the integral of f and its double integral over samples i to j,
// both starting from zero at i.
func (g Integral) Over(i, j int) (once, twice float64) {
	return g.Once[j] - g.Once[i], g.Twice[j] - g.Twice[i] - g.Once[i]*(g.T[j]-g.T[i])
}
