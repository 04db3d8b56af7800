package runs

import (
	"math"

	"stillair/fusion"
	"stillair/runs/engine"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// RevsFrom is the source of the engine speed of a power curve. It is the gear
// alone if the rider entered only one gear.
type RevsFrom = finding.Code

// Sources of engine speed.
const (
	NoRevs        RevsFrom = ""
	FromGear      RevsFrom = "revs.gear"
	FromVibration RevsFrom = "revs.vibration"
	FromSound     RevsFrom = "revs.sound"
	FromBoth      RevsFrom = "revs.both"
)

// Revs is what is known of the engine speed in a pull.
type Revs struct {
	Gear      string  // its name in ride.json; empty: not known
	RPMPerMPS float64 // engine speed in 1/min per m/s; NaN: not known
	From      RevsFrom
	Speed     engine.Speed // from the engine's orders, if its ratio was searched for
	Split     bool         // vibration and sound give different speeds, so neither is used
}

func noRevs() Revs { return Revs{RPMPerMPS: math.NaN()} }

// known reports whether anything is known of the gear.
func (r Revs) known() bool { return !math.IsNaN(r.RPMPerMPS) }

// tachometer searches the phone's vibration and sound for engine orders.
type tachometer struct {
	log    *sensors.Log
	track  *fusion.Track
	ride   sensors.Ride
	search engine.Search
	late   Value // latency of the sound's time stamps, s
}

// lowestOfLimit is the lowest engine speed of a pull as a fraction of the
// limit, and lowestRPM an absolute minimum (common practice). Both are low on
// purpose: a search that excludes the true engine speed would find its double.
const (
	lowestOfLimit = 0.12
	lowestRPM     = 1000.0
)

func newTachometer(log *sensors.Log, track *fusion.Track, ride sensors.Ride, pulls []*Run) *tachometer {
	e := &tachometer{log: log, track: track, ride: ride, search: engine.Kind(ride.Cylinders)}
	e.search.Lowest = math.Max(lowestRPM, lowestOfLimit*ride.LimitRPM)
	e.search.Highest = ride.LimitRPM
	if len(ride.Gears) == 0 && len(log.Sound) > 0 {
		e.late = e.lateness(pulls)
	}
	return e
}

// revs identifies the gear of a pull: the only one that was entered, or the one
// whose engine orders appear in vibration and sound. If no gear was entered but
// the engine's speed limit, the ratio itself is searched.
func (e *tachometer) revs(r Run) Revs {
	switch {
	case e.ride.Drive == sensors.DriveVariator:
		return noRevs() // its engine speed is not proportional to road speed
	case len(e.ride.Gears) == 1:
		return Revs{Gear: e.ride.Gears[0].Name, RPMPerMPS: e.ride.Gears[0].RPMPerMPS, From: FromGear}
	case len(e.ride.Gears) > 1:
		return e.gear(r)
	case e.ride.LimitRPM > 0:
		return e.ratio(r)
	}
	return noRevs()
}

// gear is the entered gear on which vibration and sound agree, or that the only
// one with a signal shows.
func (e *tachometer) gear(r Run) Revs {
	ratios := make([]float64, len(e.ride.Gears))
	for i, g := range e.ride.Gears {
		ratios[i] = g.RPMPerMPS
	}
	felt, errFelt := engine.Pick(axes(e.log, e.track, r), ratios, e.ride.Cylinders)
	heard, errHeard := e.gearBySound(r, ratios)
	which, from := felt, FromVibration
	switch {
	case errFelt != nil && errHeard != nil:
		return noRevs()
	case errFelt == nil && errHeard == nil && felt != heard:
		return Revs{RPMPerMPS: math.NaN(), Split: true}
	case errFelt == nil && errHeard == nil:
		from = FromBoth
	case errHeard == nil:
		which, from = heard, FromSound
	}
	return Revs{Gear: e.ride.Gears[which].Name, RPMPerMPS: ratios[which], From: from}
}

// latencies are the trial latencies of the sound, s, close enough together that one
// of them shows the lines unblurred.
var latencies = [...]float64{0, 0.03, 0.06, 0.09, 0.12}

// gearBySound identifies the gear by sound. The latency of the sound is
// unknown: the gear must be the same at all trial latencies at which the engine
// stands out.
func (e *tachometer) gearBySound(r Run, ratios []float64) (which int, err error) {
	which = -1
	for _, late := range latencies {
		k, errLate := engine.Pick([]engine.Signal{heard(e.log, e.track, r, late)}, ratios, e.ride.Cylinders)
		switch {
		case errLate != nil:
			err = errLate
		case which >= 0 && k != which:
			return -1, engine.ErrNoLock
		default:
			which = k
		}
	}
	if which >= 0 {
		return which, nil
	}
	return -1, err
}

// roughRevs is the relative standard uncertainty up to which an engine speed is
// given.
const roughRevs = 0.003

// sameRatio is the largest relative difference of the ratios from vibration and
// from sound.
const sameRatio = 0.01

// ratio searches the ratio of engine speed to road speed in vibration and in
// sound. Where both lock, they must agree, and the clearer one counts.
func (e *tachometer) ratio(r Run) Revs {
	shaken, sound := vibration(e.log, e.track, r), heard(e.log, e.track, r, e.late.X)
	felt, errFelt := engine.Find(shaken, e.search)
	heard, errHeard := engine.Find(sound, e.search)
	best, clearer, from := felt, shaken, FromVibration
	switch {
	case errFelt != nil && errHeard != nil:
		return noRevs()
	case errFelt == nil && errHeard == nil:
		if math.Abs(felt.RPMPerMPS.X/heard.RPMPerMPS.X-1) > sameRatio {
			return Revs{RPMPerMPS: math.NaN(), Split: true}
		}
		from = FromBoth
		if heard.Strength > felt.Strength {
			best, clearer = heard, sound
		}
	case errHeard == nil:
		best, clearer, from = heard, sound, FromSound
	}
	speed := engine.Follow(clearer, best, e.search)
	if best == heard {
		for i, t := range speed.T {
			speed.SE[i] = math.Hypot(speed.SE[i], speed.RPM[i]*e.growth(t)*e.late.SE)
		}
	}
	return Revs{RPMPerMPS: best.RPMPerMPS.X, From: from, Speed: speed.Sure(roughRevs)}
}

// Gear is the gear of a roll-on or pull, as ride.json names it: that of the pull
// which covers most of it; "" where it is not known.
func (r *Result) Gear(run Run) string {
	const most = 0.8 // of the roll-on
	for _, p := range r.Runs {
		both := math.Min(run.End, p.End) - math.Max(run.Start, p.Start)
		if p.Kind == Pull && p.Revs != nil && both > most*(run.End-run.Start) {
			return p.Revs.Gear
		}
	}
	return ""
}
