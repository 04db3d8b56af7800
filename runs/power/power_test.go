package power

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/sensors/sim/batch"
)

func seeds(t *testing.T, full int) int {
	if testing.Short() {
		return full / 10
	}
	t.Parallel()
	return full
}

// TestPeakAndBand checks one pull each way in wind, gusts and slope, with mass
// known to 1 %: the peak is within 1 % in the mean, 2 % in spread, and the band
// has its nominal coverage along the curve.
func TestPeakAndBand(t *testing.T) {
	n := seeds(t, 300)
	bike := naked()
	r := newRig(bike, breezy())
	var sum, sq, bands float64
	held, points := 0, 0
	for seed := range n {
		rng := rand.New(rand.NewPCG(uint64(seed), 3))
		mass := bike.Load.Mass + bike.MassSD*rng.NormFloat64()
		assumed := bike
		c, err := NewCurve(r.pair(1, mass, rng), assumed, r.day, math.NaN(), math.NaN())
		if err != nil {
			t.Fatal(err)
		}
		_, p, _ := c.Peak()
		e := p.X/52e3 - 1
		sum, sq, bands = sum+e, sq+e*e, bands+c.Bandwidth
		for k, v := range c.Speed {
			points++
			if math.Abs(c.Power[k].X-truePower(v)) <= 1.96*c.Power[k].SE {
				held++
			}
		}
	}
	bias := sum / float64(n)
	sd := math.Sqrt(sq/float64(n) - bias*bias)
	cover := float64(held) / float64(points)
	t.Logf("%d seeds: peak bias %.2f %%, sd %.2f %%, band holds %.1f %%, bandwidth %.2f Hz", n, 100*bias, 100*sd, 100*cover, bands/float64(n))
	if testing.Short() {
		return
	}
	if math.Abs(bias) > 0.01 || sd > 0.02 {
		t.Errorf("peak: bias %.2f %%, sd %.2f %%", 100*bias, 100*sd)
	}
	if cover < 0.92 || cover > 0.98 {
		t.Errorf("band holds %.1f %%", 100*cover)
	}
}

// TestSeesDifference checks how often a difference of 4 % is seen with three
// pulls each way for each setup on a calm day, and the rate of false alarms.
func TestSeesDifference(t *testing.T) {
	n := seeds(t, batch.Size(400, 400))
	bike := naked()
	count := func(scale float64, stream uint64) float64 {
		seen := 0
		a, b := newRig(bike, calm()), newRig(bike, calm())
		b.scale = scale
		for seed := range n {
			rng := rand.New(rand.NewPCG(uint64(seed), stream))
			var pa, pb []Pull
			for k := 1; k <= 3; k++ {
				pa = append(pa, a.pair(k, bike.Load.Mass, rng)...)
				pb = append(pb, b.pair(k+3, bike.Load.Mass, rng)...)
			}
			ca, err := NewCurve(pa, bike, a.day, math.NaN(), math.NaN())
			if err != nil {
				t.Fatal(err)
			}
			cb, err := NewCurve(pb, bike, b.day, math.NaN(), math.NaN())
			if err != nil {
				t.Fatal(err)
			}
			d, err := Compare(ca, cb)
			if err != nil {
				t.Fatal(err)
			}
			if d.Mean.TwoSided(d.DoF) < 0.05 {
				seen++
			}
		}
		return float64(seen) / float64(n)
	}
	hit, alarm := count(1.04, 5), count(1, 6)
	t.Logf("%d tests: 4 %% seen in %.1f %%, false alarm %.1f %%", n, 100*hit, 100*alarm)
	if testing.Short() {
		return
	}
	if hit < 0.8 {
		t.Errorf("4 %% seen in %.1f %% only", 100*hit)
	}
	if alarm < 0.03 || alarm > 0.07 {
		t.Errorf("false alarm in %.1f %%", 100*alarm)
	}
}

// exact returns a pull with almost exact speed.
func exact(n int, dt float64, speed func(t float64) float64) Pull {
	p := Pull{ID: 1, Dir: 1, Cov: mat.NewSymDense(n, nil)}
	for i := range n {
		t := float64(i) * dt
		p.T, p.V = append(p.T, t), append(p.V, speed(t))
		p.Cov.SetSym(i, i, 1e-8)
	}
	return p
}

// TestConstantPower is textbook mechanics: without drag, v = √(2·P·t/m).
func TestConstantPower(t *testing.T) {
	bike := Bike{Load: effect.Load{CdA: measure.Value{X: 1e-9}, Mass: 300, Density: 1.2, Gravity: 9.81}}
	p := exact(70, 0.1, func(s float64) float64 { return math.Sqrt(2 * 40e3 * (s + 2) / 300) })
	c, err := NewCurve([]Pull{p}, bike, Day{GustTime: 1}, math.NaN(), math.NaN())
	if err != nil {
		t.Fatal(err)
	}
	for k := 4; k < len(c.Power)-4; k++ {
		if math.Abs(c.Power[k].X/40e3-1) > 0.003 {
			t.Errorf("at %.1f m/s: %.0f W, want 40000", c.Speed[k], c.Power[k].X)
		}
	}
}

