// Package invented makes a result of an invented ride by hand, for the tests
// of everything that shows or writes results: no estimator is involved, so
// that a test of a file or a picture does not change when an estimator does.
package invented

import (
	"math"
	"math/rand/v2"

	"stillair/fusion"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Truth of the invented bike.
const (
	Mass    = 290.0  // kg
	Inertia = 1.04   // times Mass
	Density = 1.2    // kg/m³
	Crr     = 0.018  // at standstill
	Slope   = 0.004  // of Crr, s/m
	Gravity = 9.81   // m/s²
	step    = 0.04   // s from one entry of the track to the next
	powerW  = 52000. // at the wheel
)

// CdA is the drag area of the two setups, m².
var CdA = map[string]float64{"panniers off": 0.55, "panniers on": 0.61}

// maker drives the bike and writes down what it does.
type maker struct {
	res   *runs.Result
	track *fusion.Track
	rng   *rand.Rand
	setup string
	t, v  float64
	s     float64
	pair  int
}

// Result returns the result of the ride: two launches, a roll-on, a stop, two
// setups with four coast-down pairs each and one run that was spoilt.
func Result() *runs.Result {
	m := &maker{rng: rand.New(rand.NewPCG(3, 1)), setup: "panniers off", t: 100, track: &fusion.Track{
		Lag:      fusion.Lag{Seconds: 0.213, SE: 0.018, Found: true},
		Receiver: fusion.Receiver{WhiteSD: 0.05, CorrelatedSD: 0.04, CorrelatedS: 8, Smoothing: 0.31, SmoothingSE: 0.06}}}
	m.res = &runs.Result{Track: m.track, Ride: ride(), Defaults: []string{"rotating_mass_kg", "wind_sd_mps"},
		Warnings: []finding.Finding{finding.New("air.maybe_sea_level", finding.Pressure("entered", 100900), finding.Distance("altitude", 60), finding.Pressure("local", 100180))},
		Notes:    []sensors.Note{{File: "motion.csv", Line: 4021, Count: 12, What: finding.New("input.doubled", finding.Of("what", finding.New("input.sample")))}}}
	m.still(6)
	for range 2 {
		m.launch(34)
		m.toStandstill()
		m.still(8)
	}
	for _, setup := range []string{"panniers off", "panniers on"} {
		m.setup = setup
		for i := range 8 {
			m.coastDown(i)
		}
		m.rollOn()
	}
	m.stop()
	m.still(5)
	m.roadLoads()
	m.passes()
	return m.res
}

func ride() sensors.Ride {
	r := sensors.UnknownRide()
	r.Bike, r.Mass, r.MassSD, r.RotatingMass, r.WindSD = "invented naked 700", Mass, 3, 0.04*Mass, 1.5
	r.Air = sensors.Air{Temperature: 18, TemperatureEnd: math.NaN(), Pressure: 100900, Humidity: 0.6}
	r.Setups = []sensors.Setup{{From: 0, Name: "panniers off", Mass: math.NaN()}, {From: 900, Name: "panniers on", Mass: math.NaN()}}
	return r
}

// go1 moves on by one step with the acceleration a, and notes it.
func (m *maker) go1(a float64) {
	k := m.track
	k.T, k.V, k.A, k.S = append(k.T, m.t), append(k.V, m.v), append(k.A, a+0.05*m.rng.NormFloat64()), append(k.S, m.s)
	k.VSD, k.ASD = append(k.VSD, 0.05), append(k.ASD, 0.08)
	k.Yaw, k.Shake = append(k.Yaw, 0), append(k.Shake, 1+m.v/10)
	m.t += step
	m.s += m.v * step
	m.v = math.Max(0, m.v+a*step)
}

func (m *maker) still(seconds float64) {
	from := m.t
	for m.t < from+seconds {
		m.go1(0)
	}
	m.track.Still = append(m.track.Still, fusion.Span{From: from, To: m.t})
}

// rolling is the deceleration of the bike rolling free.
func rolling(setup string, v float64) float64 {
	force := 0.5*Density*CdA[setup]*v*v + Mass*Gravity*Crr*(1+Slope*v)
	return force / (Mass * Inertia)
}

func (m *maker) pull() float64 {
	return math.Min(7.2, powerW/(Mass*Inertia)/math.Max(m.v, 1)) - rolling(m.setup, m.v)
}

func (m *maker) toSpeed(v, a float64) {
	for math.Abs(m.v-v) > 0.2 {
		m.go1(math.Copysign(a, v-m.v))
	}
}

func (m *maker) toStandstill() {
	for m.v > 0.02 {
		m.go1(-math.Min(4, m.v/step))
	}
	m.v = 0
}

// add puts a run into the result and returns it.
func (m *maker) add(kind runs.Kind, start, from float64) *runs.Run {
	m.res.Runs = append(m.res.Runs, runs.Run{ID: len(m.res.Runs) + 1, Kind: kind, Start: start, End: m.t,
		FromMPS: from, ToMPS: m.v, BearingDeg: 84, Setup: m.setup})
	return &m.res.Runs[len(m.res.Runs)-1]
}
