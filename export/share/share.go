// Package share removes from a ride what a rider need not disclose when it leaves
// the phone.
//
// A track shows where somebody lives. By default the first and the last 200 m
// of a ride are cut off completely: not only the places, since speed and turn rate
// would let anyone retrace the path. Where the ride passes within 200 m of
// either end in between, its places are removed and the rest stays. What is left
// begins at time and distance zero, so that neither shows how far away home is.
//
// Results do not need to know where on Earth a ride was. Moved keeps the shape
// of the ride, which pairs coast-downs on one road, and lays it at latitude
// and longitude zero, in the sea off Africa. Without leaves no place at all;
// coast-downs can then be paired by bearing only.
//
// Sound is left out unless it was asked for: it may contain voices.
package share

import (
	"math"
	"time"

	"stillair/sensors"
)

// Places is the treatment of positions.
type Places string

// What may become of them.
const (
	Kept    Places = "kept"
	Moved   Places = "moved"   // shape kept, place on Earth changed
	Without Places = "without" // no latitude, longitude or altitude
)

// Choice is what the rider chose to give away.
type Choice struct {
	Places  Places
	EndsCut float64 // length cut off at each end, m
	Date    Date    // what is disclosed of date and time of day
	Sound   bool    // keep the sound
}

// Default is the default choice for sharing.
func Default() Choice { return Choice{Places: Kept, EndsCut: 200, Date: Dated} }

// Date is the treatment of date and time of day.
type Date string

// What may become of them.
const (
	Dated   Date = "exact"
	Day     Date = "day"  // the day of the ride, and no time of day
	Undated Date = "none" // neither
)

// earthRadius is that of a sphere with the Earth's mean radius (IUGG), m.
const earthRadius = 6371008.8

// Apply returns a copy of the log with no more in it than the choice allows.
// The log itself is not changed. A ride shorter than both ends together comes
// back without samples.
func Apply(log *sensors.Log, c Choice) *sensors.Log {
	out := *log
	w := WindowOf(log, c)
	out.Notes, out.Ride = w.notes(log.Notes), w.ride(log.Ride)
	out.Motion = left(w, log.Motion, func(m *sensors.Motion) *float64 { return &m.T })
	out.Pressure = left(w, log.Pressure, func(p *sensors.Pressure) *float64 { return &p.T })
	out.Sound = nil
	if c.Sound {
		out.Sound = left(w, log.Sound, func(s *sensors.Sound) *float64 { return &s.T })
	}
	out.States = left(w, log.States, func(s *sensors.State) *float64 { return &s.T })
	for i := range out.States {
		out.States[i].Detail = w.detail(out.States[i])
	}
	out.Fixes = left(w, log.Fixes, func(f *sensors.Fix) *float64 { return &f.T })
	near := nearEnds(log.Fixes, c.EndsCut)
	for i := range out.Fixes {
		f := &out.Fixes[i]
		if near(*f) {
			hide(f)
		}
		if c.Date != Dated {
			f.UTC = time.Time{}
		}
	}
	// Moved by what is left: a shape that somebody knows again must not lead to
	// where the ride began.
	place := placer(out.Fixes, c.Places)
	for i := range out.Fixes {
		place(&out.Fixes[i])
	}
	return &out
}

// left returns the samples within the window, in its times.
func left[T any](w Window, x []T, at func(*T) *float64) []T {
	var out []T
	for _, v := range x {
		if t := at(&v); w.Has(*t) {
			*t = w.Time(*t)
			out = append(out, v)
		}
	}
	return out
}

// ends returns the times between which the ride is further than length from
// its start and from its end, along the path that the speeds give.
func ends(fixes []sensors.Fix, length float64) (from, to float64) {
	if length <= 0 || len(fixes) == 0 {
		return math.Inf(-1), math.Inf(1)
	}
	from, to = math.Inf(1), math.Inf(-1)
	for i, gone := 1, 0.0; i < len(fixes); i++ {
		if gone += step(fixes[i-1], fixes[i]); gone >= length {
			from = fixes[i].T
			break
		}
	}
	for i, left := len(fixes)-1, 0.0; i > 0; i-- {
		if left += step(fixes[i-1], fixes[i]); left >= length {
			to = fixes[i-1].T
			break
		}
	}
	return from, to
}

// step is the distance between two fixes: the lesser of what their speeds give
// and, where both have places, the straight line, so that neither a gap nor a
// jump of the receiver cuts too little.
func step(a, b sensors.Fix) float64 {
	d := (a.Speed + b.Speed) / 2 * (b.T - a.T)
	if math.IsNaN(d) || d < 0 {
		return 0
	}
	if a.HasPosition() && b.HasPosition() {
		d = math.Min(d, distance(a, b))
	}
	return d
}

func distance(a, b sensors.Fix) float64 {
	const rad = math.Pi / 180
	north := (b.LatDeg - a.LatDeg) * rad
	east := wrap(b.LonDeg-a.LonDeg) * rad * math.Cos((a.LatDeg+b.LatDeg)/2*rad)
	return earthRadius * math.Hypot(north, east)
}

func wrap(deg float64) float64 { return math.Remainder(deg, 360) }

// nearEnds marks the fixes within length of the start or end of the ride.
func nearEnds(fixes []sensors.Fix, length float64) func(sensors.Fix) bool {
	var ends []sensors.Fix
	for i := range fixes {
		if fixes[i].HasPosition() {
			ends = append(ends, fixes[i])
			break
		}
	}
	for i := len(fixes) - 1; i >= 0; i-- {
		if fixes[i].HasPosition() {
			ends = append(ends, fixes[i])
			break
		}
	}
	return func(f sensors.Fix) bool {
		for _, e := range ends {
			if f.HasPosition() && distance(e, f) < length {
				return true
			}
		}
		return false
	}
}

func hide(f *sensors.Fix) {
	f.LatDeg, f.LonDeg, f.Alt = math.NaN(), math.NaN(), math.NaN()
}

// placer returns what is done to the place of each fix.
func placer(fixes []sensors.Fix, p Places) func(*sensors.Fix) {
	switch p {
	case Without:
		return hide
	case Moved:
		return mover(fixes)
	}
	return func(*sensors.Fix) {}
}

// mover moves the first place to latitude and longitude zero and keeps
// distances north and east of it.
func mover(fixes []sensors.Fix) func(*sensors.Fix) {
	for _, first := range fixes { // a copy, so that the original fix is unchanged
		if !first.HasPosition() {
			continue
		}
		narrow, firstAlt := math.Cos(first.LatDeg*math.Pi/180), firstAltitude(fixes)
		return func(f *sensors.Fix) {
			if !f.HasPosition() {
				return
			}
			f.LatDeg -= first.LatDeg
			f.LonDeg = wrap(f.LonDeg-first.LonDeg) * narrow
			f.Alt -= firstAlt
		}
	}
	return func(*sensors.Fix) {}
}

// firstAltitude is the first that is known, 0 where none is.
func firstAltitude(fixes []sensors.Fix) float64 {
	for _, f := range fixes {
		if !math.IsNaN(f.Alt) {
			return f.Alt
		}
	}
	return 0
}
