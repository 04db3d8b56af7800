package fusion

import (
	"math"
	"slices"
	"sync"

	"stillair/fusion/internal/kalman"
	"stillair/fusion/internal/motion"
)

// calmReach and slopeReach are the half-widths of the windows over which the
// reference speed is smoothed and differentiated, s. The coefficients of
// unknown states (lag, scale, smoothing) must be nearly free of the vibration
// that is also in the predicted speed: the square of that common noise would
// look like a lag or a scale.
const (
	calmReach  = 0.25
	slopeReach = 0.5
)

// relinearise takes the smoothed ride as the reference of the next pass.
func (r *ride) relinearise(nodes []kalman.Node, states []kalman.Vec) {
	speed := r.s.Sheet()
	r.expand(nodes, states, func(i int, at point) { speed[i] = math.Max(at.v, 0) })
	r.ref.set(r.s, speed)
	r.s.Spare(speed)
	last := &states[len(states)-1]
	r.lag += last[kalman.D]
	r.shape = math.Max(r.shape+last[kalman.W], 0)
	if !r.alone {
		r.bend()
	}
}

// set makes a speed the reference.
func (f *reference) set(s *motion.Series, speed []float64) {
	s.SmoothInto(f.speed, speed, calmReach)
	half := max(1, s.Half(slopeReach))
	motion.Blocks(len(f.accel), func(from, to int) {
		for i := from; i < to; i++ {
			f.accel[i] = slope(s.T, f.speed, half, i)
		}
	})
}

// slope is the central difference of x over half samples to either side, per
// second.
func slope(t, x []float64, half, i int) float64 {
	a, b := max(i-half, 0), min(i+half, len(x)-1)
	return (x[b] - x[a]) / (t[b] - t[a])
}

// bent is the effect of the receiver's own smoothing on the reference speed. A
// first-order low-pass of time constant τ delays by τ, which is part of the
// lag; the remainder is half of τ² times the jerk and higher terms, so that the
// reading is linear in τ², not in τ. Before the first pass, when the reference
// merely interpolates the fixes, there is no such effect.
type bent struct {
	half int // samples on each side over which the jerk is calculated; 0 before the first pass

	// The readings with √w and with √(w + shapeStep) for τ; nil while w is
	// negligible.
	read, more []float64
	w          float64 // s²
}

const (
	leastShape = 1e-4 // s²
	shapeStep  = 0.02 // s²
)

// bend computes the effect of the receiver's smoothing on the current
// reference.
func (r *ride) bend() {
	b := &r.ref.bent
	b.half, b.w = max(1, r.s.Half(calmReach)), r.shape
	if b.w < leastShape {
		r.s.Spare(b.read, b.more)
		b.read, b.more = nil, nil
		return
	}
	if b.read == nil {
		b.read, b.more = r.s.Sheet(), r.s.Sheet()
	}
	var both sync.WaitGroup
	both.Go(func() { lowPass(b.read, r.s.T, r.ref.speed, math.Sqrt(b.w)) })
	both.Go(func() { lowPass(b.more, r.s.T, r.ref.speed, math.Sqrt(b.w+shapeStep)) })
	both.Wait()
}

// at is the receiver's reading minus the speed v at sample i, without the
// delay, and its derivative with respect to τ².
func (b *bent) at(t, v []float64, i int) (curve, dcurve float64) {
	if b.half == 0 {
		return 0, 0
	}
	if b.read == nil {
		from, to := max(i-b.half, 0), min(i+b.half, len(t)-1)
		jerk := (slope(t, v, b.half, to) - slope(t, v, b.half, from)) / (t[to] - t[from])
		return 0, jerk / 2
	}
	curve = later(t, b.read, i, math.Sqrt(b.w)) - v[i]
	more := later(t, b.more, i, math.Sqrt(b.w+shapeStep)) - v[i]
	return curve, (more - curve) / shapeStep
}

// later is y some time after sample i, or at the end.
func later(t, y []float64, i int, after float64) float64 {
	at := t[i] + after
	n, _ := slices.BinarySearch(t[i:], at)
	k := max(0, min(i+n-1, len(t)-2))
	u := math.Min((at-t[k])/(t[k+1]-t[k]), 1)
	return y[k] + u*(y[k+1]-y[k])
}

// lowPass writes v filtered by a first-order low-pass of time constant tau into
// y: exact for linear interpolation between the samples.
func lowPass(y, t, v []float64, tau float64) {
	y[0] = v[0]
	for i := 1; i < len(t); i++ {
		h := t[i] - t[i-1]
		e := math.Exp(-h / tau)
		slope := (v[i] - v[i-1]) / h
		y[i] = v[i] - slope*tau + (y[i-1]-v[i-1]+slope*tau)*e
	}
}
