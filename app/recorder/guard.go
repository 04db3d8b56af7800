package recorder

import (
	"math"

	"stillair/sensors/finding"
)

// A guard keeps the log's clock from stepping back. Samples of different kinds
// may be interleaved by about a second; anything earlier than that is a clock
// that was set back, and from then on its times are moved so that the ride goes
// on where it was.
type guard struct {
	latest float64 // latest time returned
	offset float64 // added to every time
	step   float64 // a step not yet reported, s
}

// interleave is how far behind a sample may be without being a step, s.
const interleave = 2.5

// resume is the time from the last sample before a step to the first after it,
// s: unknown, so a small one.
const resume = 0.02

func newGuard() guard { return guard{latest: math.Inf(-1)} }

func (g *guard) time(t float64) float64 {
	t += g.offset
	if t < g.latest-interleave {
		by := g.latest + resume - t
		g.offset += by
		g.step += by
		t += by
	}
	g.latest = max(g.latest, t)
	return t
}

// stepped reports a step of the clock once.
func (g *guard) stepped() (yes bool, by float64) {
	by, g.step = g.step, 0
	return by != 0, by
}

func clockStep(by float64) finding.Finding {
	return finding.New("recorder.clock_step", finding.Time("by", by))
}
