package detect

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// An engine order that sweeps through a multiple of the sampling rate looks
// like an interruption of the thrust, of half a second and of any depth. The
// satellite speeds distinguish the two: a real interruption costs speed
// permanently.
const (
	lookAround  = 4.0  // s on each side of a break over which the speed is smooth without it
	leastSide   = 1.0  // s, minimum of it
	breakReach  = 0.4  // s on each side of the deepest point that belong to the break
	quickestGap = 0.2  // s, minimum interruption of thrust in a gear change
	letGoFor    = 0.4  // s, interruption in an unhurried gear change
	mostEased   = 0.75 // share of the acceleration after a break that may be lost permanently
	usualBend   = 0.15 // m/s³: half of the rate of change of the acceleration at full throttle, standard deviation
	convinced   = 2.0  // required difference between the squared misfits of the two explanations
)

// artefact reports whether an apparent interruption is an artefact of aliasing:
// a smooth curve with a step and a kink at the break is fitted to the speed by
// generalised least squares; it is one if no step fits significantly better
// than the step of a real interruption, and the thrust continues after it.
func (s *series) artefact(from, at, to int) bool {
	level, _ := dropAt(s, at)
	cost := math.Max(s.missing(at, level), quickestGap*level)
	lost, eased, ok := s.stepAt(from, at, to)
	if !ok || level < pushing || eased.x > mostEased*level {
		return false
	}
	return square((cost-lost.x)/lost.sd)-square(lost.x/lost.sd) > convinced
}

// costs reports whether an interruption fits the speed significantly better
// than no step, or whether that cannot be decided.
func (s *series) costs(from, at, to int) bool {
	level, _ := dropAt(s, at)
	cost := math.Max(s.missing(at, level), letGoFor*level)
	lost, _, ok := s.stepAt(from, at, to)
	return !ok || square(lost.x/lost.sd)-square((cost-lost.x)/lost.sd) > convinced
}

// lasting are the breaks of a push that are real. One close to another counts
// as a break: a rider who goes through the gears makes several, with too little
// between them to fit.
func (s *series) lasting(p push, dips []int) []int {
	var out []int
	for k, at := range dips {
		near := k > 0 && s.seconds(dips[k-1], at) < lookAround || k+1 < len(dips) && s.seconds(at, dips[k+1]) < lookAround
		if near || !s.artefact(p.from, at, p.to) {
			out = append(out, at)
		}
	}
	return out
}

func square(x float64) float64 { return x * x }

// missing is the speed that a break seems to have cost, m/s.
func (s *series) missing(at int, level float64) float64 {
	reach := int(breakReach / step)
	var sum float64
	for i := max(0, at-reach); i <= min(at+reach, s.len()-1); i++ {
		sum += (level - s.quick[i]) * step
	}
	return sum
}

// estimate is a number with its standard uncertainty.
type estimate struct{ x, sd float64 }

// stepAt is the fall of the speed at a grid point, m/s, and of the acceleration
// after it, m/s².
func (s *series) stepAt(from, at, to int) (lost, eased estimate, ok bool) {
	around, gap := int(lookAround/step), int(breakReach/step)
	from, to = max(from, at-around), min(to, at+around, s.len()-1)
	if s.errs == nil || s.seconds(from, at) < leastSide || s.seconds(at, to) < leastSide {
		return lost, eased, false
	}
	var t, v []float64
	var rows [][]float64
	for i := from; i <= to; i += 2 {
		if i > at-gap && i < at+gap {
			continue
		}
		u, behind := s.seconds(at, i), 0.0
		if i > at {
			behind = -1
		}
		t, v = append(t, s.time(i)), append(v, s.v[i])
		rows = append(rows, []float64{behind, behind * u, 1, u, u * u})
	}
	x, cov, ok := leastSquares(rows, v, s.errs.SpeedCov(t), []float64{0, 0, 0, 0, 1 / square(usualBend)})
	if !ok {
		return lost, eased, false
	}
	return estimate{x.AtVec(0), math.Sqrt(cov.At(0, 0))}, estimate{x.AtVec(1), math.Sqrt(cov.At(1, 1))}, true
}

// leastSquares is the generalised least-squares (GLS) fit of the rows to y with
// covariance cov, and the covariance of its coefficients. Each coefficient has
// a prior of mean zero with a precision.
func leastSquares(rows [][]float64, y []float64, cov [][]float64, precision []float64) (*mat.VecDense, *mat.Dense, bool) {
	const least = 1e-4 // m²/s²: error of a smooth curve
	n := len(y)
	design, c := mat.NewDense(n, len(rows[0]), nil), mat.NewSymDense(n, nil)
	for i := range n {
		design.SetRow(i, rows[i])
		for j := i; j < n; j++ {
			c.SetSym(i, j, cov[i][j])
		}
		c.SetSym(i, i, cov[i][i]+least)
	}
	var chol mat.Cholesky
	var weighed, info, inverse mat.Dense
	var pull, x mat.VecDense
	if !chol.Factorize(c) || chol.SolveTo(&weighed, design) != nil {
		return nil, nil, false
	}
	info.Mul(design.T(), &weighed)
	for i, p := range precision {
		info.Set(i, i, info.At(i, i)+p)
	}
	if inverse.Inverse(&info) != nil {
		return nil, nil, false
	}
	pull.MulVec(weighed.T(), mat.NewVecDense(n, y))
	x.MulVec(&inverse, &pull)
	return &x, &inverse, true
}
