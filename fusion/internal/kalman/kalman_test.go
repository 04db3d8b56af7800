package kalman

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// chain is a short ride with every kind of step and observation. The scale K
// is known and zero, so that the model is linear and the smoother must agree
// with the least-squares solution of the whole.
func chain(rng *rand.Rand) ([]Node, Vec, Sym) {
	x := Vec{V: 10, D: 0.1}
	p := spread(0.1, 2, 0.5, 0.05, 1e-6, 0.3, 0.1)
	nodes := make([]Node, 14)
	for i := range nodes {
		h := 0.2 + rng.Float64()
		phi := math.Exp(-h / 6)
		nodes[i].Step = Step{H: h, DV: rng.NormFloat64(), DS: rng.NormFloat64(), RV: rng.NormFloat64(),
			Q: 0.05 * h, QB: 0.01 * h, QC: 0.0025 * (1 - phi*phi), QK: 1e-14, QD: 1e-6 * h, PhiC: phi, PhiK: 1,
			Blind: i == 6}
		nodes[i].Seen = i%3 != 1
		nodes[i].Observation = Observation{Z: 10 + rng.NormFloat64(), R: 0.01, Accel: rng.NormFloat64(), Shape: rng.NormFloat64(), Still: i == 9}
	}
	return nodes, x, p
}

// spread is the covariance of independent numbers with these standard
// deviations.
func spread(sd ...float64) Sym {
	var v Vec
	for i, s := range sd {
		v[i] = s * s
	}
	return Diagonal(v)
}

// dense is a full symmetric matrix.
func dense(p *Sym) *mat.Dense {
	d := mat.NewDense(N, N, nil)
	for b, c := range p.columns() {
		d.SetCol(b, c[:])
	}
	return d
}

// wholeTransition is the full matrix F.
func wholeTransition(st *Step, x *Vec) *mat.Dense {
	f := mat.NewDense(N, N, nil)
	for a := range N {
		f.Set(a, a, 1)
	}
	f.Set(S, V, st.H)
	if !st.Blind {
		g := 1 - x[K]
		f.Set(V, B, -st.H*g)
		f.Set(V, K, -st.RV)
		f.Set(S, B, -st.H*st.H/2*g)
		f.Set(S, K, -st.RV*st.H/2)
	}
	f.Set(C, C, st.PhiC)
	f.Set(K, K, st.PhiK)
	return f
}

// batch solves the same problem at once: it builds the joint prior of all
// states and conditions it on all observations at once (the Gauss-Markov
// theorem; any textbook on estimation), with dense matrices of gonum.
func batch(nodes []Node, x Vec, p Sym) (*mat.VecDense, *mat.Dense) {
	n := len(nodes)
	mean := mat.NewVecDense(n*N, nil)
	cov := mat.NewDense(n*N, n*N, nil)
	set := func(i, j int, m *mat.Dense) {
		for a := range N {
			for b := range N {
				cov.Set(i*N+a, j*N+b, m.At(a, b))
				cov.Set(j*N+b, i*N+a, m.At(a, b))
			}
		}
	}
	block := func(i, j int) *mat.Dense { return mat.DenseCopyOf(cov.Slice(i*N, i*N+N, j*N, j*N+N)) }
	set(0, 0, dense(&p))
	for a := range N {
		mean.SetVec(a, x[a])
	}
	for i := 1; i < n; i++ {
		st := &nodes[i].Step
		f := wholeTransition(st, &x)
		st.predict(&x)
		for a := range N {
			mean.SetVec(i*N+a, x[a])
		}
		var noise Sym
		st.addNoise(&noise)
		for k := range i {
			var c mat.Dense
			c.Mul(f, block(i-1, k))
			set(i, k, &c)
		}
		var fp, fpf mat.Dense
		fp.Mul(f, block(i-1, i-1))
		fpf.Mul(&fp, f.T())
		fpf.Add(&fpf, dense(&noise))
		set(i, i, &fpf)
	}
	return condition(nodes, mean, cov)
}

func condition(nodes []Node, mean *mat.VecDense, cov *mat.Dense) (*mat.VecDense, *mat.Dense) {
	var seen []int
	for i := range nodes {
		if nodes[i].Seen {
			seen = append(seen, i)
		}
	}
	h := mat.NewDense(len(seen), mean.Len(), nil)
	r := mat.NewDense(len(seen), len(seen), nil)
	z := mat.NewVecDense(len(seen), nil)
	for k, i := range seen {
		o := nodes[i].Observation
		h.Set(k, i*N+V, 1)
		if !o.Still {
			h.Set(k, i*N+C, 1)
			h.Set(k, i*N+D, -o.Accel)
			h.Set(k, i*N+W, o.Shape)
		}
		r.Set(k, k, o.R)
		z.SetVec(k, o.Z)
	}
	var ph, s, inv, gain, gh, less mat.Dense
	ph.Mul(cov, h.T())
	s.Mul(h, &ph)
	s.Add(&s, r)
	if err := inv.Inverse(&s); err != nil {
		panic(err)
	}
	gain.Mul(&ph, &inv)
	var hm, e, dx mat.VecDense
	hm.MulVec(h, mean)
	e.SubVec(z, &hm)
	dx.MulVec(&gain, &e)
	out := mat.NewVecDense(mean.Len(), nil)
	out.AddVec(mean, &dx)
	gh.Mul(&gain, ph.T())
	less.Sub(cov, &gh)
	return out, &less
}

