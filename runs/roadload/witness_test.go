package roadload_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// witness is an accelerometer in addition to the receiver. It measures the
// change of speed and the slope, so that in a coast-down it measures only the
// drag; but also its own bias, and the pitch of the bike on its springs.
type witness struct {
	density float64 // of its white noise at 20 m/s, growing with the square of the speed, m²/s³
	springs float64 // prior spread of the relative contribution of pitch to changes of speed
	lift    float64 // prior spread of the pitch due to air forces at 30 m/s, rad
}

// The sizes are common practice, except for the noise: that is the noise of a
// simulated phone with engine vibration of 6 m/s² without an anti-alias filter. A
// drag that acts 0.1 m above the centre of gravity, or as much lift at one wheel,
// pitches a bike on its springs by a tenth of a degree or two.
var phoneFelt = witness{density: 0.036, springs: 0.05, lift: 0.1 * math.Pi / 180}

const (
	gridStep = 0.25 // s
	perFix   = 4    // steps
	gravity  = 9.80665
	spacing  = 60.0 // m between the knots of the profile
	knots    = 54
	firstAt  = -900.0 // m
)

// roll is a coast-down on full matrices: the speed on a grid of times, and the
// way from accelerations on the grid to speeds on it.
type roll struct {
	v, s     []float64
	respond  *mat.Dense // speeds by accelerations
	pick     *mat.Dense // fixes of the grid
	rises    *mat.Dense // from fix to fix of the grid
	over     *mat.Dense // integrals from fix to fix
	inverse  *mat.Dense // of the covariance of what is measured
	measured *mat.Dense // the above that belongs to a speed: pick, and rises with a witness
}

func newRoll(b loadtest.Bike, test loadtest.Test, w *witness) roll {
	var r roll
	inertia := b.Mass + b.Rotating
	slowing := func(v float64) float64 {
		return (test.Density/2*b.CdA*v*v + b.Mass*gravity*b.Crr*(1+b.Slope*v)) / inertia
	}
	x := 0.0
	for v := test.From; v > test.To; {
		r.v, r.s = append(r.v, v), append(r.s, x)
		mid := v - gridStep/2*slowing(v)
		x += gridStep * mid
		v -= gridStep * slowing(mid)
	}
	n := len(r.v)
	grow := make([]float64, n)
	damping := func(v float64) float64 { return (test.Density*b.CdA*v + b.Mass*gravity*b.Crr*b.Slope) / inertia }
	for i := 1; i < n; i++ {
		grow[i] = grow[i-1] + gridStep/2*(damping(r.v[i-1])+damping(r.v[i]))
	}
	r.respond = mat.NewDense(n, n, nil)
	for i := range n {
		for j := range i + 1 {
			h := gridStep
			if j == 0 || j == i {
				h /= 2
			}
			if i > 0 {
				r.respond.Set(i, j, h*math.Exp(grow[j]-grow[i]))
			}
		}
	}
	fixes := (n-1)/perFix + 1
	r.pick, r.rises, r.over = mat.NewDense(fixes, n, nil), mat.NewDense(fixes-1, n, nil), mat.NewDense(fixes-1, n, nil)
	for i := range fixes {
		r.pick.Set(i, i*perFix, 1)
		if i == 0 {
			continue
		}
		r.rises.Set(i-1, (i-1)*perFix, -1)
		r.rises.Set(i-1, i*perFix, 1)
		for k := range perFix + 1 {
			h := gridStep
			if k == 0 || k == perFix {
				h /= 2
			}
			r.over.Set(i-1, (i-1)*perFix+k, h)
		}
	}
	r.measured = r.pick
	if w != nil {
		r.measured = stacked(r.pick, r.rises)
	}
	r.weigh(b, test, w, inertia)
	return r
}

// weigh inverts the covariance of gusts, receiver and accelerometer.
func (r *roll) weigh(b loadtest.Bike, test loadtest.Test, w *witness, inertia float64) {
	n := len(r.v)
	gusts := mat.NewDense(n, n, nil)
	for i := range n {
		for j := range n {
			push := test.Density * b.CdA / inertia * r.v[i] * test.Density * b.CdA / inertia * r.v[j]
			gusts.Set(i, j, push*ou(test.Noise.GustSD, gridStep*float64(i-j), test.Noise.GustTime))
		}
	}
	cov := around(r.measured, around(r.respond, gusts))
	fixes, _ := r.pick.Dims()
	for i := range fixes {
		for j := range fixes {
			add := ou(test.Noise.DriftSD, gridStep*perFix*float64(i-j), test.Noise.DriftTime)
			if i == j {
				add += test.Noise.WhiteSD * test.Noise.WhiteSD
			}
			cov.Set(i, j, cov.At(i, j)+add)
		}
	}
	if w != nil {
		for i := range fixes - 1 {
			v := r.v[i*perFix+perFix/2] / 20
			at := fixes + i
			cov.Set(at, at, cov.At(at, at)+w.density*v*v*gridStep*perFix)
		}
	}
	r.inverse = new(mat.Dense)
	if err := r.inverse.Inverse(cov); err != nil {
		panic(err)
	}
}

