package detect

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// rolling is a trajectory dv/dt = −(c0 + c2·v²) fitted to a piece.
type rolling struct{ c0, c2 float64 }

// fitRolling fits the speed itself: integrated, the equation of free rolling
// is linear in its coefficients,
//
//	v(t) = v₀ − c₀·t − c₂·∫v² dt
func fitRolling(s *series, p piece) rolling {
	n := p.to - p.from + 1
	design := mat.NewDense(n, 3, nil)
	speed := mat.NewVecDense(n, nil)
	square := 0.0
	for k := range n {
		v := s.v[p.from+k]
		if k > 0 {
			u := s.v[p.from+k-1]
			square += step * (u*u + v*v) / 2
		}
		design.SetRow(k, []float64{1, -float64(k) * step, -square})
		speed.SetVec(k, v)
	}
	var x mat.VecDense
	if err := x.SolveVec(design, speed); err != nil {
		return rolling{math.NaN(), math.NaN()}
	}
	return rolling{c0: x.AtVec(1), c2: x.AtVec(2)}
}

// against says why a fitted trajectory cannot be free rolling, or "".
func (r rolling) against(b bounds) string {
	switch {
	case math.IsNaN(r.c0):
		return "its speed is no smooth curve"
	case r.c0 > b.c0High:
		return fmt.Sprintf("it slowed as if rolling resistance were %.2f: a gear was left in, or the brake dragged", r.c0/gravity)
	case r.c0 < b.c0Low:
		return "it slowed too little at low speed: the road falls, or the throttle was not closed"
	case r.c2 > b.c2High:
		return "it slowed too much at high speed for air drag: the brake was on, or the engine held it back"
	case r.c2 < b.c2Low:
		return "it slowed too little at high speed for air drag: the throttle was not closed"
	}
	return ""
}

// Limits of a straight road.
const (
	sideways = 1.5  // acceleration to the side that costs speed, m/s²
	heading  = 0.45 // change of direction over a run, rad
)

// bends says whether the road bends too much for the piece to count.
func bends(s *series, p piece) []string {
	turned := 0.0
	hard := 0
	for i := p.from; i <= p.to; i++ {
		if math.IsNaN(s.turn[i]) {
			continue
		}
		turned += s.turn[i] * step
		if math.Abs(s.turn[i]*s.v[i]) > sideways {
			hard++
		}
	}
	if math.Abs(turned) > heading || hard > 10 {
		return []string{fmt.Sprintf("the road bends, by %.0f° in all", math.Abs(turned)*180/math.Pi)}
	}
	return nil
}
