package detect

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/usual"
)

// Priors for the day of a ride, as mean and standard deviation; those for bike,
// tyres and roads are in package usual. Motoring an engine with the throttle
// shut takes 1 to 2 bar of mean pressure, about half as much again at its limit
// as at idle (Heywood, Internal Combustion Engine Fundamentals, from memory):
// in the higher gears that is 0.25 to 1 m/s². The rest is common practice.
const (
	dayWindSD          = 2.5         // of a ride, m/s
	ownWindSD          = 1.2         // of one run, m/s
	gustSD, gustTime   = 0.6, 8.0    // m/s, s
	speedSD            = 0.08        // of the speed at one time, m/s
	plainSD            = 0.02        // model error, m/s²
	held, heldSD       = 0.6, 0.22   // of engine drag or a brake, m/s² at heldAt: rarely close to zero
	heldOwnSD          = 0.12        // from run to run
	heldGrowth, heldAt = 0.012, 20.0 // s/m, m/s
)

// Indices of the unknowns common to all decelerations of a ride.
const (
	ofRoll = iota
	ofAir
	ofSlopeEast
	ofSlopeNorth
	ofWindEast
	ofWindNorth
	ofHeld
	unknowns
)

// part is a third of a deceleration: its mean deceleration and speed.
type part struct{ decel, speed, square, seconds float64 }

// slowed is a deceleration as used in the joint classification.
type slowed struct {
	parts       []part
	east, north float64 // of the course; zero if it is not known
	felt        feeling // of its vibration
}

// evidence is the likelihood of the unknowns from one deceleration under one of
// the two explanations: a Gaussian in information form.
type evidence struct {
	info  *mat.SymDense
	pull  *mat.VecDense
	value float64 // of −2·log likelihood, with the unknowns at zero
}

// evidence linearises a deceleration about the usual air drag, with its own
// effects (local slope, wind, force of its engine) integrated out.
func (r slowed) evidence(b bounds, in bool) evidence {
	n := len(r.parts)
	rows, y, cov := mat.NewDense(n, unknowns, nil), mat.NewVecDense(n, nil), mat.NewSymDense(n, nil)
	growth := make([]float64, n)
	for k, p := range r.parts {
		air := 2 * b.c2 * p.speed
		row := []float64{1, p.square, gravity * r.east, gravity * r.north, air * r.east, air * r.north, 0}
		if in {
			growth[k] = 1 + heldGrowth*(p.speed-heldAt)
			row[ofHeld] = growth[k]
		}
		rows.SetRow(k, row)
		y.SetVec(k, p.decel)
		cov.SetSym(k, k, square(plainSD)+2*square(speedSD/p.seconds)+square(air*gustSD)*2*gustTime/(p.seconds+2*gustTime))
	}
	for k, p := range r.parts {
		for j := k; j < n; j++ {
			air := square(2*b.c2*ownWindSD) * p.speed * r.parts[j].speed
			cov.SetSym(k, j, cov.At(k, j)+square(gravity*usual.PlaceGrade)+air+square(heldOwnSD)*growth[k]*growth[j])
		}
	}
	none := evidence{mat.NewSymDense(unknowns, nil), mat.NewVecDense(unknowns, nil), 0}
	var chol mat.Cholesky
	var weighed, info mat.Dense
	var wy, pull mat.VecDense
	if !chol.Factorize(cov) || chol.SolveTo(&weighed, rows) != nil || chol.SolveVecTo(&wy, y) != nil {
		return none // a speed is NaN, and gives no evidence
	}
	info.Mul(rows.T(), &weighed)
	pull.MulVec(rows.T(), &wy)
	sym := mat.NewSymDense(unknowns, nil)
	for i := range unknowns {
		for j := i; j < unknowns; j++ {
			sym.SetSym(i, j, (info.At(i, j)+info.At(j, i))/2)
		}
	}
	return evidence{sym, &pull, mat.Dot(y, &wy) + chol.LogDet()}
}

// prior is the prior of the unknowns in the same form.
func (b bounds) prior() evidence {
	mean := [unknowns]float64{ofRoll: gravity * usual.Crr / inertiaShare, ofAir: b.c2, ofHeld: held}
	sd := [unknowns]float64{gravity * usual.CrrSD / inertiaShare, b.c2 * math.Hypot(usual.LadenCdASD/usual.CdA, b.unsure),
		usual.RideGrade, usual.RideGrade, dayWindSD, dayWindSD, heldSD}
	e := evidence{mat.NewSymDense(unknowns, nil), mat.NewVecDense(unknowns, nil), 0}
	for i := range unknowns {
		p := 1 / square(sd[i])
		e.info.SetSym(i, i, p)
		e.pull.SetVec(i, p*mean[i])
		e.value += p*square(mean[i]) - math.Log(p)
	}
	return e
}

