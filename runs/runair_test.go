package runs

import (
	"math"
	"testing"

	"stillair/runs/air"
	"stillair/runs/measure"
	"stillair/runs/pairing"
	"stillair/runs/usual"
	"stillair/sensors"
)

// coastAt is a coast-down of ten seconds at an altitude; NaN: none given.
func coastAt(start, alt float64) pairing.Coast {
	c := pairing.Coast{Start: start, End: start + 10}
	for i := range 11 {
		f := sensors.NewFix(start+float64(i), 20)
		f.Alt = alt
		c.Fixes = append(c.Fixes, f)
	}
	return c
}

// TestAirOfRuns: two coast-downs in air that differs from the ride's. The
// densities are those of the standard atmosphere, ISO 2533 (from memory):
// 1.2250, 1.1673 and 1.1117 kg/m³ at 0, 500 and 1000 m, and the pressures
// 1013.25, 954.61 and 898.76 hPa.
func TestAirOfRuns(t *testing.T) {
	nan := math.NaN()
	dry := func(celsius, pa float64) air.State {
		return air.State{Temperature: measure.Value{X: celsius, SE: 1}, Pressure: measure.Value{X: pa, SE: 150}, Humidity: measure.Value{}}
	}
	for _, c := range []struct {
		name        string
		c           conditions
		alts        [2]float64
		barometer   [2]float64 // Pa in each coast-down; NaN: none
		wantPa      [2]float64
		wantRho     [2]float64
		elsewherePa float64 // barometer between the two
	}{
		{"assumed, by altitude", conditions{air: dry(11.75, 95461)}, [2]float64{0, 1000}, [2]float64{nan, nan},
			[2]float64{101325, 89876}, [2]float64{1.2250, 1.1117}, nan},
		{"measured: the barometer counts, whatever the ride's mean was", conditions{air: dry(11.75, 99451.75)}, [2]float64{0, 1000}, [2]float64{101325, 89876},
			[2]float64{101325, 89876}, [2]float64{1.2250, 1.1117}, 103303},
		{"measured, the weather changed: no colder for it", conditions{air: dry(15, 100662.5)}, [2]float64{nan, nan}, [2]float64{101325, 100000},
			[2]float64{101325, 100000}, [2]float64{1.2250, 1.2250 * 100000 / 101325}, nan},
		{"entered: of the mean of the coast-downs", conditions{entered: true, air: dry(15, 101325)}, [2]float64{480, 520}, [2]float64{nan, nan},
			[2]float64{101565, 101085}, [2]float64{1.2250 * 1.00190, 1.2250 * 0.99810}, nan},
		{"nothing known of the places", conditions{air: dry(15, 101325)}, [2]float64{nan, nan}, [2]float64{nan, nan},
			[2]float64{101325, 101325}, [2]float64{1.2250, 1.2250}, nan},
	} {
		coasts := []pairing.Coast{coastAt(100, c.alts[0]), coastAt(200, c.alts[1])}
		log := &sensors.Log{}
		for i, one := range coasts {
			log.Fixes = append(log.Fixes, one.Fixes...)
			log.Pressure = append(log.Pressure, sensors.Pressure{T: one.Start + 5, Pa: c.barometer[i]})
			log.Pressure = append(log.Pressure, sensors.Pressure{T: one.End + 5, Pa: c.elsewherePa})
		}
		for i, got := range c.c.airs(log, coasts) {
			if math.Abs(got.Pressure.X-c.wantPa[i]) > 20 {
				t.Errorf("%s: coast-down %d: %.0f Pa, want %.0f", c.name, i, got.Pressure.X, c.wantPa[i])
			}
			if rho := got.Density().X; math.Abs(rho/c.wantRho[i]-1) > 0.001 {
				t.Errorf("%s: coast-down %d: %.4f kg/m³, want %.4f", c.name, i, rho, c.wantRho[i])
			}
		}
	}
}

// TestTemperatureOfRuns: on a ride from 10 to 20 °C, a coast-down after a quarter of
// it has 12.5 °C and one after three quarters 17.5, and the ride's air is that of
// its middle. A single temperature, from either end, is used for the whole ride.
func TestTemperatureOfRuns(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name       string
		start, end float64
		want       [3]float64 // of the first coast-down, the ride, the second, °C
	}{
		{"warmer", 10, 20, [3]float64{12.5, 15, 17.5}},
		{"colder", 20, 10, [3]float64{17.5, 15, 12.5}},
		{"start alone", 10, nan, [3]float64{10, 10, 10}},
		{"end alone", nan, 20, [3]float64{20, 20, 20}},
		{"neither", nan, nan, [3]float64{usual.Celsius, usual.Celsius, usual.Celsius}},
	} {
		log := &sensors.Log{Ride: sensors.UnknownRide()}
		log.Ride.Air.Temperature, log.Ride.Air.TemperatureEnd = c.start, c.end
		for i := range 1001 {
			log.Fixes = append(log.Fixes, sensors.NewFix(float64(i), 20))
		}
		known := settle(log)
		airs := known.airs(log, []pairing.Coast{coastAt(245, nan), coastAt(745, nan)})
		got := [3]float64{airs[0].Temperature.X, known.air.Temperature.X, airs[1].Temperature.X}
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > 1e-9 {
				t.Errorf("%s: %.2f °C, want %.2f", c.name, got, c.want)
				break
			}
		}
	}
}
