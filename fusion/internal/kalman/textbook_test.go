package kalman

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// ride is a longer chain like those of package fusion: steps of a tenth of a
// second, fixes once a second, a standstill, a stretch without force. The scale
// is unknown too.
func ride(rng *rand.Rand, n int) ([]Node, Vec, Sym) {
	nodes := make([]Node, n)
	for i := range nodes {
		h := 0.1 * (0.5 + rng.Float64())
		memory := math.Exp(rng.NormFloat64() + 1)
		phi, phiK := math.Exp(-h/memory), math.Exp(-h/120)
		accel := 3 * math.Sin(float64(i)/40)
		nodes[i].Step = Step{H: h, DV: accel * h, DS: accel * h * h / 2, RV: accel * h * (1 + 0.1*rng.NormFloat64()),
			Q: 0.02 * h * (1 + rng.Float64()), QB: 1e-3 * h, QC: 0.0025 * (1 - phi*phi), QK: 0.0036 * (1 - phiK*phiK), QD: 1e-6 * h,
			PhiC: phi, PhiK: phiK, Blind: i > n/2 && i < n/2+20}
		still := i > 10 && i < 20
		nodes[i].Seen = i%10 == 3 || still
		nodes[i].Observation = Observation{Z: 10 + rng.NormFloat64(), R: 0.0025, Accel: accel, Shape: rng.NormFloat64(), Still: still}
	}
	return nodes, Vec{V: 10, D: 0.05}, spread(1e-3, 2, 1, 0.05, 0.06, 0.4, 0.12)
}

// textbook is the extended Kalman filter and the recursion of Rauch, Tung and
// Striebel (AIAA Journal 3 (1965) 1445) as in textbooks, with gonum's dense
// matrices. It gives the smoothed states, their covariances and the gains G:
// Cov(x_i, x_j) = G_i·G_{i+1}⋯G_{j-1}·P_j.
func textbook(nodes []Node, x Vec, p0 Sym) (means []*mat.VecDense, covs, gains []*mat.Dense) {
	p := dense(&p0)
	var ahead []*mat.VecDense
	var aheadP, fs []*mat.Dense
	for i := range nodes {
		st := &nodes[i].Step
		if i > 0 {
			f := wholeTransition(st, &x)
			st.predict(&x)
			var noise Sym
			st.addNoise(&noise)
			next := mat.NewDense(N, N, nil)
			next.Product(f, p, f.T())
			next.Add(next, dense(&noise))
			p = next
			ahead, aheadP, fs = append(ahead, mat.NewVecDense(N, append([]float64{}, x[:]...))), append(aheadP, p), append(fs, f)
		}
		if nodes[i].Seen {
			p = observe(&nodes[i].Observation, &x, p)
		}
		means, covs = append(means, mat.NewVecDense(N, append([]float64{}, x[:]...))), append(covs, p)
	}
	gains = make([]*mat.Dense, len(nodes)-1)
	for i := len(nodes) - 2; i >= 0; i-- {
		var inverse, d, gdg mat.Dense
		if err := inverse.Inverse(aheadP[i]); err != nil {
			panic(err)
		}
		g := new(mat.Dense)
		g.Product(covs[i], fs[i].T(), &inverse)
		var miss, shift mat.VecDense
		miss.SubVec(means[i+1], ahead[i])
		shift.MulVec(g, &miss)
		means[i].AddVec(means[i], &shift)
		d.Sub(covs[i+1], aheadP[i])
		gdg.Product(g, &d, g.T())
		next := new(mat.Dense)
		next.Add(covs[i], &gdg)
		covs[i], gains[i] = next, g
	}
	return means, covs, gains
}

// observe applies an observation and returns the new covariance.
func observe(o *Observation, x *Vec, p *mat.Dense) *mat.Dense {
	h := mat.NewVecDense(N, nil)
	h.SetVec(V, 1)
	if !o.Still {
		h.SetVec(C, 1)
		h.SetVec(D, -o.Accel)
		h.SetVec(W, o.Shape)
	}
	state := mat.NewVecDense(N, x[:])
	var ph mat.VecDense
	ph.MulVec(p, h)
	r := mat.Dot(h, &ph) + o.R
	state.AddScaledVec(state, (o.Z-mat.Dot(h, state))/r, &ph)
	var off mat.Dense
	off.Outer(1/r, &ph, &ph)
	next := new(mat.Dense)
	next.Sub(p, &off)
	return next
}

// TestAgainstTextbook compares means, covariances and covariances between nodes
// with dense matrices, to a billionth of their standard deviations.
func TestAgainstTextbook(t *testing.T) {
	const close, nodesEach = 1e-9, 300
	var again Filter
	for seed := range uint64(10) {
		nodes, x, p := ride(rand.New(rand.NewPCG(seed, 3)), nodesEach)
		got := Smooth(nodes, x, p)
		means, _ := again.LeaveOut(nodes, x, p)
		wantX, wantP, gains := textbook(nodes, x, p)
		sd := func(i, a int) float64 { return math.Sqrt(wantP[i].At(a, a)) }
		for i := range nodes {
			own := dense(&got.P[i])
			for a := range N {
				if d := math.Abs(got.X[i][a]-wantX[i].AtVec(a)) / sd(i, a); !(d < close) || got.X[i] != means[i] {
					t.Fatalf("seed %d, node %d, state %d: %v, alone %v, want %v: off by %.2g of its sd", seed, i, a, got.X[i][a], means[i][a], wantX[i].AtVec(a), d)
				}
				for b := range N {
					if d := math.Abs(own.At(a, b)-wantP[i].At(a, b)) / (sd(i, a) * sd(i, b)); !(d < close) {
						t.Fatalf("seed %d, node %d, states %d and %d: covariance %v, want %v", seed, i, a, b, own.At(a, b), wantP[i].At(a, b))
					}
				}
			}
		}
		for _, far := range []int{1, 7, 150} {
			w := got.Links.Leave(20, 0)
			w.To(20 + far)
			joint := mat.DenseCopyOf(wantP[20+far])
			for i := 20 + far - 1; i >= 20; i-- {
				joint.Mul(gains[i], joint)
			}
			for a, row := range w.Here() {
				for b, c := range row {
					if d := math.Abs(c-joint.At(a, b)) / (sd(20, a) * sd(20+far, b)); !(d < close) {
						t.Fatalf("seed %d, %d nodes on, states %d and %d: covariance %v, want %v", seed, far, a, b, c, joint.At(a, b))
					}
				}
			}
		}
	}
}
