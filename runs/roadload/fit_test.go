package roadload_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// ridden are the runs of five pairs of the naked bike.
func ridden(seed uint64) []roadload.Run {
	return loadtest.Default(loadtest.Bikes[0], 1.5).Ride(rand.New(rand.NewPCG(seed, 99)))
}

func fit(t *testing.T, runs []roadload.Run, opts roadload.Options) *roadload.Estimate {
	t.Helper()
	e, err := roadload.Fit(runs, opts)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// near reports whether a and b differ by at most a share of scale.
func near(a, b, share, scale float64) bool { return math.Abs(a-b) <= share*math.Abs(scale) }

// TestWhatIsMissing: input that cannot be fitted is refused with the reason.
func TestWhatIsMissing(t *testing.T) {
	change := func(f func(r *roadload.Run)) []roadload.Run {
		runs := ridden(1)
		f(&runs[2])
		return runs
	}
	var oneWay []roadload.Run
	for _, r := range ridden(1) {
		if r.Dir > 0 {
			oneWay = append(oneWay, r)
		}
	}
	short := ridden(1)
	for i := range short {
		short[i].T, short[i].V, short[i].Pos = short[i].T[:5], short[i].V[:5], nil
		for j := range short[i].V {
			short[i].V[j] = 30 - 0.3*float64(j)
		}
	}
	noWind := roadload.DefaultOptions(0)
	for _, c := range []struct {
		name string
		runs []roadload.Run
		opts roadload.Options
		want error
	}{
		{"nothing", nil, loadtest.Known(1.5), roadload.ErrNoRuns},
		{"one direction", oneWay, loadtest.Known(1.5), roadload.ErrOneDirection},
		{"mass zero", change(func(r *roadload.Run) { r.Mass = 0 }), loadtest.Known(1.5), roadload.ErrMass},
		{"mass not a number", change(func(r *roadload.Run) { r.Mass = math.NaN() }), loadtest.Known(1.5), roadload.ErrMass},
		{"inertia below mass", change(func(r *roadload.Run) { r.Inertia = r.Mass - 1 }), loadtest.Known(1.5), roadload.ErrMass},
		{"no air", change(func(r *roadload.Run) { r.Density = 0 }), loadtest.Known(1.5), roadload.ErrDensity},
		{"one fix a run", keepFixes(1), loadtest.Known(1.5), roadload.ErrSamples},
		{"fixes so close that they count as one", bunched(), loadtest.Known(1.5), roadload.ErrSamples},
		{"no more changes of speed than figures", keepFixes(2)[:2], loadtest.Known(1.5), roadload.ErrSamples},
		{"slices of different length", change(func(r *roadload.Run) { r.V = r.V[1:] }), loadtest.Known(1.5), roadload.ErrSamples},
		{"a speed that is no number", change(func(r *roadload.Run) { r.V[4] = math.NaN() }), loadtest.Known(1.5), roadload.ErrSamples},
		{"time runs backwards", change(func(r *roadload.Run) { r.T[4] = r.T[2] }), loadtest.Known(1.5), roadload.ErrSamples},
		{"too small a range of speed", short, loadtest.Known(1.5), roadload.ErrSpeedRange},
		{"no wind expected", ridden(1), noWind, roadload.ErrOptions},
	} {
		t.Run(c.name, func(t *testing.T) {
			if _, err := roadload.Fit(c.runs, c.opts); !errors.Is(err, c.want) {
				t.Errorf("error %v, want %v", err, c.want)
			}
		})
	}
}

// keepFixes are runs with only the first fixes.
func keepFixes(n int) []roadload.Run {
	runs := ridden(1)
	for i := range runs {
		runs[i].T, runs[i].V, runs[i].Pos = runs[i].T[:n], runs[i].V[:n], nil
	}
	return runs
}

// bunched are runs with groups of four fixes a tenth of a second apart.
func bunched() []roadload.Run {
	runs := keepFixes(4)
	for i := range runs {
		for j := range runs[i].T {
			runs[i].T[j] = runs[i].T[0] + 0.1*float64(j)
		}
	}
	return runs
}

// TestBareRun: a run of one fix gives no information. It is left out with a
// reason, and the others give the same result as without it; its partner counts
// as a single run.
func TestBareRun(t *testing.T) {
	runs := ridden(2)
	without := append(append([]roadload.Run(nil), runs[:9]...), runs[10:]...)
	want := fit(t, without, loadtest.Known(1.5)).Loads[0]
	runs[9].T, runs[9].V, runs[9].Pos = runs[9].T[:1], runs[9].V[:1], nil
	e := fit(t, runs, loadtest.Known(1.5))
	if got := e.Loads[0]; got != want || got.Pairs != 4 {
		t.Errorf("road load %+v, without the run %+v", got, want)
	}
	for _, r := range e.Runs {
		if left := r.ID == runs[9].ID; left == r.Reason.IsZero() {
			t.Errorf("run %d: reason %v", r.ID, r.Reason)
		}
	}
}

// TestSinglePairAndLoneRuns: a single pair gives an answer, with wide intervals, and
// runs without a partner do no harm.
func TestSinglePairAndLoneRuns(t *testing.T) {
	all := fit(t, ridden(2), loadtest.Known(1.5)).Loads[0]
	pair := fit(t, ridden(2)[:2], loadtest.Known(1.5)).Loads[0]
	if ratio := pair.CdA.SE / all.CdA.SE; ratio < 1.5 || ratio > 3.2 {
		t.Errorf("one pair has %.2f times the standard error of five; √5 is expected", ratio)
	}
	if pair.Pairs != 1 || all.Pairs != 5 {
		t.Errorf("pairs %d and %d, want 1 and 5", pair.Pairs, all.Pairs)
	}
	runs := ridden(2)
	runs[9].Pair = 0
	lone := fit(t, runs, loadtest.Known(1.5)).Loads[0]
	if lone.Pairs != 4 || lone.CdA.SE < all.CdA.SE*0.9 {
		t.Errorf("with a lone run: %d pairs, standard error %v against %v", lone.Pairs, lone.CdA.SE, all.CdA.SE)
	}
}

// TestScaleUncertainty: deceleration determines CdA·ρ over mass, so a relative
// uncertainty of mass or density is one of CdA only.
func TestScaleUncertainty(t *testing.T) {
	runs := ridden(3)
	plain := fit(t, runs, loadtest.Known(1.5)).Loads[0]
	opts := loadtest.Known(1.5)
	opts.MassSD, opts.DensitySD = 0.03, 0.04
	wide := fit(t, runs, opts).Loads[0]
	want := math.Hypot(plain.CdA.SE, 0.05*plain.CdA.X)
	if !near(wide.CdA.SE, want, 1e-3, want) || wide.Crr.SE != plain.Crr.SE {
		t.Errorf("standard errors %v and %v, want %v and %v", wide.CdA.SE, wide.Crr.SE, want, plain.Crr.SE)
	}
	if wide.DoF <= plain.DoF {
		t.Errorf("degrees of freedom %v: a known part of the uncertainty must raise %v", wide.DoF, plain.DoF)
	}
	for i := range runs {
		runs[i].Mass, runs[i].Inertia = runs[i].Mass*1.02, runs[i].Inertia*1.02
	}
	heavy := fit(t, runs, loadtest.Known(1.5)).Loads[0]
	if !near(heavy.CdA.X, 1.02*plain.CdA.X, 1e-3, plain.CdA.X) || !near(heavy.Crr.X, plain.Crr.X, 1e-3, plain.Crr.X) {
		t.Errorf("2 %% more mass: CdA %v Crr %v, want 2 %% more than %v, and %v", heavy.CdA.X, heavy.Crr.X, plain.CdA.X, plain.Crr.X)
	}
}

// TestLag: a constant lag of all fixes changes nothing but the starting speed,
// and a receiver that smooths (first order, 0.5 s) changes little once four
// lags are left out at the start.
func TestLag(t *testing.T) {
	test := loadtest.Default(loadtest.Bikes[0], 1.5)
	test.Rate = 10
	runs := test.Ride(rand.New(rand.NewPCG(5, 5)))
	const lag, trim = 0.5, 20
	whole, smoothed := make([]roadload.Run, len(runs)), make([]roadload.Run, len(runs))
	for i, r := range runs {
		v := append([]float64(nil), r.V...)
		for j := 1; j < len(v); j++ {
			v[j] = v[j-1] + (r.V[j]-v[j-1])*(1-math.Exp(-0.1/lag))
		}
		cut := func(v []float64) roadload.Run {
			c := r
			c.T, c.V, c.Pos = r.T[trim:], v[trim:], r.Pos[trim:]
			return c
		}
		whole[i], smoothed[i] = cut(r.V), cut(v)
	}
	opts := loadtest.Known(1.5)
	opts.Noise.RoadSD = 0
	a := fit(t, whole, opts).Loads[0]
	b := fit(t, smoothed, opts).Loads[0]
	if !near(a.CdA.X, b.CdA.X, 0.35, a.CdA.SE) || !near(a.Crr.X, b.Crr.X, 0.35, a.Crr.SE) {
		t.Errorf("smoothed: CdA %v Crr %v, raw %v %v", b.CdA.X, b.Crr.X, a.CdA, a.Crr)
	}
	for i := range whole {
		shifted := append([]float64(nil), whole[i].T...)
		for j := range shifted {
			shifted[j] += 0.7
		}
		whole[i].T = shifted
	}
	c := fit(t, whole, opts).Loads[0]
	if !near(a.CdA.X, c.CdA.X, 1e-3, a.CdA.SE) {
		t.Errorf("all fixes later: CdA %v, want %v", c.CdA.X, a.CdA.X)
	}
}

// TestInfluence: the stated influence of a run or pair agrees with that of
// leaving it out, except for the noise, which is then learned from the rest.
func TestInfluence(t *testing.T) {
	opts := loadtest.Known(1.5)
	opts.Noise.RoadSD = 0
	runs := ridden(6)
	e := fit(t, runs, opts)
	if len(e.Runs) != 10 || len(e.Pairs) != 5 {
		t.Fatalf("%d runs and %d pairs, want 10 and 5", len(e.Runs), len(e.Pairs))
	}
	var wrong, all float64
	for p, f := range e.Pairs {
		rest := append(append([]roadload.Run(nil), runs[:2*p]...), runs[2*p+2:]...)
		moved := fit(t, rest, opts).Loads[0].CdA.X - e.Loads[0].CdA.X
		wrong, all = wrong+(moved-f.MoveCdA)*(moved-f.MoveCdA), all+moved*moved
	}
	if wrong > 0.25*all {
		t.Errorf("what pairs move is off by %.0f %% (rms)", 100*math.Sqrt(wrong/all))
	}
	rest := append(append([]roadload.Run(nil), runs[:3]...), runs[4:]...)
	moved := fit(t, rest, opts).Loads[0].CdA.X - e.Loads[0].CdA.X
	if !near(moved, e.Runs[3].MoveCdA, 0.3, e.Loads[0].CdA.SE) {
		t.Errorf("run 4 moves CdA by %.4f, said to be %.4f", moved, e.Runs[3].MoveCdA)
	}
}

// TestStepwise: the method of the regulations gives the same on a calm day. On
// a windy one it is off by the effect of the squared wind.
func TestStepwise(t *testing.T) {
	b := loadtest.Bikes[0]
	for _, c := range []struct {
		name           string
		wind           float64
		crrLow, crrTop float64 // bias
	}{
		{"still", 0.001, -0.01, 0.01},
		{"windy", 3, 0.04, 0.6},
	} {
		t.Run(c.name, func(t *testing.T) {
			sum := 0.0
			const n = 40
			for seed := range n {
				test := loadtest.Default(b, c.wind)
				test.Rate = 10
				l, err := roadload.Stepwise(test.Ride(rand.New(rand.NewPCG(uint64(seed), 1))), loadtest.Known(1.5), 10/3.6)
				if err != nil {
					t.Fatal(err)
				}
				sum += l[0].Crr.X / b.Crr / n
			}
			if bias := sum - 1; bias < c.crrLow || bias > c.crrTop {
				t.Errorf("bias of Crr %.3f, want %v to %v", bias, c.crrLow, c.crrTop)
			}
		})
	}
}

// TestSlopeUncertainty: an uncertain growth of rolling resistance with speed
// widens the intervals.
func TestSlopeUncertainty(t *testing.T) {
	runs := ridden(8)
	plain := fit(t, runs, loadtest.Known(1.5)).Loads[0]
	opts := loadtest.Known(1.5)
	opts.Slope.SE = 0.004
	wide := fit(t, runs, opts).Loads[0]
	opts.Slope = measure.Value{}
	without := fit(t, runs, opts).Loads[0]
	// the whole of k changes CdA by about 1.7 %
	moved := without.CdA.X/plain.CdA.X - 1
	if moved < 0.01 || moved > 0.025 {
		t.Errorf("without k CdA is %.2f %% more, expected 1 to 2.5 %%", 100*moved)
	}
	if got, want := wide.CdA.SE, math.Hypot(plain.CdA.SE, moved*plain.CdA.X); !near(got, want, 0.15, want) {
		t.Errorf("standard error %v with k ± 0.004 s/m, want about %v", got, want)
	}
}

// TestDeterministic: the same runs give the same figures, to the last digit.
func TestDeterministic(t *testing.T) {
	a, b := fit(t, ridden(9), loadtest.Known(1.5)), fit(t, ridden(9), loadtest.Known(1.5))
	if a.Loads[0] != b.Loads[0] || a.Noise != b.Noise {
		t.Errorf("%+v, then %+v", a.Loads[0], b.Loads[0])
	}
}

// TestGarbage: for any speeds the result is an error or finite.
func TestGarbage(t *testing.T) {
	for seed := range uint64(25) {
		r := rand.New(rand.NewPCG(seed, 80))
		runs := ridden(seed)[:4]
		for i := range runs {
			for j := range runs[i].V {
				switch seed % 5 {
				case 0: // nothing but noise
					runs[i].V[j] = 40 * r.Float64()
				case 1: // speeding up
					runs[i].V[j] = 5 + 0.5*float64(j)
				case 2: // at once
					runs[i].V[j] = 30 - 29*float64(min(j, 1))
				case 3: // one wild fix
					if j == 7 {
						runs[i].V[j] = 1e6
					}
				case 4: // all in one place
					runs[i].Pos[j] = 12
				}
			}
		}
		e, err := roadload.Fit(runs, loadtest.Known(1.5))
		if err != nil {
			continue
		}
		l := e.Loads[0]
		for _, x := range []float64{l.CdA.X, l.CdA.SE, l.Crr.X, l.Crr.SE, l.CdACI[0], l.CdACI[1]} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Errorf("seed %d: %+v", seed, l)
				break
			}
		}
	}
}
