package runs

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/usual"
)

// At full throttle in one gear the thrust follows the torque curve, which is
// smooth; a hand that holds a throttle part open lets it waver within seconds, and a
// change of gear interrupts it. So the thrust of a push is fitted by a cubic in
// speed (least squares), and what remains beyond gusts and what the noise of the
// recording may come to tells that it was not full throttle in one gear.
//
// The limits were set on the rides of package foreign of the seeds 6101 to 6225 and are
// judged on its others, and on the rides of package sim.
const (
	waverOver    = 1.0  // s over which the thrust is taken, both sides together
	waverDegree  = 3    // a torque curve with a hump and a dip
	waverPoints  = 12   // that a push needs at least
	waverSure    = 2.0  // standard deviations of what the noise of the recording may come to
	waverGusts   = 1.0  // m/s, of the wind along the road within a push: a fresh day (common practice)
	steadyThrust = 0.04 // part of its mean by which thrust may waver: torque curves with dips are not cubic
)

// wavers reports whether the thrust of a push varies more than full throttle in one
// gear explains.
func (d drive) wavers() bool {
	v, thrust := d.thrusts()
	n := len(v)
	if n < waverPoints {
		return false
	}
	x := mat.NewDense(n, waverDegree+1, nil)
	middle, half := (v[0]+v[n-1])/2, (v[n-1]-v[0])/2
	for i, at := range v {
		for k := range waverDegree + 1 {
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
		g := waverGusts * d.drag() * at
		gusts += g * g / float64(n)
	}
	seconds := d.t[len(d.t)-1] - d.t[0]
	unsure := waverSure * math.Sqrt(2/math.Max(1, seconds/waverOver-waverDegree-1)) // of a sum of squares
	left -= gusts + d.doubt/waverOver*(1+unsure)
	return left > 0 && math.Sqrt(left) > steadyThrust*mean
}

// thrusts are the speeds of a push and its thrust there, m/s and m/s², each from
// the speeds at both ends of a short time.
func (d drive) thrusts() (v, thrust []float64) {
	const side = int(waverOver / driveStep / 2)
	for i := side; i < len(d.v)-side; i++ {
		a := (d.v[i+side] - d.v[i-side]) / (d.t[i+side] - d.t[i-side])
		v = append(v, d.v[i])
		thrust = append(thrust, (1+usual.RotatingShare)*a+d.drag()/2*d.v[i]*d.v[i]+9.8*usual.Crr)
	}
	return v, thrust
}
