package power

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/effect"
	"stillair/sensors/finding"
)

// Pull is one full-throttle pull in one gear. T and V are parallel, Cov is the
// covariance of V.
type Pull struct {
	ID   int
	Dir  float64 // +1 or −1: direction along the road
	Pair int     // pulls with the same number are close in time and share wind and slope; 0: alone

	T   []float64     // s, ascending
	V   []float64     // smoothed speed, m/s
	Cov *mat.SymDense // (m/s)²
}

// Bike holds the mass and road load that convert acceleration to force.
type Bike struct {
	Load         effect.Load // road load, mass, air
	MassSD       float64     // standard uncertainty of the mass, kg
	RotatingMass float64     // wheels, and crank and clutch in this gear, kg
}

// Day holds the standard deviations of wind, gusts and slope.
type Day struct {
	WindSD   float64 // mean wind along the road, standard deviation, m/s
	GustSD   float64 // gusts about it, standard deviation, m/s
	GustTime float64 // their correlation time, s
	GradeSD  float64 // slope of the road, standard deviation, 1
}

// mostPoints limits the size of the matrices: points about a fifth of a second
// apart over a pull, finer than any useful bandwidth.
const mostPoints = 50

func (p Pull) check() error {
	n := len(p.T)
	switch {
	case n < 8:
		return finding.Fail(codePullShort, finding.Count("id", p.ID), finding.Count("points", n))
	case len(p.V) != n || p.Cov == nil || p.Cov.SymmetricDim() != n:
		return finding.Fail(codePullUneven, finding.Count("id", p.ID))
	case p.Dir != 1 && p.Dir != -1:
		return finding.Fail(codePullNoWay, finding.Count("id", p.ID))
	}
	for i := range n {
		if math.IsNaN(p.V[i]) || i > 0 && !(p.T[i] > p.T[i-1]) {
			return finding.Fail(codePullPoint, finding.Count("id", p.ID), finding.Count("point", i))
		}
	}
	if p.V[n-1] < p.V[0]+2 {
		return finding.Fail(codePullGain, finding.Count("id", p.ID), finding.Speed("needed", 2))
	}
	return nil
}

// thinned returns the pull with at most mostPoints points.
func (p Pull) thinned() Pull {
	n := len(p.T)
	if n <= mostPoints {
		return p
	}
	q := p
	q.T, q.V = make([]float64, mostPoints), make([]float64, mostPoints)
	q.Cov = mat.NewSymDense(mostPoints, nil)
	at := func(i int) int { return i * (n - 1) / (mostPoints - 1) }
	for i := range mostPoints {
		q.T[i], q.V[i] = p.T[at(i)], p.V[at(i)]
		for j := i; j < mostPoints; j++ {
			q.Cov.SetSym(i, j, p.Cov.At(at(i), at(j)))
		}
	}
	return q
}

// Check returns an error if a value needed for power is missing.
func (b Bike) Check() error {
	if err := b.Load.Check(); err != nil {
		return err
	}
	if b.RotatingMass < 0 || math.IsNaN(b.RotatingMass) {
		return finding.Fail(codeNoRotating)
	}
	return nil
}

// inertia is the accelerated mass including rotating parts, kg.
func (b Bike) inertia() float64 { return b.Load.Mass + b.RotatingMass }

// windForce is the force for each m/s of head wind, N/(m/s).
func (b Bike) windForce(v float64) float64 { return b.Load.Density * b.Load.CdA.X * v }
