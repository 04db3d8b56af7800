package live

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

const (
	historyStep = 0.05 // s between entries
	historySize = 128  // a little more than six seconds
)

// moment is the filter's estimate at one time.
type moment struct {
	t     float64
	speed float64 // m/s
	sum   r3.Vec  // integral of the force since the start, m/s
}

// history is a ring buffer of the last seconds.
type history struct {
	ring   [historySize]moment
	n      int // total number added
	broken float64
}

func (h *history) reset(t float64) {
	*h = history{broken: math.Inf(-1)}
	h.ring[0] = moment{t: t}
	h.n = 1
}

// add appends a moment, or overwrites the last one if that is too recent.
func (h *history) add(t, speed float64, sum r3.Vec) {
	m := moment{t: t, speed: speed, sum: sum}
	if h.n > 1 && t-h.ring[(h.n-2)%historySize].t < historyStep {
		h.ring[(h.n-1)%historySize] = m
		return
	}
	h.ring[h.n%historySize] = m
	h.n++
}

// at interpolates the moment at t linearly, clamped to the ends.
func (h *history) at(t float64) moment {
	if h.n == 0 {
		return moment{t: t}
	}
	first := max(0, h.n-historySize)
	lo, hi := first, h.n-1
	if t >= h.ring[hi%historySize].t {
		return h.ring[hi%historySize]
	}
	if t <= h.ring[lo%historySize].t {
		return h.ring[lo%historySize]
	}
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; h.ring[mid%historySize].t <= t {
			lo = mid
		} else {
			hi = mid
		}
	}
	a, b := &h.ring[lo%historySize], &h.ring[hi%historySize]
	u := (t - a.t) / (b.t - a.t)
	return moment{t: t, speed: a.speed + u*(b.speed-a.speed), sum: r3.Add(a.sum, r3.Scale(u, r3.Sub(b.sum, a.sum)))}
}

// covers reports whether the history reaches back to t without a gap.
func (h *history) covers(t float64) bool {
	if h.n < 2 {
		return false
	}
	return t >= h.ring[max(0, h.n-historySize)%historySize].t && t > h.broken
}

// shift adds dv to all stored speeds from a time on.
func (h *history) shift(dv, from float64) {
	for i := max(0, h.n-historySize); i < h.n; i++ {
		if m := &h.ring[i%historySize]; m.t >= from {
			m.speed = math.Max(m.speed+dv, 0)
		}
	}
}

// calm is the mean force over the last second and a half until t.
func (h *history) calm(t float64, sum r3.Vec) r3.Vec {
	const over = 1.5
	if h.n == 0 {
		return r3.Vec{} // no motion at all
	}
	m := h.at(t - over)
	last := h.ring[(h.n-1)%historySize].t
	if last <= m.t {
		return r3.Vec{}
	}
	return r3.Scale(1/(last-m.t), r3.Sub(sum, m.sum))
}
