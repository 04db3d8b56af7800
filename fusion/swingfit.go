package fusion

import "math"

const (
	swingOwn    = 0.13 // s: values of the jerk this far apart are independent
	quietJerk   = 0.5  // m/s³ that is always assumed at standstill
	shareSD     = 4.0  // prior standard deviation of the shares of the forces
	bendSD      = 1.5  // of the shares of the second differences
	shareFloor  = 0.03 // lower limit of every fit
	startStep   = 0.02 // s between trial times of first movement
	swingPeriod = 1.0  // s of correlation of the remaining swing: converts its variance to a density
)

// ramps are the rise times that are tried for the acceleration at a start, s.
func ramps() [5]float64 { return [5]float64{0.12, 0.25, 0.4, 0.6, 0.9} }

// swing is the swing along the road, as shares (regression coefficients) of the
// references.
type swing struct {
	share [references]float64
	cov   [references][references]float64
}

// attempt is the regression for one instant of first movement and one ramp.
type attempt struct {
	swing
	likelihood float64 // logarithm of the likelihood
}

// fit estimates the shares of the swing along the road by regressing the jerk
// along the road on those of the references. The bike's own jerk is a nuisance:
// an acceleration that rises over a ramp, some time after the last certain
// standstill. Until then the swing must explain nearly everything; afterwards
// road and engine add noise whose variance is fitted. The instant and the ramp
// are unknown, so all are tried, and the shares are averaged with the
// likelihoods as weights (Bayesian model averaging).
func (st *start) fit() (swing, bool) {
	from, to := st.at(st.leaves-swingBefore), st.at(st.leaves+swingAfter)
	var jerks [references + 1][]float64
	for k, f := range st.ref {
		jerks[k] = st.jerk(f)
	}
	along := st.jerk(st.forward)
	jerks[references] = along
	var square float64
	before := along[max(0, from-st.s.Half(1)):from]
	for _, j := range before {
		square += j * j / float64(len(before))
	}
	p := newPrefix(&jerks, from, to)
	quiet := math.Max(quietJerk, math.Sqrt(square))
	independent := math.Min(1, st.s.Step/swingOwn)
	var tried []attempt
	for _, ramp := range ramps() {
		width := max(1, int(ramp/st.s.Step))
		for k := 0; k+width < to-from; k += max(1, int(startStep/st.s.Step)) {
			if a, ok := p.attempt(k, width, quiet, independent); ok {
				tried = append(tried, a)
			}
		}
	}
	return mixed(tried)
}

// prefix holds prefix sums over the samples of a start.
type prefix struct {
	sum     [][references + 1]float64
	product []products
}

func newPrefix(x *[references + 1][]float64, from, to int) prefix {
	p := prefix{sum: make([][references + 1]float64, to-from+1), product: make([]products, to-from+1)}
	for k := range to - from {
		var v [references + 1]float64
		for r := range v {
			v[r] = x[r][from+k]
			p.sum[k+1][r] = p.sum[k][r] + v[r]
		}
		p.product[k+1] = p.product[k]
		p.product[k+1].add(1, &v)
	}
	return p
}

// attempt fits the shares for an acceleration that rises from sample k over
// width samples. It fails if that would be braking. A constant jerk over the
// ramp is removed from everything after k; quiet is the standard deviation of
// the residual before k, and independent the number of independent values per
// sample.
func (p *prefix) attempt(k, width int, quiet, independent float64) (attempt, bool) {
	n := len(p.sum) - 1
	var ramp [references + 1]float64
	for r := range ramp {
		ramp[r] = p.sum[k+width][r] - p.sum[k][r]
	}
	if ramp[references] < 0 {
		return attempt{}, false
	}
	standing, moving := p.product[k], p.product[n]
	moving.addAll(-1, &standing)
	moving.add(-1/float64(width), &ramp)
	nStanding, nMoving := float64(k), float64(n-k)
	var a attempt
	noise := math.Max(quiet, math.Sqrt(moving.misfit(&a.share)/nMoving))
	for range 3 {
		var all products
		all.addAll(independent/(quiet*quiet), &standing)
		all.addAll(independent/(noise*noise), &moving)
		if !all.solve(&a.swing) {
			return attempt{}, false
		}
		noise = math.Max(quiet, math.Sqrt(moving.misfit(&a.share)/nMoving))
	}
	a.likelihood = -independent * (standing.misfit(&a.share)/(2*quiet*quiet) + moving.misfit(&a.share)/(2*noise*noise) +
		nStanding*math.Log(quiet) + nMoving*math.Log(noise))
	for r, x := range a.share {
		a.likelihood -= x * x * priorWeight(r) / 2
	}
	return a, true
}

// mixed is the likelihood-weighted mean of the attempts; its covariance
// includes their spread.
func mixed(tried []attempt) (out swing, ok bool) {
	best := math.Inf(-1)
	for _, a := range tried {
		best = math.Max(best, a.likelihood)
	}
	var total float64
	for _, a := range tried {
		w := math.Exp(a.likelihood - best)
		total += w
		for i, x := range a.share {
			out.share[i] += w * x
			for j, y := range a.share {
				out.cov[i][j] += w * (a.cov[i][j] + x*y)
			}
		}
	}
	if !(total > 0) {
		return out, false
	}
	for i := range out.share {
		out.share[i] /= total
	}
	for i, x := range out.share {
		for j, y := range out.share {
			out.cov[i][j] = out.cov[i][j]/total - x*y
		}
		out.cov[i][i] += shareFloor * shareFloor
	}
	return out, true
}
