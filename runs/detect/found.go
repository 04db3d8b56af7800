package detect

import (
	"math"
	"sort"

	"stillair/fusion"
	"stillair/runs/marks"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Kind is what the rider did in a run.
type Kind string

// The kinds of run.
const (
	Launch    Kind = "launch"     // from standstill, full throttle
	RollOn    Kind = "roll-on"    // through a pair of speeds, full throttle
	Pull      Kind = "pull"       // full throttle in one gear
	CoastDown Kind = "coast-down" // clutch in, rolling free
	Stop      Kind = "stop"       // braking from speed to standstill
)

// Found is one candidate. With reasons it is rejected.
type Found struct {
	Kind     Kind
	From, To float64 // s on the log's clock
	Reasons  []finding.Finding
	Cautions []finding.Finding
	Breaks   []fusion.Span // where throttle, clutch, gear lever or brake changed the acceleration suddenly
	Gears    []fusion.Span // of a push: the parts in one gear, in order
	Power    float64       // of a push: mean power at the wheel, as on an average motorcycle, W/kg
}

// Ride is the input of detection.
type Ride struct {
	Track   *fusion.Track
	Fixes   []sensors.Fix     // for gaps between fixes; may be nil
	Mass    float64           // kg as ridden; NaN: any motorcycle
	RollOns []marks.SpeedPair // the pairs asked for

	// EngineTurns reports for each span, a coast-down, whether the vibration shows the
	// engine turning with the wheels. Nil: not known.
	EngineTurns func(spans []fusion.Span) []bool

	LeastPower float64 // from which a push from rolling is considered, W/kg; 0: the default, above everyday riding
}

// Find returns the candidates in order of time.
func Find(r Ride) []Found {
	if len(r.Track.T) < 20 {
		return nil
	}
	s := newSeries(r.Track)
	var found []Found
	pushes := findPushes(s)
	found = append(found, launches(s, pushes)...)
	found = append(found, rollOns(s, pushes, r.RollOns, r.leastPower())...)
	found = append(found, pulls(s, pushes, r.leastPower())...)
	rolling := coastDowns(s, massRange(r.Mass))
	r.decideClutch(s, rolling)
	found = append(append(found, rolling...), missed(s, rolling)...)
	found = append(found, stops(s)...)
	for i := range found {
		found[i].Reasons = append(found[i].Reasons, r.recordingFaults(found[i])...)
		r.bridge(&found[i])
	}
	sort.SliceStable(found, func(i, j int) bool { return found[i].From < found[j].From })
	return found
}

// leastPower is the power from which an acceleration is considered, W/kg.
func (r Ride) leastPower() float64 {
	if r.LeastPower > 0 {
		return r.LeastPower
	}
	return rollPower
}

// silence is the longest time without a fix within a run, s. For three seconds
// the accelerometer alone gives the speed well enough.
const silence = 3.5

// recordingFaults are the faults of the recording that invalidate a candidate.
func (r Ride) recordingFaults(f Found) []finding.Finding {
	var why []finding.Finding
	if gap := longestSilence(r.Fixes, f.From+r.Track.Lag.Seconds, f.To+r.Track.Lag.Seconds); gap > silence {
		why = append(why, finding.New(codeNoFixes, finding.Time("for", gap)))
	}
	for _, g := range r.Track.Gaps {
		if code := f.spoiltBy(g); len(why) == 0 && code != "" {
			why = append(why, finding.New(code, finding.Time("for", g.To-g.From)))
		}
	}
	for _, d := range r.Track.GNSSOnly {
		if d.From < f.To && d.To > f.From && f.Kind != CoastDown {
			why = append(why, finding.New(codeGNSSOnly, finding.Of("why", d.Why)))
			break
		}
	}
	if gained, felt, ok := unconfirmed(r.Track, f); ok && len(why) == 0 {
		why = append(why, finding.New(codeUnfelt, finding.Speed("gained", gained), finding.Speed("felt", felt)))
	}
	for i := 1; i < len(r.Track.Mounts); i++ {
		if at := r.Track.Mounts[i].From; at > f.From && at < f.To {
			why = append(why, finding.New(codePhoneMoved))
		}
	}
	return why
}

// Limits of gaps in the motion samples. Gaps up to bridged are covered by the
// fixes and the run on both sides, with the smoother's uncertainty; the road
// load is fitted to the fixes alone. But the beginning of a launch cannot be
// recovered.
const (
	bridged                 = 1.05     // s: a gap of 1 s, and the readings at its edges
	beforeStart, afterStart = 0.5, 1.5 // s about the beginning of a launch
)

// spoiltBy is the reason why a gap invalidates a candidate, or "".
func (f Found) spoiltBy(hole fusion.Span) finding.Code {
	overlaps := func(from, to float64) bool { return hole.From < to && hole.To > from }
	short := hole.To-hole.From <= bridged && (f.Kind == Launch || f.Kind == RollOn || f.Kind == CoastDown)
	switch {
	case short && f.Kind == Launch && overlaps(f.From-beforeStart, f.From+afterStart):
		return codeHoleAtStart
	case !short && overlaps(f.From, f.To):
		return codeHole
	}
	return ""
}

// bridge adds cautions about the gaps that a run bridges. The motion in them is
// unknown, so they count as breaks.
func (r Ride) bridge(f *Found) {
	for _, g := range r.Track.Gaps {
		if g.From < f.To && g.To > f.From && f.spoiltBy(g) == "" {
			f.Cautions = append(f.Cautions, finding.New(codeHoleBridged, finding.Time("for", g.To-g.From)))
			f.Breaks = append(f.Breaks, g)
		}
	}
}

// longestSilence is the longest time without a fix that overlaps the time from
// a to b.
func longestSilence(fixes []sensors.Fix, a, b float64) float64 {
	if len(fixes) == 0 {
		return 0
	}
	i := sort.Search(len(fixes), func(i int) bool { return fixes[i].T > a })
	longest := 0.0
	for ; i < len(fixes); i++ {
		if i > 0 {
			longest = math.Max(longest, fixes[i].T-fixes[i-1].T)
		}
		if fixes[i].T >= b {
			return longest
		}
	}
	return math.Max(longest, b-fixes[len(fixes)-1].T)
}
