package runs

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// At full throttle in one gear the thrust follows the torque curve, which is smooth. A
// throttle held part open by hand varies within seconds, and a gear change interrupts
// the thrust. So a cubic in speed is fitted to the thrust of a push by least squares; a
// residual larger than gusts and the noise of the recording can explain shows that
// the push was not at full throttle in one gear.
//
// The limits were chosen on the rides of package foreign with seeds 6101 to 6225, and
// are judged on its other seeds and on the rides of package sim.
const (
	thrustOver   = 1.0  // s over which the thrust is taken, both sides together
	thrustDegree = 3    // a torque curve with a hump and a dip
	thrustPoints = 12   // that a push needs at least
	thrustSure   = 2.0  // standard deviations of the variance that the noise of the recording causes
	thrustGusts  = 1.0  // m/s, standard deviation of the wind along the road within a push: a windy day (common practice)
	steadyThrust = 0.04 // part of its mean by which full throttle may depart from the cubic: torque curves have dips
)

// unsteady reports whether the thrust of a push varies more than full throttle in
// one gear explains.
func (d drive) unsteady() bool {
	_, v, thrust := d.thrusts(thrustOver)
	n := len(v)
	if n < thrustPoints {
		return false
	}
	x := mat.NewDense(n, thrustDegree+1, nil)
	middle, half := (v[0]+v[n-1])/2, (v[n-1]-v[0])/2
	for i, at := range v {
		for k := range thrustDegree + 1 {
			x.Set(i, k, math.Pow((at-middle)/half, float64(k)))
		}
	}
	var fit, rest mat.VecDense
	y := mat.NewVecDense(n, thrust)
	if err := fit.SolveVec(x, y); err != nil {
		return false
	}
	rest.MulVec(x, &fit)
	rest.SubVec(y, &rest)
	left, mean := mat.Dot(&rest, &rest)/float64(n), mat.Sum(y)/float64(n)
	gusts := 0.0
	for _, at := range v {
		g := thrustGusts * d.drag() * at
		gusts += g * g / float64(n)
	}
	seconds := d.t[len(d.t)-1] - d.t[0]
	unsure := thrustSure * math.Sqrt(2/math.Max(1, seconds/thrustOver-thrustDegree-1)) // of a sum of squares
	left -= gusts + d.doubt/thrustOver*(1+unsure)
	return left > 0 && math.Sqrt(left) > steadyThrust*mean
}

// thrusts are times within a push with the speed and the thrust per mass at each, s,
// m/s and m/s², by central differences over so many seconds.
func (d drive) thrusts(over float64) (t, v, thrust []float64) {
	side := int(math.Round(over / driveStep / 2))
	for i := side; i < len(d.v)-side; i++ {
		a := (d.v[i+side] - d.v[i-side]) / (d.t[i+side] - d.t[i-side])
		t, v, thrust = append(t, d.t[i]), append(v, d.v[i]), append(thrust, d.push(d.v[i], a))
	}
	return t, v, thrust
}
