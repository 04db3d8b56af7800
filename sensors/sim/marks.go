package sim

import (
	"math"
	"sort"

	"stillair/sensors/units"
)

// at returns the index of the last moment not after t, clamped so that there is a
// next one.
func (tr *Truth) at(t float64) int {
	i := sort.Search(len(tr.Moments), func(i int) bool { return tr.Moments[i].T > t }) - 1
	return min(max(i, 0), len(tr.Moments)-2)
}

// Hermite polynomial from (y0, d0) to (y1, d1) over h at the fraction u.
func hermite(y0, d0, y1, d1, h, u float64) float64 {
	u2 := u * u
	u3 := u2 * u
	return (2*u3-3*u2+1)*y0 + (u3-2*u2+u)*h*d0 + (3*u2-2*u3)*y1 + (u3-u2)*h*d1
}

// V returns the true speed at t, m/s.
func (tr *Truth) V(t float64) float64 {
	i := tr.at(t)
	a, b := tr.Moments[i], tr.Moments[i+1]
	return hermite(a.V, a.A, b.V, b.A, b.T-a.T, (t-a.T)/(b.T-a.T))
}

// S returns the distance ridden until t, m.
func (tr *Truth) S(t float64) float64 {
	i := tr.at(t)
	a, b := tr.Moments[i], tr.Moments[i+1]
	return hermite(a.S, a.V, b.S, b.V, b.T-a.T, (t-a.T)/(b.T-a.T))
}

// TimeAtSpeed returns the first time from t on at which the speed crosses v in
// either direction; NaN if it never does.
func (tr *Truth) TimeAtSpeed(t, v float64) float64 {
	above := tr.V(t) >= v
	for i := tr.at(t) + 1; i < len(tr.Moments); i++ {
		if (tr.Moments[i].V >= v) != above {
			return bisect(max(t, tr.Moments[i-1].T), tr.Moments[i].T, func(x float64) bool { return (tr.V(x) >= v) != above })
		}
	}
	return math.NaN()
}

// TimeAtDist returns when the bike is d metres further than at t; NaN if it
// never is.
func (tr *Truth) TimeAtDist(t, d float64) float64 {
	goal := tr.S(t) + d
	i := sort.Search(len(tr.Moments), func(i int) bool { return tr.Moments[i].S >= goal })
	if i == len(tr.Moments) {
		return math.NaN()
	}
	return bisect(max(t, tr.Moments[max(i-1, 0)].T), tr.Moments[i].T, func(x float64) bool { return tr.S(x) >= goal })
}

// bisect returns where done turns true between lo and hi, to a microsecond.
func bisect(lo, hi float64, done func(float64) bool) float64 {
	for hi-lo > 1e-6 {
		if mid := (lo + hi) / 2; done(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return (lo + hi) / 2
}

// Through returns the time that the event took from the first crossing of one
// speed (m/s) to that of another, for a roll-on or a stop; NaN if the event
// does not pass both. From speed 0 it counts from first movement.
func (tr *Truth) Through(d Event, from, to float64) float64 {
	start := d.Start
	if from > 0 {
		start = tr.TimeAtSpeed(d.Start, from)
	}
	if math.IsNaN(start) {
		return start
	}
	if end := tr.TimeAtSpeed(start, to); end <= d.End {
		return end - start
	}
	return math.NaN()
}

// StopDist returns the distance of a stop from the speed (m/s) to standstill,
// m; NaN if the event does not begin above it.
func (tr *Truth) StopDist(d Event, from float64) float64 {
	start := tr.TimeAtSpeed(d.Start, from)
	if d.Kind != KindStop || !(start < d.End) {
		return math.NaN()
	}
	return tr.S(d.End) - tr.S(start)
}

// Mark is the truth of one standard mark of a launch.
type Mark struct {
	Name    string
	Time    float64 // s from first movement
	Rollout float64 // s from 0.3048 m after first movement
	Speed   float64 // m/s at the mark; for 1/8 and 1/4 mile the mean over the last 66 ft; 0 for marks of speed
}

// Marks returns the standard marks that the launch reached before its end.
func (tr *Truth) Marks(d Event) []Mark {
	var marks []Mark
	add := func(name string, t, speed float64) {
		if t <= d.End {
			marks = append(marks, Mark{Name: name, Time: t - d.Start, Rollout: t - d.Rollout, Speed: speed})
		}
	}
	for _, m := range []struct {
		name string
		v    float64
	}{{"0-60 km/h", 60 * units.KMH}, {"0-100 km/h", 100 * units.KMH}, {"0-60 mph", 60 * units.MPH}, {"0-100 mph", 100 * units.MPH}} {
		add(m.name, tr.TimeAtSpeed(d.Start, m.v), 0)
	}
	for _, m := range []struct {
		name string
		feet float64
		trap float64 // ft, length over which the speed is the mean; 0: at the mark
	}{{"60 ft", 60, 0}, {"330 ft", 330, 0}, {"1/8 mile", 660, 66}, {"1000 ft", 1000, 0}, {"1/4 mile", 1320, 66}, {"1 km", 1000 / units.Foot, 0}} {
		t := tr.TimeAtDist(d.Start, m.feet*units.Foot)
		if math.IsNaN(t) {
			continue
		}
		speed := tr.V(t)
		if m.trap > 0 {
			speed = m.trap * units.Foot / (t - tr.TimeAtDist(d.Start, (m.feet-m.trap)*units.Foot))
		}
		add(m.name, t, speed)
	}
	return marks
}

// Of returns the events of a kind.
func (tr *Truth) Of(k Kind) []Event {
	var ds []Event
	for _, d := range tr.Events {
		if d.Kind == k {
			ds = append(ds, d)
		}
	}
	return ds
}
