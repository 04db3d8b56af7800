package fusion

import (
	"math"
	"slices"

	"stillair/fusion/internal/kalman"
	"stillair/fusion/internal/motion"
)

// Known is a ride with known motion and known error statistics of every sensor,
// as from a simulation or for planning a test.
type Known struct {
	T     []float64 // rising times, s; a hundredth of a second apart or so
	V     []float64 // speed, m/s
	Fixes []float64 // the times that the fixes describe, s
	Still []Span    // standstills that the sensors can detect

	Vibration []float64 // two-sided density of the forward force's white noise at T, m²/s³
	BiasWalk  float64   // random walk of the forward force's bias, (m/s²)²/s
	WhiteSD   float64   // receiver: independent error of each fix, m/s
	DriftSD   float64   // receiver: correlated error, m/s
	DriftTime float64   // its correlation time (1/e), s
}

// Bound returns the ride as a track whose uncertainties are the least that any
// estimator can reach on average: the Cramér-Rao bound in its Bayesian form
// (Van Trees, Detection, Estimation, and Modulation Theory, part I, section
// 2.4). For a linear model with normal errors it is the posterior covariance
// under the true sizes of the errors, which the smoother gives when it runs
// over the truth. Lag, smoothing, scale and bias remain unknown, with their
// usual priors. The motion between fixes is unknown as well: package marks
// adds, for the track of a bound as for any other, that a push within one gear
// is smooth.
//
// What the model leaves out counts as known: the mounting of the phone, and the
// engine orders that alias into the band of the motion where they pass a
// multiple of the sampling rate. The errors of a real ride may therefore exceed
// this bound through no fault of the estimator.
func Bound(k Known) *Track {
	r := k.ride()
	places := r.places(fineGrid, fineGrid)
	nodes := r.nodes(places)
	for i := range nodes {
		nodes[i].Step.QB = k.BiasWalk * nodes[i].Step.H
		if nodes[i].Seen && !nodes[i].Observation.Still {
			nodes[i].Observation.Z = k.V[nodes[i].Index]
		}
	}
	x, p := r.first(0)
	post := newPosterior(nodes, kalman.Smooth(nodes, x, p))
	tr := &Track{T: k.T, V: k.V, A: r.ref.accel, S: make([]float64, len(k.T)), VSD: make([]float64, len(k.T)), Still: k.Still, post: post}
	for i := range k.T {
		if i > 0 {
			tr.S[i] = tr.S[i-1] + (k.T[i]-k.T[i-1])*(k.V[i]+k.V[i-1])/2
		}
	}
	post.each(k.T, func(i, n int, u float64) {
		tr.VSD[i] = math.Sqrt(math.Max(post.inside(n, u, u)[1][1], 0))
	})
	return tr
}

// ride fills in the true values in place of the smoother's estimates.
func (k Known) ride() *ride {
	n := len(k.T)
	s := &motion.Series{T: k.T, Missing: make([]bool, n), Step: (k.T[n-1] - k.T[0]) / float64(n-1)}
	r := &ride{s: s, rest: k.Still, stale: make([]bool, n), blind: make([]float64, n), yaw: make([]float64, n), density: k.Vibration,
		lagSD: lagSD, n: noise{vibration: 1, white: k.WhiteSD, drift: k.DriftSD, memory: k.DriftTime}}
	r.ref = newReference(s)
	calm, half := s.Smooth(k.V, calmReach), max(1, s.Half(calmReach))
	for i := range calm {
		r.ref.accel[i] = slope(k.T, calm, half, i)
	}
	copy(r.ref.speed, k.V)
	r.bend()
	r.force = s.Integrate(r.ref.accel)
	r.noisy = s.Integrate(k.Vibration).Once
	for _, t := range k.Fixes {
		at, _ := slices.BinarySearch(k.T, t)
		r.fixes = append(r.fixes, fix{t: t, speed: k.V[min(at, n-1)], said: 1})
	}
	return r
}
