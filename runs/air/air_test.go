package air_test

import (
	"math"
	"testing"

	"stillair/runs/air"
	"stillair/runs/measure"
	"stillair/sensors/units"
)

// check is one published value and half of its last printed digit.
type check struct {
	name             string
	got, want, digit float64
}

func (c check) run(t *testing.T) {
	t.Helper()
	if !(math.Abs(c.got-c.want) <= c.digit) {
		t.Errorf("%s: %.6f, want %v ± %v", c.name, c.got, c.want, c.digit)
	}
}

// TestMoistDensityTable checks against a handbook table of moist-air density:
// dew point 10 °C, 760 mmHg unless stated. One unit of the last digit is
// allowed: at 10 °C the equation gives 1.2415, which the table rounds down.
func TestMoistDensityTable(t *testing.T) {
	at := func(temp, mmHg float64) float64 { return air.DewPointDensity(temp, mmHg*units.MercuryMM, 10) }
	for _, c := range []check{
		{"0 °C", at(0, 760), 1.287, 0.0006},
		{"10 °C", at(10, 760), 1.241, 0.0006},
		{"20 °C", at(20, 760), 1.199, 0.0006},
		{"40 °C", at(40, 760), 1.122, 0.0006},
		{"60 °C", at(60, 760), 1.055, 0.0006},
		{"20 °C, 700 mmHg", at(20, 700), 1.104, 0.0006},
	} {
		c.run(t)
	}
}

// TestMoistDensityWorked checks example values of CIPM-2007 and of an older
// NIST equation, quoted in tests of open scientific code.
func TestMoistDensityWorked(t *testing.T) {
	at := func(temp, mmHg, humidity float64) float64 {
		return air.MoistDensity(temp, mmHg*units.MercuryMM, humidity)
	}
	for _, c := range []check{
		{"CIPM-2007: 10 °C, 730 mmHg, 40 %", at(10, 730, 0.40), 1.19569, 0.000006},
		{"CIPM-2007: 40 °C, 760 mmHg, 40 %", at(40, 760, 0.40), 1.11497, 0.00007},
		{"NIST: 22.3 °C, 748.1 mmHg, 37 %", at(22.3, 748.1, 0.37), 1.17194, 0.00007},
		{"NIST: 23.4 °C, 612.3 mmHg, 23 %", at(23.4, 612.3, 0.23), 0.95632, 0.00007},
	} {
		c.run(t)
	}
}

// TestStandardAtmosphere checks against ISO 2533 (from memory). The equation
// for moist air must give the same at sea level without water.
func TestStandardAtmosphere(t *testing.T) {
	rho := func(h float64) float64 { _, _, r := air.Standard(h); return r }
	for _, c := range []check{
		{"sea level", rho(0), 1.225, 0.00005},
		{"1000 m", rho(1000), 1.1117, 0.00005},
		{"2000 m", rho(2000), 1.0066, 0.00005},
		{"dry air by CIPM-2007", air.MoistDensity(15, 101325, 0), 1.225, 0.0006},
	} {
		c.run(t)
	}
}

// TestGravity checks against WGS 84.
func TestGravity(t *testing.T) {
	for _, c := range []check{
		{"equator", air.Gravity(0, 0), 9.7803253359, 0.5e-10},
		{"north pole", air.Gravity(90, 0), 9.8321849378, 1.5e-10},
		{"45° by GRS80, from memory, whose flattening differs from the tenth digit on", air.Gravity(45, 0), 9.806199203, 2e-6},
		{"south pole", air.Gravity(-90, 0), 9.8321849378, 1.5e-10},
		{"free-air gradient near 45°, per m (textbook 3.086e-6)",
			(air.Gravity(45, 0) - air.Gravity(45, 1000)) / 1000, 3.086e-6, 2e-9},
	} {
		c.run(t)
	}
}

// TestCorrection checks the published formula of SAE J1349 (June 1990):
// 1.180·(990/Pd)·√((Tc+273)/298) − 0.18 with Pd in mbar.
func TestCorrection(t *testing.T) {
	for _, c := range []check{
		{"at its own reference, 25 °C and 990 mbar", air.SAEJ1349(99000, 25), 1, 1e-12},
		{"hot and high, worked by hand", air.SAEJ1349(85000, 35), 1.2172, 0.0001},
		{"cold and low, worked by hand", air.SAEJ1349(103000, 5), 0.9155, 0.0001},
		{"ISO 1585 at its reference", air.ISO1585(99000, 25), 1, 1e-12},
	} {
		c.run(t)
	}
}

// TestVouched: the range of Regulation (EU) 134/2014, appendix 2.2, is 283.2 to
// 318.2 K, that is 10.05 to 45.05 °C.
func TestVouched(t *testing.T) {
	for _, c := range []struct {
		name            string
		factor, celsius float64
		want            bool
	}{
		{"a mild day", 1.02, 20, true}, {"a cold day", 0.97, 10, false}, {"just warm enough", 0.97, 10.1, true},
		{"too hot", 1.03, 45.2, false}, {"thin air", 1.09, 20, false}, {"dense air", 0.92, 20, false},
	} {
		if got := air.Vouched(c.factor, c.celsius); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// TestDensityUncertainty: by the gas law 1 % of pressure is 1 % of density, and
// 3 K at 20 °C is 1.02 % of dry air.
func TestDensityUncertainty(t *testing.T) {
	s := air.State{
		Temperature: measure.Value{X: 20, SE: 0},
		Pressure:    measure.Value{X: 101325, SE: 1013.25},
		Humidity:    measure.Value{X: 0, SE: 0},
	}
	d := s.Density()
	check{"1 % of pressure", d.SE / d.X, 0.01, 0.0001}.run(t)
	s.Pressure.SE, s.Temperature.SE = 0, 3
	d = s.Density()
	check{"3 K", d.SE / d.X, 3 / 293.15, 0.0001}.run(t)
}

// TestMoreOfIt: air is lighter with more temperature, more humidity and less pressure.
func TestMoreOfIt(t *testing.T) {
	base := air.MoistDensity(20, 100000, 0.5)
	for name, rho := range map[string]float64{
		"warmer": air.MoistDensity(21, 100000, 0.5), "moister": air.MoistDensity(20, 100000, 0.6),
		"thinner": air.MoistDensity(20, 99000, 0.5),
	} {
		if rho >= base {
			t.Errorf("%s air is %v kg/m³, not lighter than %v", name, rho, base)
		}
	}
}
