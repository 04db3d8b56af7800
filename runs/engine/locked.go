package engine

import "math"

// Line is a vibration with a constant number of cycles per metre, at any speed.
type Line struct {
	PerMetre float64 // 1/m
	Clear    float64 // mean of ln(1 + power over noise) of its frames: 0.6 for pure noise
	Frames   int
}

// Strength is the height of the line above noise, in standard deviations at one
// point of the search.
func (l Line) Strength() float64 {
	if l.Frames == 0 {
		return 0
	}
	return strength(l.Clear*float64(l.Frames), l.Frames)
}

// Spectrum is a spectrum of vibration over distance instead of time: the
// strength of each number of cycles per metre while the speed changes. Of
// several axes the strongest counts.
type Spectrum struct {
	low, step float64
	clear     []float64
	frames    int
}

// NewSpectrum computes it between two numbers of cycles per metre. A signal
// that is too short gives a Spectrum without lines.
func NewSpectrum(sigs []Signal, low, high float64) Spectrum {
	var out Spectrum
	for _, sig := range sigs {
		if sig.check() != nil {
			continue
		}
		frames := sig.frames()
		if len(frames) < 4 {
			continue
		}
		sig.X = whiten(sig.X)
		g := evenGrid(sig, frames, low, high, coarsely, []float64{1})
		if out.frames == 0 {
			out = Spectrum{g.low, g.step, make([]float64, g.n), len(frames)}
		}
		for i, sum := range g.scores(sig, frames).byOrder[0] {
			out.clear[i] = math.Max(out.clear[i], sum/float64(out.frames))
		}
	}
	return out
}

// Clearest is the strongest line.
func (s Spectrum) Clearest() Line { return s.among(0, len(s.clear)) }

// Near is the strongest line within a relative distance of a number of cycles
// per metre.
func (s Spectrum) Near(perMetre, part float64) Line {
	if s.frames == 0 {
		return Line{}
	}
	place := func(q float64) int { return int(math.Round((q - s.low) / s.step)) }
	return s.among(max(0, place(perMetre*(1-part))), min(len(s.clear), place(perMetre*(1+part))+1))
}

func (s Spectrum) among(from, to int) Line {
	best := Line{}
	for i := from; i < to; i++ {
		if s.clear[i] > best.Clear {
			best = Line{s.low + float64(i)*s.step, s.clear[i], s.frames}
		}
	}
	return best
}
