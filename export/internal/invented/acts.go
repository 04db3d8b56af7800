package invented

import (
	"math"

	"stillair/runs"
	"stillair/runs/pass"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

var unknown = runs.Value{X: math.NaN(), SE: math.NaN()}

// launch accelerates from standstill and times the marks that it passes.
func (m *maker) launch(to float64) {
	start, s0 := m.t, m.s
	rollout := math.NaN()
	var found []runs.Mark
	todo := []runs.Mark{
		{Name: "0-60 km/h", Speed: runs.Value{X: 60 * units.KMH}},
		{Name: "0-100 km/h", Speed: runs.Value{X: 100 * units.KMH}},
		{Name: "0-60 mph", Speed: runs.Value{X: 60 * units.MPH}},
		{Name: "60 ft", Distance: runs.Value{X: 60 * units.Foot}},
		{Name: "1/8 mile", Distance: runs.Value{X: 660 * units.Foot}},
	}
	for m.v < to {
		m.go1(m.pull())
		if math.IsNaN(rollout) && m.s-s0 >= units.Foot {
			rollout = m.t
		}
		for i := 0; i < len(todo); i++ {
			want := todo[i]
			if (want.Speed.X > 0 && m.v < want.Speed.X) || m.s-s0 < want.Distance.X {
				continue
			}
			got := runs.Mark{Name: want.Name, Time: runs.Value{X: m.t - start, SE: 0.021}, Rollout: runs.Value{X: m.t - rollout, SE: 0.017},
				Speed: unknown, Distance: runs.Value{X: m.s - s0, SE: 0.2}}
			if want.Distance.X > 0 {
				got.Speed, got.Distance = runs.Value{X: m.v, SE: 0.06}, unknown
			}
			found = append(found, got)
			todo = append(todo[:i], todo[i+1:]...)
			i--
		}
	}
	m.add(runs.Launch, start, 0).Marks = found
}

// rollOn runs from 50 to 110 km/h on full throttle.
func (m *maker) rollOn() {
	m.toSpeed(14, 2)
	start := m.t
	t60 := math.NaN()
	for m.v < 31 {
		m.go1(m.pull())
		if math.IsNaN(t60) && m.v >= 60*units.KMH {
			t60 = m.t
		}
		if m.v >= 100*units.KMH {
			break
		}
	}
	m.add(runs.RollOn, start, 14).Marks = []runs.Mark{{Name: "60-100 km/h", Time: runs.Value{X: m.t - t60, SE: 0.024},
		Rollout: unknown, Speed: unknown, Distance: runs.Value{X: 57.1, SE: 0.4}}}
}

func (m *maker) stop() {
	m.toSpeed(100*units.KMH, 2)
	start, s0 := m.t, m.s
	m.toStandstill()
	m.add(runs.Stop, start, 100*units.KMH).Marks = []runs.Mark{{Name: "100-0 km/h", Time: runs.Value{X: m.t - start, SE: 0.03},
		Rollout: unknown, Speed: unknown, Distance: runs.Value{X: m.s - s0, SE: 0.3}}}
}

// coastDown rolls free from 30 to 9 m/s; the fourth of a setup is spoilt.
func (m *maker) coastDown(i int) {
	m.toSpeed(31, 3)
	for m.v > 30.5 {
		m.go1(-0.3)
	}
	start, from := m.t, m.v
	curve := &runs.Curve{}
	next, drift := m.t, 0.0
	for m.v > 9 {
		if m.t >= next {
			drift = 0.9*drift + 0.05*m.rng.NormFloat64()
			curve.T, curve.V, curve.Fit = append(curve.T, m.t), append(curve.V, m.v+drift), append(curve.Fit, m.v)
			next++
		}
		m.go1(-rolling(m.setup, m.v))
	}
	r := m.add(runs.CoastDown, start, from)
	if i%2 == 1 {
		r.BearingDeg = 264
	} else {
		m.pair++
	}
	if m.setup == "panniers off" && i/2 == 3 {
		r.Reasons = []finding.Finding{finding.New("coast.slowed_suddenly")}
		return
	}
	r.Pair, r.Curve = m.pair, curve
	if i == 1 {
		r.Cautions = []finding.Finding{finding.New("coast.wind_changed", finding.Wind("by", 2).With(0.4))}
	}
}

// roadLoads adds estimates a little off the truth.
func (m *maker) roadLoads() {
	for i, setup := range []string{"panniers off", "panniers on"} {
		l := runs.RoadLoad{Setup: setup, Pairs: 4 - (1 - i), Mass: Mass, Density: Density, DoF: 6.3,
			CdA: runs.Value{X: CdA[setup] + 0.004, SE: 0.0084}, Crr: runs.Value{X: Crr - 0.0003, SE: 0.00042}, Cov: -3.1e-6,
			A: runs.Value{X: 51.2, SE: 1.2}, C: runs.Value{X: 0.334, SE: 0.005}}
		l.CdACI, l.CrrCI = l.CdA.Interval(0.95, l.DoF), l.Crr.Interval(0.95, l.DoF)
		for _, r := range m.res.Runs {
			if r.Kind == runs.CoastDown && r.Setup == setup && r.Accepted() {
				l.Runs = append(l.Runs, r.ID)
			}
		}
		if i == 0 {
			l.Notes = []finding.Finding{finding.New("load.pairs_disagree", finding.Count("pairs", 1))}
		}
		m.res.RoadLoads = append(m.res.RoadLoads, l)
	}
}

// passes adds two that were never ridden: one that counts, and one that does not.
func (m *maker) passes() {
	over := func(name string, far, there, back float64) pass.Figure {
		se := 0.9 / math.Sqrt(far)
		half := runs.Value{X: (there - back) / 2, SE: se / math.Sqrt2}
		return pass.Figure{Name: name, Distance: far, There: runs.Value{X: there, SE: se}, Back: runs.Value{X: back, SE: se},
			Mean: runs.Value{X: (there + back) / 2, SE: half.SE}, Half: half}
	}
	there, back := pass.Leg{Start: 100, End: 131.5, BearingDeg: 84, Length: 1690}, pass.Leg{Start: 214, End: 249, BearingDeg: 264, Length: 1780}
	counts := runs.Pass{Setup: "panniers off", There: there, Back: back,
		Figures: []pass.Figure{over("1 km", 1000, 54.21, 51.87), over("500 m", 500, 54.3, 51.95), over("200 m", 200, 54.33, 52.02)}}
	there.Start, there.End, back.Start, back.End = 1000, 1013, 1090, 1104
	not := runs.Pass{Setup: "panniers on", There: there, Back: back, Figures: []pass.Figure{over("200 m", 200, 33.5, 33.1)},
		Reasons: []finding.Finding{finding.New("pass.eased")}}
	m.res.Passes = []runs.Pass{counts, not}
}
