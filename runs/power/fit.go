package power

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// fit is the force over speed fitted to a number of pulls.
type fit struct {
	layout
	motions []*motion
	day     Day
	bend    float64 // scale of the curvature, natural logarithm
	kicks   float64 // strength of the noise in excess of the smoother's, (m/s)²/s

	misfit float64       // χ² of the pulls and the priors
	mean   *mat.VecDense // of the unknowns
	chol   mat.Cholesky  // of their precision
}

// rounds is the number of Gauss-Newton iterations.
const rounds = 3

// newFit fits the pulls together.
func newFit(pulls []Pull, bike Bike, day Day) (*fit, error) {
	f := &fit{layout: newLayout(pulls, bike), day: day, bend: usualBend}
	speeds := make([][]float64, len(pulls))
	for i, p := range pulls {
		speeds[i] = p.V
	}
	for round := range rounds {
		f.motions = f.motions[:0]
		for i := range pulls {
			m, err := f.newMotion(i, speeds[i], bike, day)
			if err != nil {
				return nil, err
			}
			f.motions = append(f.motions, m)
		}
		if round == rounds-1 {
			if err := f.learnKicks(); err != nil {
				return nil, err
			}
		}
		if _, err := f.solve(); err != nil {
			return nil, err
		}
		for i, m := range f.motions {
			var err error
			if speeds[i], err = m.speed(f.mean); err != nil {
				return nil, err
			}
		}
	}
	return f, nil
}

// prior is the prior precision of the unknowns, and the precision times their
// prior mean. The first speeds and the straight line under the curvature have
// no prior.
func (f *fit) prior() (*mat.SymDense, *mat.VecDense) {
	precision, pull := mat.NewSymDense(f.size(), nil), mat.NewVecDense(f.size(), nil)
	second := [3]float64{1, -2, 1}
	stiff := f.stiffness(f.bend)
	for k := 0; k+2 < f.knots; k++ {
		for a, x := range second {
			for b := a; b < 3; b++ {
				precision.SetSym(k+a, k+b, precision.At(k+a, k+b)+stiff*x*second[b])
			}
		}
	}
	h := f.humpAt()
	precision.SetSym(h, h, 1/square(humpSD))
	pull.SetVec(h, humpMean/square(humpSD))
	const calmest, flattest = 1e-3, 1e-6 // m/s and 1: to avoid a division by zero
	for pair := range f.pairs {
		w := f.windAt(pair)
		precision.SetSym(w, w, 1/square(math.Max(f.day.WindSD, calmest)))
		precision.SetSym(w+1, w+1, 1/square(math.Max(f.day.GradeSD, flattest)))
	}
	for pull := range f.pulls {
		at := f.startAt(pull)
		precision.SetSym(at, at, 1e-6)
	}
	return precision, pull
}

// solve computes the unknowns. It returns −2 log of the restricted likelihood,
// up to terms that do not depend on the curvature.
func (f *fit) solve() (loss float64, err error) {
	precision, pull := f.prior()
	var rest, logDet float64
	for _, m := range f.motions {
		precision.AddSym(precision, m.info)
		pull.AddVec(pull, m.pull)
		rest, logDet = rest+m.rest, logDet+m.chol.LogDet()
	}
	if !f.chol.Factorize(precision) {
		return 0, errNotDefinite
	}
	f.mean = mat.NewVecDense(f.size(), nil)
	if err := f.chol.SolveVecTo(f.mean, pull); err != nil {
		return 0, err
	}
	f.misfit = rest - mat.Dot(f.mean, pull)
	return f.chol.LogDet() - float64(f.knots-2)*math.Log(f.stiffness(f.bend)) + logDet + f.misfit, nil
}

// learn estimates the strength of the curvature by restricted maximum
// likelihood (REML) with a weak prior: a coarse search in whole steps of the
// logarithm, then a finer one about the best. It returns the loss of solve at
// the best.
func (f *fit) learn() (least float64) {
	best, misfit := usualBend, 0.0
	least = math.Inf(1)
	centre, reach := usualBend, 6.0
	for _, step := range []float64{1, 0.25} {
		for b := centre - reach; b <= centre+reach; b += step {
			f.bend = b
			loss, err := f.solve()
			if loss += square((b - usualBend) / bendSD); err == nil && loss < least {
				best, least, misfit = b, loss, f.misfit
			}
		}
		centre, reach = best, 0.75
	}
	f.bend, f.misfit = best, misfit
	return least
}

