package runs

import (
	"math"
	"sort"

	"stillair/fusion"
	"stillair/runs/detect"
	"stillair/runs/engine"
	"stillair/runs/usual"
	"stillair/sensors/units"
)

// drive is a push in one gear, or through several with undetected changes, for
// judging the throttle.
type drive struct {
	from, to float64   // s
	t, v     []float64 // its motion, s, m/s
	doubt    float64   // strength of the white noise of its acceleration, m²/s³
	ratio    float64   // engine speed in 1/min for each m/s; NaN: not known
	lines    gearLine  // of its gear, where no ratio of the ride is known; nil: not known
	bearing  float64   // degrees; NaN: not known
	way      float64   // +1 or −1, against the ride's first; 0: not known
	start    bool      // part of a launch that counts
	mass     float64   // kg
}

const (
	noGears     = 1.0 // ratio of a drive without gears: one road speed is like another
	driveStep   = 0.1 // s
	openingTime = 0.3 // s at its beginning that are left out: the throttle opens
)

// newDrive extracts a push from the track.
func newDrive(track *fusion.Track, from, to, ratio, mass float64, start bool) drive {
	d := drive{from: from, to: to, ratio: ratio, start: start, mass: mass}
	for t := from + openingTime; t <= to; t += driveStep {
		at := track.At(t).V
		if n := len(d.v); n == 0 || at > d.v[n-1] {
			d.t, d.v = append(d.t, t), append(d.v, at)
		}
	}
	if i := sort.SearchFloat64s(track.T, (from+to)/2); i < len(track.Noise) {
		d.doubt = track.Noise[i]
	}
	return d
}

// low and high are its first and last speed, m/s.
func (d drive) low() float64  { return d.v[0] }
func (d drive) high() float64 { return d.v[len(d.v)-1] }

// beginsBelow reports whether a push begins at less than a speed, m/s.
func (d drive) beginsBelow(v float64) bool { return len(d.v) == 0 || d.low() < v }

// throughGears reports whether a push must have gone through several gears
// unless it was in the lowest that the ride shows.
func (d drive) throughGears() bool { return d.ratio != noGears && d.high() > oneGear*d.low() }

// passing is the time at which it passes a speed, s.
func (d drive) passing(v float64) float64 {
	for i := 1; i < len(d.v); i++ {
		if d.v[i] >= v {
			return d.t[i-1] + (d.t[i]-d.t[i-1])*(v-d.v[i-1])/(d.v[i]-d.v[i-1])
		}
	}
	return d.t[len(d.t)-1]
}

// thrust is the mean thrust per mass between two speeds with its standard
// deviation from the recording, and its sensitivity to a head wind of 1 m/s,
// m/s². Drag and rolling resistance are those of an average motorcycle.
func (d drive) thrust(lo, hi float64) (x, sd, wind float64) {
	took := math.Max(d.passing(hi)-d.passing(lo), driveStep)
	middle := (lo + hi) / 2
	return d.push(middle, (hi-lo)/took), math.Sqrt(d.doubt / took), d.drag() * middle
}

// push is the thrust per mass that gives an acceleration at a speed, m/s²: the
// equation of motion on a level road without wind.
func (d drive) push(v, a float64) float64 {
	return (1+usual.RotatingShare)*a + d.drag()/2*v*v + units.StandardGravity*usual.Crr
}

// drag is what the air takes from the acceleration for each m/s of speed and of wind, 1/m.
func (d drive) drag() float64 {
	const density = 1.2 // kg/m³
	return density * usual.CdA / d.mass
}

// gearing is how the gear of a drive compares with that of another: how much faster
// its engine turns at one road speed, where that is known, and whether they are two gears.
func (d drive) gearing(other drive) (scale float64, known, two bool) {
	switch {
	case d.ratio > 0 && other.ratio > 0:
		scale = d.ratio / other.ratio
		return scale, true, math.Abs(scale-1) > sameGear
	case d.lines != nil && other.lines != nil:
		return d.lines.against(other.lines)
	}
	return 1, false, false
}

// gearKnown reports whether something tells the gear.
func (d drive) gearKnown() bool { return d.ratio > 0 || d.lines != nil }

// beside reports whether most of a drive overlaps a span.
func (d drive) beside(from, to float64) bool {
	both := math.Min(d.to, to) - math.Max(d.from, from)
	return both > 0.5*math.Min(d.to-d.from, to-from)
}

// drivesOf are the distinct pushes of the candidates of a ride, of which two
// may cover the same seconds. of is the index of each candidate's drive, of a
// launch's last one; −1: none.
func drivesOf(found []detect.Found, track *fusion.Track, e *tachometer, rolling []engine.Spectrum, bearing func(from, to float64) float64) (all []drive, of []int) {
	of = make([]int, len(found))
	var spans []fusion.Span
	var starts []bool
	for i, f := range found {
		of[i] = -1
		switch {
		case f.Kind == Launch && len(f.Reasons) == 0:
			spans, starts = append(spans, f.Gears...), append(starts, make([]bool, len(f.Gears))...)
			for k := range f.Gears {
				starts[len(starts)-1-k] = true
			}
			if len(f.Gears) > 0 {
				of[i] = len(spans) - 1
			}
		case f.Kind == RollOn || f.Kind == Pull:
			for k, s := range spans {
				if !starts[k] && (drive{from: s.From, to: s.To}).beside(f.From, f.To) {
					of[i] = k
				}
			}
			if of[i] < 0 {
				of[i] = len(spans)
				spans, starts = append(spans, fusion.Span{From: f.From, To: f.To}), append(starts, false)
			}
		}
	}
	all = make([]drive, len(spans))
	mass := e.ride.Mass
	parallel(len(spans), func(k int) {
		s := spans[k]
		ratio := noGears
		if e.ride.Drive.Steps() {
			ratio = e.revs(Run{Start: s.From, End: s.To}).RPMPerMPS
		}
		all[k] = newDrive(track, s.From, s.To, ratio, mass, starts[k])
	})
	e.listen(all, rolling)
	first := math.NaN()
	for k := range all {
		b := bearing(all[k].from, all[k].to)
		if math.IsNaN(first) {
			first = b
		}
		all[k].bearing, all[k].way = b, wayOf(b, first)
	}
	return all, of
}

// wayOf is the direction of a bearing relative to the first, both in degrees:
// +1 or −1; 0 if across or unknown.
func wayOf(bearing, first float64) float64 {
	switch turn := math.Abs(math.Remainder(bearing-first, 360)); {
	case turn < 60:
		return 1
	case turn > 120:
		return -1
	}
	return 0
}
