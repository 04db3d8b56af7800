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

// bandShort and bandLong are half the widths of the two running means whose
// difference is the band from which the noise near zero frequency is judged,
// s: about 3 to 12 Hz, above what a rider does to the bike's speed and below
// most of what the engine shakes.
const (
	bandShort = 0.02
	bandLong  = 0.12
	bandAvg   = 0.5 // half the width over which the power is averaged, s
)

// Density is the two-sided spectral density of f in that band around each
// sample, m²/s³ for f in m/s²: what a white noise of the same strength would
// add to the variance of the speed each second.
func (s *Series) Density(f []float64) []float64 {
	short, long := s.Half(bandShort), max(s.Half(bandLong), s.Half(bandShort)+1)
	a, b := Mean(f, short), Mean(f, long)
	for i := range a {
		d := a[i] - b[i]
		a[i] = d * d
	}
	// White noise of variance σ² has density σ²·Step; the difference of the
	// two means passes σ²·gain of it.
	gain := 1/float64(2*short+1) - 1/float64(2*long+1)
	out := Mean(a, s.Half(bandAvg))
	for i := range out {
		out[i] *= s.Step / gain
	}
	return out
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
