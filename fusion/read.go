package fusion

import (
	"math"

	"stillair/fusion/internal/kalman"
)

// track builds the track from the smoothed nodes. Slices of the ride, one entry
// for each sample, become the track's without a copy.
func (r *ride) track(nodes []kalman.Node, res *kalman.Result) *Track {
	tr := &Track{T: r.s.T, Yaw: r.yaw, Still: r.rest, post: newPosterior(nodes, res)}
	if tr.Yaw == nil {
		tr.Yaw = r.s.Sheet()
		for i := range tr.Yaw {
			tr.Yaw[i] = math.NaN()
		}
	}
	tr.A = r.s.SmoothInto(r.s.Sheet(), r.raw, AReach)
	tr.Force, tr.Noise = r.raw, r.density
	tr.S, tr.V, tr.signed = r.s.Sheet(), r.s.Sheet(), r.s.Sheet()
	r.expand(nodes, res.X, func(i int, at point) {
		tr.S[i], tr.V[i], tr.signed[i] = at.s, math.Max(at.v, 0), at.v
		tr.Noise[i] = r.n.vibration * math.Max(tr.Noise[i], leastDensity)
		tr.Force[i] = (tr.Force[i] - at.b) * (1 - at.k)
		tr.A[i] = (tr.A[i] - at.b) * (1 - at.k)
		switch {
		case r.gnssOnlyAt(i):
			tr.Noise[i] = r.n.jolt
		case r.s.Missing[i]:
			tr.Noise[i], tr.Force[i], tr.A[i] = blindDensity, math.NaN(), 0
		}
	})
	r.raw, r.density = nil, nil
	r.s.Spare(r.force.Once, r.force.Twice)
	tr.VSD, tr.ASD = r.s.Sheet(), r.s.Sheet()
	r.deviations(tr, res.P)
	last := len(nodes) - 1
	r.lagOf(tr, &res.X[last], &res.P[last])
	tr.Gaps = r.gaps(tr, nodes)
	return tr
}

// deviations computes the standard uncertainties. That of A has three parts:
// the vibration that the window passes, the uncertainty of bias and scale, and
// the window's bias where the acceleration curves, which is estimated by
// smoothing a second time.
func (r *ride) deviations(tr *Track, covs []kalman.Sym) {
	p := &tr.post
	again := r.s.SmoothInto(r.s.Sheet(), tr.A, AReach)
	p.each(tr.T, func(i, n int, u float64) {
		tr.VSD[i] = math.Sqrt(math.Max(p.inside(n, u, u)[1][1], 0))
		if r.s.Missing[i] && !r.gnssOnlyAt(i) {
			tr.ASD[i] = math.Sqrt(blindDensity / 2)
			return
		}
		pb := (1-u)*covs[n].BB + u*covs[n+1].BB
		pk := (1-u)*covs[n].KK + u*covs[n+1].KK
		bent := tr.A[i] - again[i]
		// a triangular window of reach w passes 2/(3w) of the density of white
		// noise
		tr.ASD[i] = math.Sqrt(tr.Noise[i]*2/(3*AReach) + pb + pk*tr.A[i]*tr.A[i] + bent*bent)
	})
}
