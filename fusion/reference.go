package fusion

import (
	"math"
	"sync"

	"stillair/fusion/internal/kalman"
	"stillair/fusion/internal/motion"
)

// calmReach and slopeReach are the reaches of the windows over which the
// reference speed is smoothed and its slope taken, s. What multiplies an
// unknown of the state (lag, scale, smoothing) must be all but free of the
// vibration that is also in the prediction of the speed: the square of that
// common noise would pass for a lag or a scale.
const (
	calmReach  = 0.25
	slopeReach = 0.5
)

// relinearise makes the smoothed ride the reference of the next pass.
func (r *ride) relinearise(nodes []kalman.Node, states []kalman.Vec) {
	speed := r.s.Sheet()
	r.expand(nodes, states, func(i int, at point) { speed[i] = math.Max(at.v, 0) })
	r.ref.set(r.s, speed)
	r.s.Spare(speed)
	last := &states[len(states)-1]
	r.lag += last[kalman.D]
	r.shape = math.Max(r.shape+last[kalman.W], 0)
	r.bend()
}

// set takes a speed as the reference.
func (f *reference) set(s *motion.Series, speed []float64) {
	s.SmoothInto(f.speed, speed, calmReach)
	half := max(1, s.Half(slopeReach))
	motion.Blocks(len(f.accel), func(from, to int) {
		for i := from; i < to; i++ {
			f.accel[i] = slope(s.T, f.speed, half, i)
		}
	})
}

// slope is the change of x per second between half samples before and after a
// sample.
func slope(t, x []float64, half, i int) float64 {
	a, b := max(i-half, 0), min(i+half, len(x)-1)
	return (x[b] - x[a]) / (t[b] - t[a])
}

// bend works out what the receiver's own smoothing makes of the reference
// speed. A first-order lag of time constant τ delays by τ on the whole, which
// is part of the lag; what remains is half of τ² times the jerk and higher
// terms, so that the reading is linear in τ², not in τ.
func (r *ride) bend() {
	t, curve, dcurve := r.s.T, r.ref.curve, r.ref.dcurve
	if r.shape < 1e-4 {
		half := max(1, r.s.Half(calmReach))
		motion.Blocks(len(t), func(from, to int) {
			for i := from; i < to; i++ {
				a, b := max(i-half, 0), min(i+half, len(t)-1)
				jerk := (slope(t, r.ref.speed, half, b) - slope(t, r.ref.speed, half, a)) / (t[b] - t[a])
				curve[i], dcurve[i] = 0, jerk/2
			}
		})
		return
	}
	const dw = 0.02
	y, dy := r.s.Sheet(), r.s.Sheet()
	var both sync.WaitGroup
	both.Go(func() { r.lowPass(curve, y, r.shape) })
	both.Go(func() { r.lowPass(dcurve, dy, r.shape+dw) })
	both.Wait()
	r.s.Spare(y, dy)
	for i := range dcurve {
		dcurve[i] = (dcurve[i] - curve[i]) / dw
	}
}

// lowPass puts into out how much more than the speed a receiver reads that
// smooths with a time constant √w and whose mean delay √w is accounted for; y
// is room for the reading itself.
func (r *ride) lowPass(out, y []float64, w float64) {
	tau := math.Sqrt(w)
	t, v := r.s.T, r.ref.speed
	y[0] = v[0]
	for i := 1; i < len(t); i++ {
		h := t[i] - t[i-1]
		e := math.Exp(-h / tau)
		// exact for straight lines between the samples
		slope := (v[i] - v[i-1]) / h
		y[i] = v[i] - slope*tau + (y[i-1]-v[i-1]+slope*tau)*e
	}
	k := 0
	for i := range t {
		at := t[i] + tau
		for k+2 < len(t) && t[k+1] <= at {
			k++
		}
		u := math.Min((at-t[k])/(t[k+1]-t[k]), 1)
		out[i] = y[k] + u*(y[k+1]-y[k]) - v[i]
	}
}
