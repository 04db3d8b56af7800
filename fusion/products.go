package fusion

import (
	"math"
)

// products are the sums of products (normal equations) of the references and,
// last, of the dependent variable.
type products [references + 1][references + 1]float64

func (p *products) add(w float64, v *[references + 1]float64) {
	for i := range p {
		for j := range p {
			p[i][j] += w * v[i] * v[j]
		}
	}
}

func (p *products) addAll(w float64, q *products) {
	for i := range p {
		for j := range p {
			p[i][j] += w * q[i][j]
		}
	}
}

// misfit is the residual sum of squares for given shares of the references.
func (p *products) misfit(share *[references]float64) float64 {
	sum := p[references][references]
	for i, x := range share {
		sum -= 2 * x * p[i][references]
		for j, y := range share {
			sum += x * y * p[i][j]
		}
	}
	return math.Max(sum, 0)
}

// priorWeight is the inverse of a share's variance before the ride.
func priorWeight(r int) float64 {
	if r < 2 {
		return 1 / (shareSD * shareSD)
	}
	return 1 / (bendSD * bendSD)
}

// solve computes the shares and their covariance from weighted products.
func (p *products) solve(out *swing) bool {
	var info [references][references]float64
	var toward [references]float64
	for i := range references {
		copy(info[i][:], p[i][:references])
		info[i][i] += priorWeight(i)
		toward[i] = p[i][references]
	}
	cov, ok := inverse(info)
	if !ok {
		return false
	}
	out.cov, out.share = cov, times(&cov, &toward)
	return true
}

func times(m *[references][references]float64, v *[references]float64) (out [references]float64) {
	for i := range m {
		for j := range m {
			out[i] += m[i][j] * v[j]
		}
	}
	return out
}

// inverse inverts a positive definite matrix by Gauss-Jordan elimination, which
// needs no pivoting there.
func inverse(m [references][references]float64) (out [references][references]float64, ok bool) {
	for i := range out {
		out[i][i] = 1
	}
	for k := range m {
		d := m[k][k]
		if !(d > 0) {
			return out, false
		}
		for j := range m {
			m[k][j] /= d
			out[k][j] /= d
		}
		for i := range m {
			f := m[i][k]
			if i == k || f == 0 {
				continue
			}
			for j := range m {
				m[i][j] -= f * m[k][j]
				out[i][j] -= f * out[k][j]
			}
		}
	}
	return out, true
}

// pooled combines the shares of all starts of a ride (partial pooling), since
// they differ only a little, with the engine's speed.
func pooled(own []swing) []swing {
	const differ = 0.15 // standard deviation of a share from start to start
	out := make([]swing, len(own))
	for i := range own {
		var info [references][references]float64
		var toward [references]float64
		for k, sw := range own {
			if k != i {
				for a := range references {
					sw.cov[a][a] += differ * differ
				}
			}
			weight, ok := inverse(sw.cov)
			if !ok {
				continue
			}
			for a, x := range times(&weight, &sw.share) {
				toward[a] += x
				for b := range references {
					info[a][b] += weight[a][b]
				}
			}
		}
		out[i] = own[i]
		if cov, ok := inverse(info); ok {
			out[i] = swing{share: times(&cov, &toward), cov: cov}
		}
	}
	return out
}