func ou(sd, t, tau float64) float64 { return sd * sd * math.Exp(-math.Abs(t)/tau) }

func around(a, m *mat.Dense) *mat.Dense {
	var half, whole mat.Dense
	half.Mul(a, m)
	whole.Mul(&half, a.T())
	return &whole
}

func stacked(a, b *mat.Dense) *mat.Dense {
	var out mat.Dense
	out.Stack(a, b)
	return &out
}

// known is the information of one coast-down from a place about CdA, Crr, wind
// and slope of each pair, the profile's knots, and the two of a witness.
func (r *roll) known(b loadtest.Bike, test loadtest.Test, w *witness, pair int, from, dir float64) *mat.Dense {
	n, size := len(r.v), 2+2*test.Pairs+knots+2
	inertia := b.Mass + b.Rotating
	push, slope := mat.NewDense(n, size, nil), mat.NewDense(n, size, nil)
	for i, v := range r.v {
		push.Set(i, 0, -test.Density/2*v*v/inertia)
		push.Set(i, 1, -b.Mass*gravity*(1+b.Slope*v)/inertia)
		push.Set(i, 2+pair, -test.Density*b.CdA*v*dir/inertia)
		slope.Set(i, 2+test.Pairs+pair, dir*gravity)
		at := (from + dir*r.s[i] - firstAt) / spacing
		k := int(at)
		slope.Set(i, 2+2*test.Pairs+k, dir*gravity*(1-at+float64(k)))
		slope.Set(i, 3+2*test.Pairs+k, dir*gravity*(at-float64(k)))
	}
	var held, speed, seen mat.Dense
	held.Scale(-b.Mass/inertia, slope)
	push.Add(push, &held)
	speed.Mul(r.respond, push)
	seen.Mul(r.measured, &speed)
	rows, _ := r.measured.Dims()
	own := mat.NewDense(rows, 2, nil) // the speed at the start and the witness's bias
	start := mat.NewDense(n, 1, nil)
	for i := range n {
		start.Set(i, 0, r.respond.At(i, 0)*2/gridStep)
	}
	start.Set(0, 0, 1)
	var begun mat.Dense
	begun.Mul(r.measured, start)
	for i := range rows {
		own.Set(i, 0, begun.At(i, 0))
	}
	if w != nil {
		r.feel(&seen, own, slope, w)
	}
	return withoutOwn(&seen, own, r.inverse, w != nil)
}

// feel adds the effects other than speed to the rows of the witness.
func (r *roll) feel(seen, own, slope *mat.Dense, w *witness) {
	fixes, _ := r.pick.Dims()
	_, size := slope.Dims()
	var tilt mat.Dense
	tilt.Mul(r.over, slope)
	for i := range fixes - 1 {
		at := fixes + i
		for j := range size {
			seen.Set(at, j, seen.At(at, j)+tilt.At(i, j))
		}
		from, to := r.v[i*perFix], r.v[(i+1)*perFix]
		seen.Set(at, size-2, w.springs*(to-from))
		mid := r.v[i*perFix+perFix/2] / 30
		seen.Set(at, size-1, gravity*w.lift*mid*mid*gridStep*perFix)
		own.Set(at, 1, gridStep*perFix)
	}
}

// withoutOwn is the information of rows about their columns with a run's own
// unknowns eliminated.
func withoutOwn(seen, own, inverse *mat.Dense, both bool) *mat.Dense {
	if !both {
		rows, _ := own.Dims()
		own = mat.DenseCopyOf(own.Slice(0, rows, 0, 1))
	}
	var weighed, cross, square, less, out mat.Dense
	weighed.Mul(seen.T(), inverse)
	cross.Mul(&weighed, own)
	square.Product(own.T(), inverse, own)
	if err := square.Inverse(&square); err != nil {
		panic(err)
	}
	less.Product(&cross, &square, cross.T())
	out.Mul(&weighed, seen)
	out.Sub(&out, &less)
	return &out
}

