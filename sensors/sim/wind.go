package sim

import (
	"math"
	"math/rand/v2"
)

// windSettle is the time constant of the transition from one mean wind to the next, s.
const windSettle = 4.0

// wind is the wind vector in road axes, at the ticks before and after the present.
type wind struct {
	set         Wind
	rng         *rand.Rand
	mean, goal  [2]float64     // against the way out, against its left, m/s
	gust        [2]gaussMarkov // about the mean
	before, now [2]float64     // mean and gust at the last tick and the next
	ease        float64
}

func newWind(set Wind, seed uint64) *wind {
	w := &wind{set: set, rng: stream(seed, streamWind), ease: 1 - math.Exp(-tick/windSettle)}
	w.draw()
	w.mean = w.goal
	for i, sd := range [2]float64{set.SD, set.CrossSD} {
		w.gust[i] = newGaussMarkov(w.rng, set.GustRatio*sd, set.GustTau, tick)
		w.now[i] = w.mean[i] + w.gust[i].x
	}
	w.before = w.now
	return w
}

// draw draws the next mean wind.
func (w *wind) draw() {
	w.goal = [2]float64{w.set.SD * w.rng.NormFloat64(), w.set.CrossSD * w.rng.NormFloat64()}
}

// advance moves on by one tick.
func (w *wind) advance() {
	w.before = w.now
	for i := range w.gust {
		w.mean[i] += w.ease * (w.goal[i] - w.mean[i])
		w.now[i] = w.mean[i] + w.gust[i].advance(w.rng)
	}
}

// at returns head wind and cross-wind (from the left) at a fraction of the
// tick, for a heading with the given cosine and sine.
func (w *wind) at(fraction, cos, sin float64) (head, cross float64) {
	along := w.before[0] + fraction*(w.now[0]-w.before[0])
	side := w.before[1] + fraction*(w.now[1]-w.before[1])
	return along*cos + side*sin, side*cos - along*sin
}