// logMarginal is the logarithm of the marginal likelihood, with the unknowns
// integrated out.
func logMarginal(all []evidence) float64 {
	info, pull, value := mat.NewSymDense(unknowns, nil), mat.NewVecDense(unknowns, nil), 0.0
	for _, e := range all {
		info.AddSym(info, e.info)
		pull.AddVec(pull, e.pull)
		value += e.value
	}
	var chol mat.Cholesky
	var x mat.VecDense
	if !chol.Factorize(info) || chol.SolveVecTo(&x, pull) != nil {
		return math.Inf(-1)
	}
	return -(value + chol.LogDet() - mat.Dot(pull, &x)) / 2
}

// Prior of the explanations. Riders who do coast-downs forget the clutch or
// drag a brake now and then; otherwise a deceleration that only looks like one
// nearly always has a gear in (common practice).
const (
	meansIt              = 0.85
	slipsOf, habitOfGear = 0.06, 0.9
)

// logPrior is the log prior probability that exactly these decelerations have a
// gear in.
func logPrior(in []bool) float64 {
	k := 0.0
	for _, x := range in {
		if x {
			k++
		}
	}
	free := float64(len(in)) - k
	of := func(p float64) float64 { return k*math.Log(p) + free*math.Log(1-p) }
	a, b := math.Log(meansIt)+of(slipsOf), math.Log(1-meansIt)+of(habitOfGear)
	return math.Max(a, b) + math.Log1p(math.Exp(-math.Abs(a-b)))
}

// chances are the posterior probabilities, for each deceleration, that a gear
// was in or a brake on, from all decelerations of the ride together. Of the 2ⁿ
// explanations those visited by a greedy search are summed, which changes one
// deceleration at a time, once starting from none held back and once from all:
// the others are much less likely.
func chances(b bounds, all []slowed) []float64 {
	w := newWeigher(b, all)
	none, every := make([]bool, len(all)), make([]bool, len(all))
	for i := range every {
		every[i] = true
	}
	w.greedy(none)
	w.greedy(every)
	return w.shares()
}

// weigher evaluates the posterior weights of explanations of a ride.
type weigher struct {
	before evidence
	of     [][2]evidence // free, held back
	felt   []feeling
	seen   map[string]float64 // logarithm of the weight of an explanation
}

func newWeigher(b bounds, all []slowed) *weigher {
	w := &weigher{before: b.prior(), seen: map[string]float64{}}
	for _, r := range all {
		w.of, w.felt = append(w.of, [2]evidence{r.evidence(b, false), r.evidence(b, true)}), append(w.felt, r.felt)
	}
	return w
}

// greedy is a greedy search: it changes one deceleration at a time for as long
// as that raises the weight.
func (w *weigher) greedy(in []bool) {
	top := w.weigh(in)
	for {
		best := -1
		for i := range in {
			in[i] = !in[i]
			if x := w.weigh(in); x > top {
				top, best = x, i
			}
			in[i] = !in[i]
		}
		if best < 0 {
			return
		}
		in[best] = !in[best]
	}
}

// weigh is the log posterior weight of an explanation.
func (w *weigher) weigh(in []bool) float64 {
	key := make([]byte, len(in))
	all := []evidence{w.before}
	sum := logPrior(in)
	for i, x := range in {
		key[i] = '0'
		e := w.of[i][0]
		if x {
			key[i], e = '1', w.of[i][1]
		}
		all = append(all, e)
	}
	if x, ok := w.seen[string(key)]; ok {
		return x
	}
	sum += logMarginal(all)
	sum += logFelt(w.felt, in)
	w.seen[string(key)] = sum
	return sum
}

// shares sums the weights for each deceleration.
func (w *weigher) shares() []float64 {
	top := math.Inf(-1)
	for _, x := range w.seen {
		top = math.Max(top, x)
	}
	out, whole := make([]float64, len(w.of)), 0.0
	for key, x := range w.seen {
		p := math.Exp(x - top)
		whole += p
		for i := range out {
			if key[i] == '1' {
				out[i] += p
			}
		}
	}
	for i := range out {
		out[i] /= whole
	}
	return out
}
