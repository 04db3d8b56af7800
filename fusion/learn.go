package fusion

import (
	"cmp"
	"math"
	"runtime"
	"slices"
	"sync"

	"gonum.org/v1/gonum/optimize"

	"stillair/fusion/internal/kalman"
)

const (
	passes    = 3 // of the reference, before and after the noise is learned
	mostEvals = 150
)

// learn estimates the noise, the lag and the receiver's smoothing.
func (r *ride) learn(opt Options) {
	for range 2 {
		r.pass()
		opt.progress(0.2)
	}
	r.maximise(learnedFused, mostEvals, opt.between(0.2, 0.5))
	for range passes {
		r.pass()
		opt.progress(0.5)
	}
	r.maximise(learnedFused, mostEvals/2, opt.between(0.5, 0.7))
	r.expectDrift()
	r.pass()
}

// pass smooths over coarse nodes and relinearises about the result: one
// iteration of an iterated extended Kalman smoother.
func (r *ride) pass() {
	places := r.places(coarseGrid, 0.5)
	nodes := r.nodes(places)
	x, p := r.first(0)
	states, left := r.filter.LeaveOut(nodes, x, p)
	r.downweightOutliers(places, nodes, left)
	r.relinearise(nodes, states)
}

// maximise estimates the noise parameters listed in which by maximum a
// posteriori: the likelihood of the fixes' innovations (prediction error
// decomposition) times weak priors, by the Nelder-Mead simplex. done is called
// with the share of the evaluations.
func (r *ride) maximise(which []int, evals int, done func(share float64)) {
	parts := r.stretches()
	asked := 0
	now, centre := r.n.log(), r.prior.log()
	with := func(x []float64) noise {
		all := now
		for k, i := range which {
			all[i] = x[k]
		}
		return noiseOf(all)
	}
	problem := optimize.Problem{Func: func(x []float64) float64 {
		asked++
		done(min(1, float64(asked)/float64(evals)))
		for k, i := range which {
			if math.Abs(x[k]-centre[i]) > 5*spread[i] {
				return 1e12
			}
		}
		n := with(x)
		if n.drift > mostDrift {
			return 1e12
		}
		return -r.logLikelihood(parts, n) - n.logPrior(r.prior)
	}}
	start := make([]float64, len(which))
	for k, i := range which {
		start[k] = now[i]
	}
	settings := &optimize.Settings{FuncEvaluations: evals, Concurrent: 1,
		Converger: &optimize.FunctionConverge{Absolute: 0.02, Iterations: 25}}
	res, err := optimize.Minimize(problem, start, settings, &optimize.NelderMead{SimplexSize: 0.7})
	if res != nil && (err == nil || len(res.X) == len(which)) {
		r.n = with(res.X)
	}
}

// expectDrift replaces the most probable variance of the receiver's correlated
// error by the expected one. A ride determines the density of that error near
// zero frequency, which is proportional to variance times correlation time; the
// effect of vibration on the speed hides how the two share in it. The posterior
// of the logarithm of its standard deviation is therefore wide: with its
// variance σ² from the curvature of the likelihood (Laplace's approximation),
// the mean of the variance exceeds its mode by a factor e^2σ².
func (r *ride) expectDrift() {
	const apart = 0.35 // of the logarithm, the step for the curvature
	parts := r.stretches()
	shared := func(by float64) noise {
		n := r.n
		n.drift *= math.Exp(by)
		n.memory *= math.Exp(-2 * by)
		return n
	}
	at := func(n noise) float64 { return r.logLikelihood(parts, n) + n.logPrior(r.prior) }
	curvature := (2*at(r.n) - at(shared(apart)) - at(shared(-apart))) / (apart * apart)
	prior := 1/(spread[3]*spread[3]) + 4/(spread[4]*spread[4])
	r.n = shared(math.Min(1/math.Max(curvature, prior), math.Max(0, math.Log(mostDrift/r.n.drift))))
}

const (
	stretchFixes = 120  // fixes in one stretch that the noise is learned from
	mostFixes    = 1440 // fixes in all of them: plenty for five parameters
)

// stretch is a part of the ride from which the noise is learned.
type stretch struct {
	places []place
	nodes  []kalman.Node
	spans  []span
	energy float64 // sum of squared accelerations: changes of speed are what the noise is learned from
}

// stretches divides the ride into parts and, if there are too many, keeps those
// with the largest changes of speed.
func (r *ride) stretches() []stretch {
	places := r.places(coarseGrid, 0.5)
	nodes, spans := r.skeleton(places)
	var parts []stretch
	from, fixes, energy := 0, 0, 0.0
	for i, p := range places {
		if p.fix >= 0 && !p.still {
			fixes++
			energy += r.ref.accel[p.index] * r.ref.accel[p.index]
		}
		if fixes == stretchFixes || i == len(places)-1 {
			parts = append(parts, stretch{places[from : i+1], nodes[from : i+1], spans[from : i+1], energy})
			from, fixes, energy = i+1, 0, 0
		}
	}
	slices.SortFunc(parts, func(a, b stretch) int { return cmp.Compare(b.energy, a.energy) })
	return parts[:min(len(parts), mostFixes/stretchFixes)]
}

// logLikelihood sums over the stretches, on all cores.
func (r *ride) logLikelihood(parts []stretch, n noise) float64 {
	sums := make([]float64, len(parts))
	var wg sync.WaitGroup
	workers := min(runtime.GOMAXPROCS(0), len(parts))
	for w := range workers {
		wg.Go(func() {
			for i := w; i < len(parts); i += workers {
				sums[i] = r.partLikelihood(&parts[i], n)
			}
		})
	}
	wg.Wait()
	var sum float64
	for _, s := range sums {
		sum += s
	}
	return sum
}

func (r *ride) partLikelihood(p *stretch, n noise) float64 {
	for i := range p.nodes {
		n.setNoise(&p.nodes[i], p.spans[i], r.fixes, p.places[i])
	}
	x, cov := r.first(p.nodes[0].Index)
	cov.CC = n.drift * n.drift
	return kalman.LogLikelihood(p.nodes, x, cov)
}
