package screens_test

import (
	"math"
	"time"

	"stillair/app/recorder"
	"stillair/app/store"
	"stillair/fusion"
	"stillair/runs"
	"stillair/runs/measure"
	"stillair/runs/pass"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// All of this is an invented scenario with round numbers: a naked bike on a
// closed road.

func val(x, se float64) measure.Value { return measure.Value{X: x, SE: se} }

// piece is a stretch of the invented ride: the acceleration at a speed.
type piece struct {
	until func(t, v float64) bool // t counts from the start of the piece
	accel func(t, v float64) float64
}

// drive joins pieces to a track and returns where each began.
func drive(pieces []piece) (*fusion.Track, []float64) {
	tr := &fusion.Track{Lag: fusion.Lag{Seconds: 0.21, SE: 0.02, Found: true}}
	t, v, s := 0.0, 0.0, 0.0
	const dt = 0.05
	var starts []float64
	for _, p := range pieces {
		starts = append(starts, t)
		for from := t; !p.until(t-from, v); t += dt {
			a := p.accel(t-from, v)
			tr.T, tr.V, tr.A, tr.S = append(tr.T, t), append(tr.V, v), append(tr.A, a), append(tr.S, s)
			tr.VSD, tr.ASD = append(tr.VSD, 0.12+0.1*math.Abs(math.Sin(t))), append(tr.ASD, 0.2)
			s += v * dt
			v = max(0, v+a*dt)
		}
	}
	return tr, append(starts, t)
}

func rest(seconds float64) piece {
	return piece{func(t, _ float64) bool { return t >= seconds }, func(float64, float64) float64 { return 0 }}
}

func launchTo(kmh float64) piece {
	return piece{func(_, v float64) bool { return v >= kmh/3.6 },
		func(t, v float64) float64 { return min(7.2*min(t/0.25, 1), 62_000/290/max(v, 1)) - 0.0011*v*v - 0.18 }}
}

func coastTo(kmh, slope float64) piece {
	return piece{func(_, v float64) bool { return v <= kmh/3.6 },
		func(t, v float64) float64 { return -0.00112*v*v - 0.18 + slope + 0.02*math.Sin(t/1.7) }}
}

func brakeTo(kmh, hard float64) piece {
	return piece{func(_, v float64) bool { return v <= kmh/3.6+0.01 }, func(float64, float64) float64 { return -hard }}
}

func pushTo(kmh, a float64) piece {
	return piece{func(_, v float64) bool { return v >= kmh/3.6 }, func(float64, float64) float64 { return a }}
}

// inventedResult is the results of the invented ride.
func inventedResult() *runs.Result {
	pieces := []piece{rest(4), launchTo(165), brakeTo(0, 7.5), rest(3), pushTo(60, 2), pushTo(121, 3.1), brakeTo(0, 3), rest(5)}
	for i := range 5 {
		pieces = append(pieces, pushTo(115, 2.4), coastTo(30, 0.03), brakeTo(0, 2), rest(6), pushTo(115, 2.4), coastTo(30, -0.03))
		if i == 4 {
			pieces = append(pieces, brakeTo(0, 3))
		}
		pieces = append(pieces, brakeTo(0, 2), rest(6))
	}
	tr, at := drive(pieces)
	res := &runs.Result{Track: tr, Defaults: []string{"rotating_mass_kg", "air"}, Ride: sensors.UnknownRide(),
		Notes: []sensors.Note{{Count: 1, What: finding.New("session.not_closed")}}}
	add := func(r runs.Run) {
		r.ID = len(res.Runs) + 1
		r.Setup = "panniers off"
		res.Runs = append(res.Runs, r)
	}
	add(launchRun(at[1], at[2]))
	add(runs.Run{Kind: runs.Stop, Start: at[2], End: at[3], FromMPS: 45.8, BearingDeg: 84, Marks: []runs.Mark{{Name: "100-0 km/h",
		Time: val(3.71, 0.03), Rollout: measure.Unknown(), Speed: measure.Unknown(), Distance: val(51.4, 0.5)}}})
	add(runs.Run{Kind: runs.RollOn, Start: at[5], End: at[6], FromMPS: 16.7, ToMPS: 33.5, BearingDeg: 84, Marks: []runs.Mark{
		{Name: "60-100 km/h", Time: val(3.58, 0.024), Rollout: measure.Unknown(), Speed: measure.Unknown(), Distance: measure.Unknown()},
		{Name: "80-120 km/h", Time: val(3.61, 0.026), Rollout: measure.Unknown(), Speed: measure.Unknown(), Distance: measure.Unknown()}}})
	coastRuns(tr, at, add)
	res.RoadLoads = []runs.RoadLoad{{Setup: "panniers off", Pairs: 4, Runs: []int{4, 5, 6, 7, 8, 9, 10, 11}, Mass: 290,
		CdA: val(0.551, 0.0096), Crr: val(0.0181, 0.00052), Cov: -3.1e-6, DoF: 6, CdACI: [2]float64{0.528, 0.574}, CrrCI: [2]float64{0.0168, 0.0194},
		Density: 1.213, Notes: []finding.Finding{finding.New("load.pairs_disagree", finding.Count("pairs", 1))}}}
	res.Passes = inventedPasses()
	return res
}

// inventedPasses are one pass that counts and one that does not.
func inventedPasses() []runs.Pass {
	over := func(name string, far, there, back float64) pass.Figure {
		return pass.Figure{Name: name, Distance: far, There: val(there, 0.03), Back: val(back, 0.03), Mean: val((there+back)/2, 0.021), Half: val((there-back)/2, 0.021)}
	}
	return []runs.Pass{
		{Setup: "panniers off", There: pass.Leg{Start: 300, BearingDeg: 84}, Back: pass.Leg{Start: 480, BearingDeg: 264},
			Figures: []pass.Figure{over("1 mile", 1609, 52.95, 50.61), over("1 km", 1000, 53.06, 50.72)}},
		{Setup: "panniers on", There: pass.Leg{Start: 900}, Back: pass.Leg{Start: 1010}, Figures: []pass.Figure{over("1/4 mile", 402, 33.12, 33.41), over("200 m", 200, 33.15, 33.44)},
			Reasons: []finding.Finding{finding.New("pass.eased")}}}
}

func launchRun(from, to float64) runs.Run {
	m := func(name string, s, se, v float64) runs.Mark {
		x := runs.Mark{Name: name, Time: val(s, se), Rollout: val(s-0.43, se*0.6), Speed: measure.Unknown(), Distance: measure.Unknown()}
		if v > 0 {
			x.Speed = val(v, 0.05)
		}
		return x
	}
	return runs.Run{Kind: runs.Launch, Start: from, End: to, ToMPS: 165 / 3.6, BearingDeg: 84, Marks: []runs.Mark{
		m("0-60 km/h", 2.45, 0.038, 0), m("0-100 km/h", 4.31, 0.041, 0), m("0-60 mph", 4.12, 0.041, 0), m("60 ft", 2.21, 0.04, 15.1),
		m("330 ft", 5.62, 0.04, 31.2), m("1/8 mile", 8.05, 0.038, 38.2), m("0-100 mph", 10.4, 0.045, 0)}}
}

// coastRuns adds five pairs, of which the last roll was braked.
func coastRuns(tr *fusion.Track, at []float64, add func(runs.Run)) {
	i := 8
	for pair := 1; pair <= 5; pair++ {
		for way := range 2 {
			from, to := at[i+1], at[i+2]
			r := runs.Run{Kind: runs.CoastDown, Start: from, End: to, FromMPS: 115 / 3.6, ToMPS: 30 / 3.6, BearingDeg: 84 + 180*float64(way), Pair: pair}
			switch {
			case pair == 5 && way == 1:
				r.Reasons, r.Pair = []finding.Finding{finding.New("coast.braked", finding.Speed("at", 62/3.6))}, 0
				i++
			case pair == 5:
				r.Pair, r.Cautions = 0, []finding.Finding{finding.New("pair.no_counterpart")}
			default:
				r.Curve = fitOf(tr, from, to)
			}
			add(r)
			i += 4 - 2*way
			if way == 1 {
				i += 2
			}
		}
	}
}

func fitOf(tr *fusion.Track, from, to float64) *runs.Curve {
	c := &runs.Curve{}
	for i, t := range tr.T {
		if t >= from && t <= to {
			c.T, c.V = append(c.T, t), append(c.V, tr.V[i])
			c.Fit = append(c.Fit, tr.V[i]+0.12*math.Sin((t-from)/3.1))
		}
	}
	return c
}

func inventedSession() store.Session {
	return store.Session{ID: "ride-20261124-140500", Bytes: 9 << 20, About: store.About{Version: 1, Stage: store.Closed,
		Started: time.Date(2026, 11, 24, 14, 5, 0, 0, time.UTC).Local(), Name: "Panniers, closed road", Bike: "blue naked 700", Setup: "panniers off",
		Seconds: 2520, Metres: 38_200, Measured: time.Unix(1, 0), Found: store.Found{Launches: 1, RollOns: 1, CoastDowns: 9, Pairs: 4, Rejected: 1}}}
}

func ptr(x float64) *float64 { return &x }

func inventedBikes() []store.Bike {
	return []store.Bike{
		{ID: "1", Name: "blue naked 700", Mass: ptr(290), MassSD: ptr(3), Weighed: "truck scale, full tank",
			Setups: []store.Setup{{Name: "panniers off", Changed: "nothing mounted"}, {Name: "panniers on", Changed: "two 35 litre cases", Mass: ptr(302)}}},
		{ID: "2", Name: "old tourer", Mass: ptr(460)},
	}
}

// rideSenses are the states of the sensors in a whole ride with a tunnel.
func rideSenses() []recorder.Sense {
	all := goodSenses()
	all[2].Gaps, all[2].Longest = 2, 4.1
	return all
}

func goodSenses() []recorder.Sense {
	nan := math.NaN()
	return []recorder.Sense{
		{Sensor: sensors.SensorMotion, Condition: sensors.Working, Rate: 100, Count: 900, Last: 9, HSD: nan, SpeedSD: nan},
		{Sensor: sensors.SensorTurn, Condition: sensors.Working, Rate: 100, Count: 900, Last: 9, HSD: nan, SpeedSD: nan},
		{Sensor: sensors.SensorFix, Condition: sensors.Working, Rate: 1, Count: 12, Last: 9, HSD: 3.2, SpeedSD: 0.2},
		{Sensor: sensors.SensorPressure, Condition: "", Rate: nan, Last: nan, HSD: nan, SpeedSD: nan},
	}
}
