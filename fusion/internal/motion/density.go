package motion

import "math"

// bands are the half-widths of triangular windows, s, whose differences are the
// band-pass filters from which the noise near zero frequency is estimated:
// about 2 to 4, 4 to 8 and 8 to 16 Hz, above the rider's own changes of speed.
var bands = [...]float64{0.04, 0.08, 0.16, 0.32}

// bandHalves are half the reaches of those windows in samples. At a low
// sampling rate they would coincide: there each is one sample wider than the
// last, starting from the raw readings (0), so that no difference is empty.
func (s *Series) bandHalves() (out [len(bands)]int) {
	for k, reach := range bands {
		out[k] = s.Half(reach / 2)
		if k > 0 {
			out[k] = max(out[k], out[k-1]+1)
		}
	}
	return out
}

// bandAvg is the half-width over which their power is averaged, s.
const bandAvg = 0.5

// Density is the two-sided spectral density of f around each sample, m²/s³ for
// f in m/s²: what white noise of this density would add to the variance of the
// speed each second. It is the minimum over the bands: an engine order within
// one band says nothing about zero frequency, while one that sweeps through
// zero passes through all of them.
func (s *Series) Density(f []float64) []float64 {
	return s.DensityInto(make([]float64, len(f)), f)
}

// DensityInto is Density into dst, which must not be f.
func (s *Series) DensityInto(dst, f []float64) []float64 {
	Local(dst, s.DensityReach(), func(p *Paper, lo, hi int) []float64 { return s.DensityOf(p, f[lo:hi]) })
	return dst
}

// DensityReach is the number of samples to either side that determine the
// density.
func (s *Series) DensityReach() int { return 2*s.bandHalves()[len(bands)-1] + s.Half(bandAvg) }

// DensityOf is the density of a part of a series.
func (s *Series) DensityOf(p *Paper, f []float64) []float64 {
	out, power, once, mean := p.Sheet(len(f)), p.Sheet(len(f)), p.Sheet(len(f)), p.Sheet(len(f))
	near, far := p.Sheet(len(f)), p.Sheet(len(f))
	halves := s.bandHalves()
	Mean(near, Mean(once, f, halves[0]), halves[0])
	for k := 1; k < len(bands); k++ {
		half := halves[k]
		Mean(far, Mean(once, f, half), half)
		for i := range power {
			d := near[i] - far[i]
			power[i] = d * d
		}
		// White noise of variance σ² has density σ²·Step; the difference of
		// the windows passes σ² times the sum of its squared weights.
		scale := s.Step / squares(weights(halves[k-1]), weights(halves[k]))
		for i, p := range Mean(mean, power, s.Half(bandAvg)) {
			if p *= scale; k == 1 || p < out[i] {
				out[i] = p
			}
		}
		near, far = far, near
	}
	return out
}

// bandLong is the half-width over which the power of a slow band is averaged,
// s.
const bandLong = 0.8

// BandReach is the number of samples to either side that determine a band up to
// far.
func (s *Series) BandReach(far float64) int { return 2*s.windowHalf(far) + s.Half(bandLong) }

// BandOf is the density of a part of a series estimated from the band between
// two windows.
func (s *Series) BandOf(p *Paper, f []float64, near, far float64) []float64 {
	a, b := p.Triangle(f, s.windowHalf(near)), p.Triangle(f, s.windowHalf(far))
	for i := range a {
		a[i] = (a[i] - b[i]) * (a[i] - b[i])
	}
	scale := s.Step / squares(weights(s.windowHalf(near)), weights(s.windowHalf(far)))
	out := Mean(b, a, s.Half(bandLong))
	for i := range out {
		out[i] *= scale
	}
	return out
}

// windowHalf is half the reach in samples of a triangular window at least a
// sample wide to either side.
func (s *Series) windowHalf(reach float64) int { return max(1, s.Half(reach/2)) }

// weights are those of the triangular window that reaches twice half samples,
// from its middle to its end.
func weights(half int) []float64 {
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
