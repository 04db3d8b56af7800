package effect

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs/measure"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %v, want %v ± %v", what, got, want, tol)
	}
}

// invented is the invented naked bike of the examples.
func invented() Load {
	return Load{CdA: measure.Value{X: 0.55, SE: 0.008}, Crr: measure.Value{X: 0.018, SE: 0.0004}, Cov: -2.4e-6,
		K: 0.004, Mass: 290, Density: 1.2, Gravity: 9.81}
}

// TestForceOfTheRegulation checks the force at 65 km/h printed in 40 CFR
// 86.529-98, figure F98-9, next to A and C, and the resulting power P = F·v.
func TestForceOfTheRegulation(t *testing.T) {
	const v = 65 / 3.6
	tests := []struct{ mass, a, c, force float64 }{
		{100, 0.0, .0224, 94.8},
		{200, 8.69, .0252, 115.1},
		{290, 16.55, .0277, 133.4},
		{340, 20.92, .0290, 143.6},
	}
	for _, tt := range tests {
		l := Load{CdA: measure.Value{X: 2 * tt.c * 3.6 * 3.6}, Crr: measure.Value{X: tt.a / (tt.mass * 9.81)},
			Mass: tt.mass, Density: 1, Gravity: 9.81}
		near(t, "force at 65 km/h, N", l.Force(v).X, tt.force, 0.25)
		near(t, "power at 65 km/h, W", l.Power(v).X, l.Force(v).X*v, 1e-9)
	}
}

// TestTopSpeedInAirAlone compares with a calculation by hand: without rolling
// resistance P = ½ρ·CdA·v³, so 50 kW against 0.5·1.2·0.55 = 0.33 kg/m give
// (50000/0.33)^⅓ = 53.31 m/s.
func TestTopSpeedInAirAlone(t *testing.T) {
	l := Load{CdA: measure.Value{X: 0.55}, Mass: 290, Density: 1.2, Gravity: 9.81}
	av := Available{Speed: []float64{30, 45, 60}, Power: []measure.Value{{X: 50e3, SE: 500}, {X: 50e3, SE: 500}, {X: 50e3, SE: 500}}}
	top, err := TopSpeed(l, av, math.Inf(1))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "top speed, m/s", top.Speed.X, 53.31, 0.01)
	// v ∝ P^⅓: 1 % of power is a third of 1 % of speed.
	near(t, "its uncertainty, m/s", top.Speed.SE, 53.31*0.01/3, 0.002)
	near(t, "speed that the power gives, m/s", l.SpeedAt(measure.Value{X: 50e3}).X, top.Speed.X, 1e-6)
}

func TestTopSpeedLimits(t *testing.T) {
	rising := Available{Speed: []float64{20, 40}, Power: []measure.Value{{X: 60e3}, {X: 60e3}}}
	weak := Available{Speed: []float64{40, 50}, Power: []measure.Value{{X: 1e3}, {X: 1e3}}}
	tests := []struct {
		name  string
		load  Load
		av    Available
		gear  float64
		want  Limit
		speed float64
		fails bool
	}{
		{name: "the engine's limit comes first", load: invented(), av: rising, gear: 38, want: ByGear, speed: 38},
		{name: "the curve ends before either", load: invented(), av: rising, gear: 50, want: NotInRun, speed: 40},
		{name: "too little power from the start", load: invented(), av: weak, fails: true},
		{name: "no mass", load: Load{CdA: measure.Value{X: 0.5}, Density: 1.2, Gravity: 9.81}, av: rising, fails: true},
		{name: "one point is no curve", load: invented(), av: Available{Speed: []float64{20}, Power: []measure.Value{{X: 1e4}}}, fails: true},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			top, err := TopSpeed(tt.load, tt.av, tt.gear)
			if (err != nil) != tt.fails {
				t.Fatalf("error %v, want one: %v", err, tt.fails)
			}
			if !tt.fails && (top.Limit != tt.want || top.Speed.X != tt.speed) {
				t.Errorf("got %v by %q, want %v by %q", top.Speed.X, top.Limit, tt.speed, tt.want)
			}
		})
	}
}

// TestChangeByHand compares with a calculation by hand: 0.05 m² at 130 km/h
// (36.11 m/s) and 1.2 kg/m³ is ½·1.2·0.05·36.11³ = 1412.7 W.
func TestChangeByHand(t *testing.T) {
	c := Change{CdA: measure.Value{X: 0.05, SE: 0.01}}
	v := 130 / 3.6
	near(t, "power of the change, W", c.Power(invented(), v).X, 1412.7, 0.2)
	near(t, "its uncertainty, W", c.Power(invented(), v).SE, 282.5, 0.1)
}