// TestAgainstBatch compares the recursion with the batch solution: means,
// covariances and the covariances between nodes.
func TestAgainstBatch(t *testing.T) {
	for seed := range uint64(20) {
		nodes, x, p := chain(rand.New(rand.NewPCG(seed, 7)))
		got := Smooth(nodes, x, p)
		mean, cov := batch(nodes, x, p)
		scale := func(i, a int) float64 { return math.Sqrt(cov.At(i*N+a, i*N+a)) + 1e-9 }
		for i := range nodes {
			for a := range N {
				if d := math.Abs(got.X[i][a]-mean.AtVec(i*N+a)) / scale(i, a); d > 1e-4 {
					t.Fatalf("seed %d, node %d, state %d: mean off by %.2g of its sd", seed, i, a, d)
				}
			}
			own := dense(&got.P[i])
			for a := range N {
				for b := range N {
					want := cov.At(i*N+a, i*N+b)
					if d := math.Abs(own.At(a, b)-want) / (scale(i, a) * scale(i, b)); d > 1e-4 {
						t.Fatalf("seed %d, node %d, states %d and %d: covariance %.6g, want %.6g", seed, i, a, b, own.At(a, b), want)
					}
				}
			}
			if i == len(nodes)-1 {
				continue
			}
			u := 0.3
			for w, j := got.Links.Leave(i, u), i+1; j < len(nodes); j++ {
				w.To(j)
				for a, row := range w.Here() {
					for b, c := range row {
						want := (1-u)*cov.At(i*N+a, j*N+b) + u*cov.At((i+1)*N+a, j*N+b)
						if d := math.Abs(c-want) / (scale(i, a) * scale(j, b)); d > 1e-4 {
							t.Fatalf("seed %d, nodes %d and %d, states %d and %d: covariance %.6g, want %.6g", seed, i, j, a, b, c, want)
						}
					}
				}
			}
		}
	}
}

// TestLogLikelihood compares the prediction error decomposition with the
// density of all fixes at once.
func TestLogLikelihood(t *testing.T) {
	nodes, x, p := chain(rand.New(rand.NewPCG(3, 9)))
	nodes[9].Seen = false // a standstill does not count
	for i := range nodes {
		nodes[i].Observation.R = 4 // so that nothing counts as an outlier
	}
	got := LogLikelihood(nodes, x, p)

	free := make([]Node, len(nodes))
	copy(free, nodes)
	for i := range free {
		free[i].Seen = false
	}
	mean, cov := batchPrior(free, x, p)
	var seen []int
	for i := range nodes {
		if nodes[i].Seen {
			seen = append(seen, i)
		}
	}
	h := mat.NewDense(len(seen), mean.Len(), nil)
	e := mat.NewVecDense(len(seen), nil)
	for k, i := range seen {
		o := nodes[i].Observation
		h.Set(k, i*N+V, 1)
		h.Set(k, i*N+C, 1)
		h.Set(k, i*N+D, -o.Accel)
		h.Set(k, i*N+W, o.Shape)
	}
	e.MulVec(h, mean)
	var ph, s mat.Dense
	ph.Mul(cov, h.T())
	s.Mul(h, &ph)
	sym := mat.NewSymDense(len(seen), nil)
	for i := range seen {
		e.SetVec(i, nodes[seen[i]].Observation.Z-e.AtVec(i))
		for j := range i + 1 {
			sym.SetSym(i, j, s.At(i, j))
		}
		sym.SetSym(i, i, s.At(i, i)+nodes[seen[i]].Observation.R)
	}
	var chol mat.Cholesky
	if !chol.Factorize(sym) {
		t.Fatal("not positive definite")
	}
	var w mat.VecDense
	if err := chol.SolveVecTo(&w, e); err != nil {
		t.Fatal(err)
	}
	want := -(mat.Dot(e, &w) + chol.LogDet()) / 2
	if math.Abs(got-want) > 1e-6*math.Abs(want) {
		t.Errorf("log likelihood %.9g, want %.9g", got, want)
	}
}

func batchPrior(nodes []Node, x Vec, p Sym) (*mat.VecDense, *mat.Dense) {
	none := make([]Node, len(nodes))
	copy(none, nodes)
	none[0].Seen = true // conditioning needs one observation: one without weight
	none[0].Observation = Observation{Z: x[V], R: 1e12, Still: true}
	return batch(none, x, p)
}

func BenchmarkSmooth(b *testing.B) {
	nodes, x, p := chain(rand.New(rand.NewPCG(1, 1)))
	b.ReportAllocs()
	for b.Loop() {
		Smooth(nodes, x, p)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(nodes)), "ns/node")
}