// White noise on the acceleration that the smoother does not know of: the
// weakest tried, (m/s)²/s, which moves the speed by 1 cm/s in a second; the
// strongest, by 0.3 m/s; the factor from one to the next; and the decrease of
// −2 log likelihood required by a likelihood-ratio test at 5 %.
const weakestKick, strongestKick, kickFactor, kickProof = 1e-4, 0.1, 4, 3.8

// learnKicks estimates, together with the curvature and by the same likelihood,
// the noise of the speed beyond the smoother's covariance. A phone in a soft
// bag hides aliased engine orders from the smoother, but not their effect. If
// the residuals are no larger than the smoother's covariance, nothing is
// estimated.
func (f *fit) learnKicks() error {
	least, bend, kicks := f.learn(), f.bend, 0.0
	points := 0.0
	for _, p := range f.pulls {
		points += float64(len(p.T))
	}
	if f.misfit < points+2*math.Sqrt(2*points) {
		return nil
	}
	for q := weakestKick; q <= strongestKick; q *= kickFactor {
		if err := f.weigh(q); err != nil {
			return err
		}
		loss := f.learn()
		if loss > least-kickProof {
			break
		}
		least, bend, kicks = loss, f.bend, q
	}
	f.bend = bend
	return f.weigh(kicks)
}

// weigh computes the information of all pulls for a given strength of kicks.
func (f *fit) weigh(kicks float64) error {
	f.kicks = kicks
	for i, m := range f.motions {
		if err := m.weigh(f.pulls[i], kicks); err != nil {
			return err
		}
	}
	return nil
}

// power is the power at the speeds of a grid, W.
func (f *fit) power(grid []float64) []float64 {
	var force mat.VecDense
	force.MulVec(f.reader(grid), f.mean)
	out := make([]float64, len(grid))
	for i, v := range grid {
		out[i] = v * force.AtVec(i)
	}
	return out
}

// covariance is the covariance of the power at the speeds of a grid, W², from
// the speed's errors, gusts, wind and slope.
func (f *fit) covariance(grid []float64) (*mat.SymDense, error) {
	r := f.reader(grid)
	for i, v := range grid {
		row := r.RawRowView(i)
		for j := range row {
			row[j] *= v
		}
	}
	var half, whole mat.Dense
	if err := f.chol.SolveTo(&half, r.T()); err != nil {
		return nil, err
	}
	whole.Mul(r, &half)
	cov := mat.NewSymDense(len(grid), nil)
	addScaled(cov, 1, &whole)
	return cov, nil
}

// bandwidth is the −3 dB frequency of the fit for a ripple of the force in the
// middle of the pulls, Hz: the lowest frequency over speed that is attenuated
// to 0.707, times the acceleration there.
func (f *fit) bandwidth(grid []float64, bike Bike) float64 {
	mid := grid[len(grid)/2]
	r := f.reader([]float64{mid})
	var weight, gain mat.VecDense
	if f.chol.SolveVecTo(&weight, r.RowView(0)) != nil {
		return math.NaN()
	}
	for i, m := range f.motions {
		var part mat.VecDense
		part.MulVec(m.info, &weight)
		if i == 0 {
			gain.CloneFromVec(&part)
			continue
		}
		gain.AddVec(&gain, &part)
	}
	passed := func(perMPS float64) float64 {
		var re, im float64
		for k := range f.knots {
			sin, cos := math.Sincos(2 * math.Pi * perMPS * (f.speed(k) - mid))
			re += gain.AtVec(k) * cos
			im += gain.AtVec(k) * sin
		}
		return math.Hypot(re, im) / f.scale
	}
	const step, most = 0.002, 1.0 // 1/(m/s)
	at := step
	for at < most && passed(at) >= math.Sqrt2/2 {
		at += step
	}
	force := f.power([]float64{mid})[0] / mid
	return at * math.Max(0, force-bike.Load.Force(mid).X) / bike.inertia()
}
