package fusion

import (
	"math"

	"gonum.org/v1/gonum/optimize"

	"stillair/fusion/internal/kalman"
)

const (
	passes     = 3 // of the reference, before and after the noise is learned
	mostEvals  = 150
	trustLimit = 4.0 // residuals beyond this many standard deviations lose weight
)

// learn finds the noise, the lag and the receiver's smoothing.
func (r *ride) learn(opt Options) {
	for range 2 {
		r.pass()
	}
	r.maximise(mostEvals)
	opt.progress(0.5)
	for range passes {
		r.pass()
	}
	r.maximise(mostEvals / 2)
	r.pass()
}

// pass smooths over coarse nodes and makes the outcome the new reference.
func (r *ride) pass() {
	places := r.places(coarseGrid, 0.5)
	nodes := r.nodes(places)
	x, p := r.first(r.before)
	post := newPosterior(nodes, kalman.Smooth(nodes, x, p), len(r.s.T))
	r.judge(places, &post)
	r.relinearise(&post)
}

// judge takes weight from fixes that lie far off the smoothed ride: Huber's
// rule, by raising their variance.
func (r *ride) judge(places []place, post *posterior) {
	for i, pl := range places {
		if pl.fix < 0 || !post.nodes[i].Seen || post.nodes[i].Sight.Still {
			continue
		}
		o := &post.nodes[i].Sight
		x := &post.X[i]
		e := math.Abs(o.Z - (x[kalman.V] + x[kalman.C] - o.Accel*x[kalman.D] + o.Shape*x[kalman.W]))
		limit := trustLimit * r.n.white
		f := &r.fixes[pl.fix]
		f.trust = 1
		if e > limit {
			f.trust = e / limit * e / limit
		}
	}
}

// maximise looks for the noise under which the fixes were most probable, each
// predicted from those before it (prediction error decomposition), with the
// weak prior of what is typical.
func (r *ride) maximise(evals int) {
	places := r.places(coarseGrid, 0.5)
	problem := optimize.Problem{Func: func(x []float64) float64 {
		for i, c := range typical.log() {
			if math.Abs(x[i]-c) > 5*spread[i] {
				return 1e12
			}
		}
		r.n = noiseOf(x)
		nodes := r.nodes(places)
		s, p := r.first(r.before)
		return -kalman.LogLikelihood(nodes, s, p) - r.n.logPrior()
	}}
	start := r.n.log()
	settings := &optimize.Settings{FuncEvaluations: evals, Concurrent: 1,
		Converger: &optimize.FunctionConverge{Absolute: 0.02, Iterations: 25}}
	res, err := optimize.Minimize(problem, start[:], settings, &optimize.NelderMead{SimplexSize: 0.7})
	if res == nil || (err != nil && len(res.X) == 0) {
		r.n = noiseOf(start[:])
		return
	}
	r.n = noiseOf(res.X)
}
