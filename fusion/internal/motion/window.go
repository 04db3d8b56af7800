package motion

import "math"

// Mean writes the running mean of f over 2·half+1 samples into dst, which must
// not be f, and returns it. At the ends the window is truncated.
func Mean(dst, f []float64, half int) []float64 {
	if half <= 0 {
		copy(dst, f)
		return dst
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
		dst[i] = sum / float64(hi-lo)
	}
	return dst
}

// Mean is the running mean of f over 2·half+1 samples.
func (p *Paper) Mean(f []float64, half int) []float64 { return Mean(p.Sheet(len(f)), f, half) }

// Triangle is f smoothed by a triangular window that reaches twice half samples
// to either side: two running means, no phase shift.
func (p *Paper) Triangle(f []float64, half int) []float64 { return p.Mean(p.Mean(f, half), half) }

// Calm writes the running mean of f over reach seconds to either side into dst,
// which must not be f, and returns it.
func (s *Series) Calm(dst, f []float64, reach float64) []float64 {
	half := s.Half(reach)
	Local(dst, half, func(p *Paper, lo, hi int) []float64 { return p.Mean(f[lo:hi], half) })
	return dst
}

// Smooth is f smoothed by a triangular window of reach seconds to either side.
func (s *Series) Smooth(f []float64, reach float64) []float64 {
	return s.SmoothInto(make([]float64, len(f)), f, reach)
}

// SmoothInto is Smooth into dst, which must not be f.
func (s *Series) SmoothInto(dst, f []float64, reach float64) []float64 {
	half := s.Half(reach / 2)
	Local(dst, 2*half, func(p *Paper, lo, hi int) []float64 { return p.Triangle(f[lo:hi], half) })
	return dst
}

// Half is the number of samples in reach seconds.
func (s *Series) Half(reach float64) int { return int(math.Round(reach / s.Step)) }

// Shake is the rms of the specific force above a few Hz around each sample,
// all three axes together, m/s².
func (s *Series) Shake() []float64 {
	half, over := s.Half(0.15), s.Half(bandAvg)
	out := s.Sheet()
	Local(out, half+over, func(p *Paper, lo, hi int) []float64 {
		sum, axis, slow := p.Sheet(hi-lo), p.Sheet(hi-lo), p.Sheet(hi-lo)
		clear(sum)
		for a := range 3 {
			for i := range axis {
				axis[i] = Axis(s.Force(lo+i), a)
			}
			Mean(slow, axis, half)
			for i := range axis {
				d := axis[i] - slow[i]
				sum[i] += d * d
			}
		}
		rms := Mean(axis, sum, over)
		for i := range rms {
			rms[i] = math.Sqrt(math.Max(rms[i], 0))
		}
		return rms
	})
	return out
}