// fullBound is the bound of CdA, relatively, on full matrices.
func fullBound(test loadtest.Test, w *witness, road float64, starts [][2]float64) float64 {
	b := test.Bike
	r := newRoll(b, test, w)
	size := 2 + 2*test.Pairs + knots + 2
	info := mat.NewDense(size, size, nil)
	for pair, x := range starts {
		info.Add(info, r.known(b, test, w, pair, x[0], 1))
		info.Add(info, r.known(b, test, w, pair, x[1], -1))
	}
	for p := range test.Pairs {
		info.Set(2+p, 2+p, info.At(2+p, 2+p)+1/(test.WindSD*test.WindSD))
		info.Set(2+test.Pairs+p, 2+test.Pairs+p, info.At(2+test.Pairs+p, 2+test.Pairs+p)+1/(0.01*0.01))
	}
	profile := mat.NewDense(knots, knots, nil)
	for i := range knots {
		for j := range knots {
			profile.Set(i, j, ou(road, spacing*float64(i-j), 150))
		}
	}
	if err := profile.Inverse(profile); err != nil {
		panic(err)
	}
	k := 2 + 2*test.Pairs
	part := info.Slice(k, k+knots, k, k+knots).(*mat.Dense)
	part.Add(part, profile)
	info.Set(size-2, size-2, info.At(size-2, size-2)+1)
	info.Set(size-1, size-1, info.At(size-1, size-1)+1)
	if err := info.Inverse(info); err != nil {
		panic(err)
	}
	return math.Sqrt(info.At(0, 0)) / b.CdA
}

// TestThirdWitness calculates with independent formulas, on full matrices, what
// an accelerometer in addition to the receiver could contribute on a rough road
// without a barometer; and compares Bound, which has no accelerometer, with
// them without it.
func TestThirdWitness(t *testing.T) {
	for _, c := range []struct {
		name             string
		scatter, farther float64
		least            float64 // lower limit of the bound with an accelerometer, relative to that without
	}{
		{"starts apart by chance", 250, 0, 0.95},
		{"two ends of one stretch", 30, 0, 0.91},
		{"each pair 200 m farther on", 30, 200, 0.97},
	} {
		for _, bike := range loadtest.Bikes {
			t.Run(c.name+", "+bike.Name, func(t *testing.T) {
				test := loadtest.Default(bike, 1.5)
				test.Length = 1200
				var plain, bound, felt, known, harsh float64
				for seed := range uint64(3) {
					r := rand.New(rand.NewPCG(seed, 90))
					starts := make([][2]float64, test.Pairs)
					for p := range starts {
						on := c.farther * (float64(p) - float64(test.Pairs-1)/2)
						starts[p] = [2]float64{c.scatter*r.NormFloat64() + on, test.Length - c.scatter*r.NormFloat64() - on}
					}
					square := func(x float64) float64 { return x * x / 3 }
					plain += square(fullBound(test, nil, 0.002, starts))
					felt += square(fullBound(test, &phoneFelt, 0.002, starts))
					known += square(fullBound(test, &witness{density: phoneFelt.density, springs: 1e-6, lift: 1e-6}, 0.002, starts))
					harsh += square(fullBound(test, &witness{density: 9 * phoneFelt.density, springs: phoneFelt.springs, lift: phoneFelt.lift}, 0.002, starts))
					bound += square(boundAt(t, test, starts))
				}
				share := func(x float64) float64 { return math.Sqrt(x / plain) }
				t.Logf("CdA %.2f %%; of that with an accelerometer %.3f, in harsh vibration %.3f, its pitch known %.3f",
					100*math.Sqrt(plain), share(felt), share(harsh), share(known))
				if d := share(bound); math.Abs(d-1) > 0.03 {
					t.Errorf("Bound says %.3f of what full matrices say", d)
				}
				if s := share(felt); s < c.least || s > 1 {
					t.Errorf("an accelerometer leaves %.3f of the bound, thought at least %.2f: it may pay to use it", s, c.least)
				}
			})
		}
	}
}

// boundAt is Bound for runs from the same starts.
func boundAt(t *testing.T, test loadtest.Test, starts [][2]float64) float64 {
	t.Helper()
	b := test.Bike
	r := newRoll(b, test, nil)
	var runs []roadload.Run
	for p, both := range starts {
		for w, from := range both {
			run := roadload.Run{ID: len(runs) + 1, Pair: p + 1, Dir: 1 - 2*float64(w), Mass: b.Mass, Inertia: b.Mass + b.Rotating, Density: test.Density}
			for i := 0; i < len(r.v); i += perFix {
				run.T, run.V = append(run.T, float64(200*len(runs))+gridStep*float64(i)), append(run.V, r.v[i])
				run.Pos = append(run.Pos, from+run.Dir*r.s[i])
			}
			runs = append(runs, run)
		}
	}
	opts := loadtest.Known(1.5)
	opts.Noise.RoadSD, opts.Noise.RoadLength = 0.002, 150
	cov, err := roadload.Bound(runs, []roadload.Design{{CdA: b.CdA, Crr: b.Crr}}, opts)
	if err != nil {
		t.Fatal(err)
	}
	return math.Sqrt(cov.At(0, 0)) / b.CdA
}