// TestChangeAgainstExact compares the first-order results with the exact
// solution of the two cubics for a small change.
func TestChangeAgainstExact(t *testing.T) {
	a, v := invented(), 40.0
	b := a
	b.CdA.X *= 1.01
	c := Change{CdA: measure.Value{X: b.CdA.X - a.CdA.X, SE: 0.001}}
	exact := b.SpeedAt(a.Power(v)).X
	near(t, "slower by, m/s", c.Speed(a, v).X, exact-v, 0.02*math.Abs(exact-v))
	const km = 100e3
	near(t, "longer over 100 km, s", c.TimeOver(a, v, km).X, km/exact-km/v, 0.02*(km/exact-km/v))
}

// TestFuelByHand compares with a calculation by hand: 5 l/100 km at 30 m/s, 10
// % more force and a share of 0.8 make 5.4 l/100 km; 18 l go 333 km instead of
// 360.
func TestFuelByHand(t *testing.T) {
	l := Load{CdA: measure.Value{X: 0.5}, Mass: 300, Density: 1.2, Gravity: 9.81}
	c := Change{CdA: measure.Value{X: 0.05}}
	f := c.Fuel(l, Burn{Speed: 30, PerMetre: measure.Value{X: 5e-8}}, AssumedWillans())
	near(t, "consumption, l/100 km", f.PerMetre.X*1e8, 5.4, 1e-9)
	near(t, "its uncertainty, l/100 km", f.PerMetre.SE*1e8, 0.05, 1e-9)
	near(t, "range, km", Range(0.018, f.PerMetre).X/1e3, 333.3, 0.1)
}

func TestWillansFromTwoSpeeds(t *testing.T) {
	l := invented()
	// An invented engine: 0.2 ml/s to turn itself and 0.08 ml per kJ of work.
	burn := func(v float64) Burn {
		return Burn{Speed: v, PerMetre: measure.Value{X: (0.2e-6 + 0.08e-9*l.Power(v).X) / v, SE: 0}}
	}
	w, err := FitWillans(l, burn(25), burn(35))
	if err != nil {
		t.Fatal(err)
	}
	work := 0.08e-9 * l.Power(25).X
	near(t, "share", w.Share.X, work/(0.2e-6+work), 1e-9)
	if _, err := FitWillans(l, burn(25), burn(25.5)); err == nil {
		t.Error("two nearly equal speeds gave a share")
	}
}

// TestCovarianceIsTrue draws CdA and Crr from their joint distribution and
// compares the standard uncertainties of functions of both with the spread.
func TestCovarianceIsTrue(t *testing.T) {
	l, rng := invented(), rand.New(rand.NewPCG(7, 1))
	rho := l.Cov / (l.CdA.SE * l.Crr.SE)
	p50 := l.Power(25)
	var force, speed []float64
	for range 20000 {
		x, y := rng.NormFloat64(), rng.NormFloat64()
		d := l
		d.CdA.X += l.CdA.SE * x
		d.Crr.X += l.Crr.SE * (rho*x + math.Sqrt(1-rho*rho)*y)
		force = append(force, d.Force(20).X)
		speed = append(speed, d.SpeedAt(measure.Value{X: p50.X}).X)
	}
	near(t, "spread of the force", sd(force), l.Force(20).SE, 0.03*l.Force(20).SE)
	want := l.SpeedAt(measure.Value{X: p50.X}).SE
	near(t, "spread of the speed", sd(speed), want, 0.03*want)
}

func sd(x []float64) float64 {
	var s, q float64
	for _, v := range x {
		s += v
	}
	m := s / float64(len(x))
	for _, v := range x {
		q += (v - m) * (v - m)
	}
	return math.Sqrt(q / float64(len(x)-1))
}

// TestAboutFuel compares with a calculation by hand: 0.05 m² more in air of 1.2
// kg/m³ need ½·1.2·0.05·33.33³ = 1111 W at 120 km/h, which over 100 km, 3000 s,
// are 3.33 MJ at the tyre; at a third of the heat of petrol, 32 MJ a litre,
// about 0.32 l.
func TestAboutFuel(t *testing.T) {
	l := Load{CdA: measure.Value{X: 0.55}, Crr: measure.Value{X: 0.018}, Mass: 290, Density: 1.2, Gravity: 9.81}
	c := Change{CdA: measure.Value{X: 0.05, SE: 0.005}}
	got := c.AboutFuel(l, 120/3.6).Times(1e8)
	if math.Abs(got.X-0.32) > 0.01 || math.Abs(got.SE-0.05) > 0.01 {
		t.Errorf("%.3f ± %.3f l/100 km, want 0.32 ± 0.05", got.X, got.SE)
	}
}
