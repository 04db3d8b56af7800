package power

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/sensors/finding"
)

// motion is the linear model of one pull: its speed is linear in the unknowns,
// given an approximate speed for the position on the curve.
type motion struct {
	x    *mat.Dense    // rows: points; columns: as in layout
	y    *mat.VecDense // speed, plus the loss by road load
	load []float64     // that loss, m/s
	gust *mat.SymDense // covariance of the speed due to gusts, m²/s²
	chol mat.Cholesky  // of gust and the smoother's covariance

	info *mat.SymDense // xᵀ·V⁻¹·x
	pull *mat.VecDense // xᵀ·V⁻¹·y
	rest float64       // yᵀ·V⁻¹·y
}

// substeps is the number of integration steps between points.
const substeps = 6

var errNotDefinite = finding.Fail(codeNotDefinite)

// newMotion linearises one pull about a speed at its points, m/s.
func (l layout) newMotion(index int, speed []float64, bike Bike, day Day) (*motion, error) {
	p := l.pulls[index]
	n := len(p.T)
	m := &motion{x: mat.NewDense(n, l.size(), nil), y: mat.NewVecDense(n, nil), load: make([]float64, n)}
	fine := refine(p.T, speed)
	row := make([]float64, l.size())
	wind := l.windAt(l.pair[index])
	var load float64
	for i := range n {
		if i > 0 {
			for j := (i - 1) * substeps; j < i*substeps; j++ {
				h := fine[j+1].t - fine[j].t
				for _, at := range [2]float64{fine[j].v, fine[j+1].v} {
					l.push(row, at, h/2/bike.inertia())
					load += h / 2 * bike.Load.Force(at).X / bike.inertia()
					row[wind] -= h / 2 * p.Dir * bike.windForce(at) / bike.inertia()
					row[wind+1] -= h / 2 * p.Dir * bike.Load.Mass * bike.Load.Gravity / bike.inertia()
				}
			}
		}
		m.x.SetRow(i, row)
		m.x.Set(i, l.startAt(index), 1)
		m.load[i] = load
		m.y.SetVec(i, p.V[i]+load)
	}
	m.gust = gusts(p.T, speed, bike, day)
	return m, m.weigh(p, 0)
}

// push adds the coefficients of the speed gained from the force at the speed v.
func (l layout) push(row []float64, v, perForce float64) {
	k, f := l.at(v)
	row[k] += (1 - f) * l.scale * perForce
	row[k+1] += f * l.scale * perForce
	row[l.humpAt()] += ((1-f)*l.hump[k] + f*l.hump[k+1]) * l.scale * perForce
}

type instant struct{ t, v float64 }

// refine interpolates further points linearly between those of a pull.
func refine(t, v []float64) []instant {
	out := make([]instant, 0, substeps*len(t))
	for i := 0; i+1 < len(t); i++ {
		for j := range substeps {
			u := float64(j) / substeps
			out = append(out, instant{t[i] + u*(t[i+1]-t[i]), v[i] + u*(v[i+1]-v[i])})
		}
	}
	return append(out, instant{t[len(t)-1], v[len(v)-1]})
}

// gusts is the covariance of the speed from gusts: a first-order Gauss-Markov
// process, integrated.
func gusts(t, v []float64, bike Bike, day Day) *mat.SymDense {
	n := len(t)
	push := func(i, j int) float64 {
		hang := math.Exp(-math.Abs(t[i]-t[j]) / math.Max(day.GustTime, 1e-3))
		return bike.windForce(v[i]) * bike.windForce(v[j]) * square(day.GustSD/bike.inertia()) * hang
	}
	// The double integral over both times, by the trapezoidal rule: first along
	// one, then along the other.
	once := mat.NewDense(n, n, nil)
	out := mat.NewSymDense(n, nil)
	for i := range n {
		for j := 1; j < n; j++ {
			once.Set(i, j, once.At(i, j-1)+(t[j]-t[j-1])*(push(i, j-1)+push(i, j))/2)
		}
	}
	for j := range n {
		var sum float64
		for i := 1; i <= j; i++ {
			sum += (t[i] - t[i-1]) * (once.At(i-1, j) + once.At(i, j)) / 2
			out.SetSym(i, j, sum)
		}
	}
	return out
}

// weigh computes the information of the pull, with a covariance that includes
// gusts and a random walk of strength kicks in (m/s)²/s.
func (m *motion) weigh(p Pull, kicks float64) error {
	const least = 1e-6 // m²/s² added, since neighbours are nearly equal
	n, size := m.x.Dims()
	v := mat.NewSymDense(n, nil)
	v.AddSym(m.gust, p.Cov)
	for i := range n {
		v.SetSym(i, i, v.At(i, i)+least)
		for j := i; j < n; j++ {
			v.SetSym(i, j, v.At(i, j)+kicks*(p.T[i]-p.T[0]))
		}
	}
	if !m.chol.Factorize(v) {
		return errNotDefinite
	}
	var wx, info mat.Dense
	var wy mat.VecDense
	if err := m.chol.SolveTo(&wx, m.x); err != nil {
		return err
	}
	if err := m.chol.SolveVecTo(&wy, m.y); err != nil {
		return err
	}
	info.Mul(m.x.T(), &wx)
	m.info, m.pull = mat.NewSymDense(size, nil), mat.NewVecDense(size, nil)
	addScaled(m.info, 1, &info)
	m.pull.MulVec(m.x.T(), &wy)
	m.rest = mat.Dot(m.y, &wy)
	return nil
}

func addScaled(to *mat.SymDense, k float64, m mat.Matrix) {
	n := to.SymmetricDim()
	for i := range n {
		for j := i; j < n; j++ {
			to.SetSym(i, j, to.At(i, j)+k*(m.At(i, j)+m.At(j, i))/2)
		}
	}
}

// speed is the fitted speed of the pull at its points, gusts included.
func (m *motion) speed(unknowns *mat.VecDense) ([]float64, error) {
	var fit, left, gust mat.VecDense
	fit.MulVec(m.x, unknowns)
	left.SubVec(m.y, &fit)
	if err := m.chol.SolveVecTo(&left, &left); err != nil {
		return nil, err
	}
	gust.MulVec(m.gust, &left)
	fit.AddVec(&fit, &gust)
	out := make([]float64, len(m.load))
	for i := range out {
		out[i] = fit.AtVec(i) - m.load[i]
	}
	return out, nil
}
