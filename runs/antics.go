package runs

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion"
	"stillair/runs/marks"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// What may happen in a launch in addition to the acceleration. A wheelie turns the
// phone, and moves it relative to the rear wheel; the gyroscope sees it. A rear wheel
// that spins or hops, or a hand that eases the throttle, makes the thrust drop and
// come back within one gear, which no torque curve does by so much.
const (
	noseUp      = 0.12 // rad above which the front wheel has left the road: springs give half of that at most (common practice)
	noseDown    = 0.5  // part of it that must be lost again
	noseRests   = 1.5  // s before the launch in which the gyroscope's bias is measured, without the last of them
	noseLeads   = 0.3  // s, those last
	noseAfter   = 2.0  // s after the launch in which the wheel may come down
	slowestPush = 1.0  // m/s² of acceleration at least, when a speed is passed
	phoneHigh   = 1.0  // m of the phone above the road, on the bars or in a pocket (common practice)

	thrustDrops = 0.25 // part of the thrust that must be missing
	dropOver    = 0.3  // s over which it is taken
	dropLasts   = 0.45 // s that it must last: a quick change of gear takes less, a slow one is found as such
	dropWithin  = 4.0  // s of the start: later, in higher gears, a rear wheel does neither
	dropSure    = 4.0  // standard deviations of the noise of the recording that it must exceed
)

// allowForAntics adds a caution to a launch with a wheelie, whose times it widens, or
// with a drop of its thrust within one gear.
func (r *Run) allowForAntics(log *sensors.Log, track *fusion.Track, gears []fusion.Span, mass float64) {
	nose := noseOf(log.Motion, track.Mounts, r.Start, r.End)
	if most, at := nose.wheelie(r.End); most > 0 {
		r.Cautions = append(r.Cautions, finding.New(codeWheelie, finding.Angle("by", most), finding.Time("after", at-r.Start)))
		r.allowForWheelie(nose, track)
	}
	var worst drop
	for _, g := range gears {
		if d := newDrive(track, g.From, g.To, noGears, mass, true).dropped(); d.by > worst.by && d.at < r.Start+dropWithin {
			worst = d
		}
	}
	if worst.by > 0 {
		r.Cautions = append(r.Cautions, finding.New(codeThrustDropped, finding.Share("by", worst.by), finding.Time("for", worst.lasts), finding.Time("after", worst.at-r.Start)))
	}
}

// allowForWheelie widens the figures of a launch by the movement of a phone that a
// wheelie carries back relative to the rear wheel: its height times the angle, at its
// height times the rate of turn. A wheelie that begins before the first foot is rolled
// also hides when that was.
func (r *Run) allowForWheelie(nose nose, track *fusion.Track) {
	for i := range r.Marks {
		m := &r.Marks[i]
		if !m.Rollout.Known() || !m.Time.Known() {
			continue
		}
		rolled := r.Start + m.Time.X - m.Rollout.X
		passed := track.At(rolled + m.Rollout.X)
		first, _ := nose.at(rolled)
		angle, rate := nose.at(passed.T)
		if angle < noseUp/2 { // down again
			angle, rate = 0, 0
		}
		ends := phoneHigh * rate / math.Max(passed.A, slowestPush)
		if _, distance, _ := marks.GoalOf(m.Name); distance > 0 {
			ends = phoneHigh * angle / passed.V
		}
		late := math.Hypot(phoneHigh*first/track.At(rolled).V, ends)
		m.Time.SE, m.Rollout.SE = math.Hypot(m.Time.SE, late), math.Hypot(m.Rollout.SE, late)
		m.Speed.SE = math.Hypot(m.Speed.SE, phoneHigh*rate)
	}
}

// nose is how far the phone has turned upwards since before a launch.
type nose struct{ t, angle []float64 } // s, rad

// noseOf integrates the gyroscope; empty without one, or where the phone moved in its
// holder.
func noseOf(motion []sensors.Motion, mounts []fusion.Mount, from, to float64) (n nose) {
	k := sort.Search(len(mounts), func(i int) bool { return mounts[i].To >= from })
	if k == len(mounts) || mounts[k].From > from || mounts[k].To < to {
		return nose{}
	}
	left := r3.Cross(mounts[k].Up, mounts[k].Forward)
	bias, still, angle := 0.0, 0.0, 0.0
	first := sort.Search(len(motion), func(i int) bool { return motion[i].T >= from-noseRests })
	for i := first + 1; i < len(motion) && motion[i].T < to+noseAfter; i++ {
		rate := -r3.Dot(motion[i].Turn, left) // a turn about the left lowers the nose
		if motion[i].T < from-noseLeads {
			bias, still = bias+rate, still+1
			continue
		}
		if still == 0 || math.IsNaN(rate) {
			return nose{}
		}
		angle += (rate - bias/still) * (motion[i].T - motion[i-1].T)
		n.t, n.angle = append(n.t, motion[i].T), append(n.angle, angle)
	}
	return n
}

// wheelie is how far a wheelie before a time raised the nose, rad, and when it was
// highest; 0 if there was none.
func (n nose) wheelie(before float64) (most, at float64) {
	down := false
	for i, angle := range n.angle {
		if angle > most && n.t[i] < before {
			most, at, down = angle, n.t[i], false
		}
		down = down || angle < (1-noseDown)*most
	}
	if most < noseUp || !down {
		return 0, 0
	}
	return most, at
}

// at is the angle and its rate at a time, rad and rad/s, the latter over a tenth of a
// second.
func (n nose) at(t float64) (angle, rate float64) {
	const side = 0.05 // s
	index := func(t float64) int { return max(0, min(sort.SearchFloat64s(n.t, t), len(n.t)-1)) }
	i, j := index(t-side), index(t+side)
	if j > i {
		rate = (n.angle[j] - n.angle[i]) / (n.t[j] - n.t[i])
	}
	return n.angle[index(t)], rate
}

// drop is the largest part by which a thrust was lower than both before and after, when
// that was, and for how long at least thrustDrops of it was missing.
type drop struct{ by, at, lasts float64 }

// dropped finds the drop of a drive in one gear; by is 0 if there is none.
func (d drive) dropped() (worst drop) {
	t, _, thrust := d.thrusts(dropOver)
	n := len(thrust)
	if n == 0 {
		return worst
	}
	after := make([]float64, n)
	after[n-1] = thrust[n-1]
	for i := n - 2; i >= 0; i-- {
		after[i] = math.Max(thrust[i], after[i+1])
	}
	noise := dropSure * math.Sqrt(d.doubt/dropOver)
	before := 0.0
	var now drop
	for i, x := range thrust {
		before = math.Max(before, x)
		level := math.Min(before, after[i])
		low := 1 - x/level
		if level-x < noise || low < thrustDrops {
			now = drop{}
			continue
		}
		if now.by < low {
			now.by, now.at = low, t[i]
		}
		if now.lasts += driveStep; now.lasts > dropLasts && now.by > worst.by {
			worst = now
		}
	}
	return worst
}