// TestConstantForce is textbook mechanics: P = F·v at constant acceleration,
// against the road load of 40 CFR 86.529-98 for 290 kg.
func TestConstantForce(t *testing.T) {
	l := effect.Load{CdA: measure.Value{X: 2 * .0277 * 3.6 * 3.6}, Crr: measure.Value{X: 16.55 / (290 * 9.81)}, Mass: 290, Density: 1, Gravity: 9.81}
	p := exact(60, 0.1, func(s float64) float64 { return 15 + 3*s })
	c, err := NewCurve([]Pull{p}, Bike{Load: l}, Day{GustTime: 1}, 16, 30)
	if err != nil {
		t.Fatal(err)
	}
	for k, v := range c.Speed {
		want := v * (290*3 + 16.55 + .0277*square(3.6*v))
		if math.Abs(c.Power[k].X/want-1) > 1e-3 {
			t.Errorf("at %.2f m/s: %.0f W, want %.0f", v, c.Power[k].X, want)
		}
	}
	if c.Speed[0] != 16 || c.Speed[len(c.Speed)-1] != 30 {
		t.Errorf("the curve runs from %v to %v m/s, want 16 to 30", c.Speed[0], c.Speed[len(c.Speed)-1])
	}
}

// TestOneWayIsWide checks that a pull without an opposite one has a wide band.
func TestOneWayIsWide(t *testing.T) {
	r := newRig(naked(), breezy())
	both := r.pair(1, 290, rand.New(rand.NewPCG(1, 1)))
	one, err := NewCurve(both[:1], naked(), r.day, math.NaN(), math.NaN())
	if err != nil {
		t.Fatal(err)
	}
	two, err := NewCurve(both, naked(), r.day, math.NaN(), math.NaN())
	if err != nil {
		t.Fatal(err)
	}
	_, p1, _ := one.Peak()
	_, p2, _ := two.Peak()
	if one.BothWays || !two.BothWays || p1.SE < 1.5*p2.SE {
		t.Errorf("one way ± %.0f W, both ways ± %.0f W", p1.SE, p2.SE)
	}
}

// TestUnion: a curve covers the speeds of all pulls, with a wider band where
// there is only one pull, and pulls with a gap between them give two curves.
func TestUnion(t *testing.T) {
	r := newRig(naked(), breezy())
	both := r.pair(1, 290, rand.New(rand.NewPCG(2, 1)))
	half := both[1]
	n := len(half.T) / 2
	half.T, half.V, half.Cov = half.T[:n], half.V[:n], half.Cov.SliceSym(0, n).(*mat.SymDense)
	c, err := NewCurve([]Pull{both[0], half}, naked(), r.day, math.NaN(), math.NaN())
	if err != nil {
		t.Fatal(err)
	}
	last := both[0].V[len(both[0].V)-1]
	if got := c.Speed[len(c.Speed)-1]; got < last-gridStep {
		t.Errorf("the curve ends at %.1f m/s, want %.1f", got, last)
	}
	low, high := c.At(half.V[n/2]), c.At((half.V[n-1]+last)/2)
	if high.SE/high.X < 1.3*low.SE/low.X {
		t.Errorf("where one pull tells ± %.1f %%, where both ± %.1f %%", 100*high.SE/high.X, 100*low.SE/low.X)
	}
	far := exact(60, 0.1, func(s float64) float64 { return 60 + s })
	if parts := Parts([]Pull{far, both[0], half}); len(parts) != 2 || len(parts[0]) != 2 || parts[1][0].V[0] != 60 {
		t.Errorf("%d parts", len(parts))
	}
}

// TestKicks: if the speed wanders more than its covariance says, the band still
// has its nominal coverage.
func TestKicks(t *testing.T) {
	r := newRig(naked(), calm())
	held, points := 0, 0
	for seed := range seeds(t, 60) {
		rng := rand.New(rand.NewPCG(uint64(seed), 8))
		pulls := r.pair(1, 290, rng)
		for _, p := range pulls {
			for i, at := 0, 0.0; i < len(p.V); i++ {
				at += 0.03 * rng.NormFloat64()
				p.V[i] += at
			}
		}
		c, err := NewCurve(pulls, naked(), r.day, math.NaN(), math.NaN())
		if err != nil {
			t.Fatal(err)
		}
		for k := 0; k < len(c.Speed); k += 8 {
			points++
			if math.Abs(c.Power[k].X-truePower(c.Speed[k])) <= 1.96*c.Power[k].SE {
				held++
			}
		}
	}
	if cover := float64(held) / float64(points); cover < 0.88 {
		t.Errorf("the band holds %.1f %% of %d points", 100*cover, points)
	}
}

func TestBadInput(t *testing.T) {
	good := exact(60, 0.1, func(s float64) float64 { return 15 + 3*s })
	slow := exact(60, 0.1, func(s float64) float64 { return 2 + 0.5*s })
	far := exact(60, 0.1, func(s float64) float64 { return 60 + s })
	noWay := good
	noWay.Dir = 0
	weightless := naked()
	weightless.Load.Mass = 0
	tests := []struct {
		name  string
		pulls []Pull
		bike  Bike
	}{
		{"no pulls", nil, naked()},
		{"no mass", []Pull{good}, weightless},
		{"no direction", []Pull{noWay}, naked()},
		{"too short", []Pull{exact(5, 0.1, func(s float64) float64 { return 10 + s })}, naked()},
		{"nothing in common", []Pull{slow, far}, naked()},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if _, err := NewCurve(tt.pulls, tt.bike, breezy(), math.NaN(), math.NaN()); err == nil {
				t.Error("no error")
			}
		})
	}
}
