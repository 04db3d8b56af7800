package detect

import (
	"math"
	"slices"

	"stillair/fusion"
	"stillair/sensors/median"
)

// push is an acceleration without an interruption longer than a gear change, as
// grid points.
type push struct {
	from, to int
	standing bool  // it starts at standstill
	shifts   []int // gear changes: the lowest points of the thrust
	dips     []int // possible gear changes: the same and weaker ones
}

const (
	pushing    = 0.3  // least acceleration of a push, m/s²
	idle       = 0.15 // mean acceleration that counts as none, m/s²
	shiftTime  = 1.3  // longest break for a gear change, s
	pushGain   = 5.0  // smallest gain of speed considered, m/s
	opening    = 0.6  // maximum duration of opening the throttle or closing the clutch, s
	shiftDepth = 0.5  // share of the acceleration lost in a gear change, averaged over 0.4 s
	goneShare  = 0.85 // share lost when the clutch is pulled slowly
	shiftDrop  = 1.0  // and the minimum loss, m/s²
	sureDoubts = 5.0  // standard deviations of vibration from which the loss is certain
	lostShare  = 0.5  // share of the acceleration over a whole second that is lost with it
)

// findPushes returns every acceleration in the ride.
func findPushes(s *series) []push {
	var out []push
	for i := 0; i < s.len(); i++ {
		if s.quick[i] < pushing || s.still[i] {
			continue
		}
		end := pushEnd(s, i)
		if s.v[end]-s.v[i] >= pushGain {
			out = append(out, newPush(s, i, end))
		}
		i = end
	}
	return out
}

// pushEnd is the last point of a push from i, gear changes included: until the
// bike has hardly gained speed for longer than a gear change.
func pushEnd(s *series, i int) int {
	patience := int(shiftTime / step)
	last, looked := i, i
	for j := i; j < s.len() && !s.still[j]; j++ {
		if s.quick[j] >= pushing {
			last = j
		}
		back := max(i, j-patience)
		if j-i < patience || j < looked || s.v[j]-s.v[back] >= idle*s.seconds(back, j) {
			continue
		}
		if !s.artefact(i, s.deepest(back, j), s.len()) {
			break
		}
		looked = j + patience
	}
	return last
}

// deepest is the grid point of least acceleration from i to j.
func (s *series) deepest(i, j int) int {
	at := i
	for k := i; k <= j; k++ {
		if s.quick[k] < s.quick[at] {
			at = k
		}
	}
	return at
}

// newPush trims the ends of an acceleration to the intended part and finds its
// gear changes.
func newPush(s *series, from, to int) push {
	p := push{from: from, to: to}
	back := clamp(from-int(1/step), 0, from)
	for k := back; k <= from; k++ {
		if s.still[k] || s.v[k] < 0.3 {
			p.standing = true
		}
	}
	if p.standing {
		for p.from > 0 && !s.still[p.from] && s.v[p.from] > 0.05 {
			p.from--
		}
	}
	p.trim(s)
	p.shifts = s.lasting(p, findDips(s, p, sureDip))
	p.dips = findDips(s, p, maybeDip)
	return p
}

// trim removes the opening and the closing of the throttle at both ends.
func (p *push) trim(s *series) {
	for p.to > p.from && s.quick[p.to] < 0.5*around(s, p.to-30, p.to) {
		p.to--
	}
	for !p.standing && p.from < p.to && s.quick[p.from] < 0.5*around(s, p.from, p.from+20) {
		p.from++
	}
}

// around is the median of the acceleration from grid point i to j.
func around(s *series, i, j int) float64 {
	i, j = clamp(i, 0, s.len()), clamp(j+1, 0, s.len())
	return median.Of(s.quick[i:j])
}

// findDips returns the deepest point of each break in the thrust.
func findDips(s *series, p push, dip func(s *series, i int) bool) []int {
	var dips []int
	for i := p.from + 5; i < p.to-5; i++ {
		if !dip(s, i) {
			continue
		}
		deepest := i
		for ; i < p.to-5 && dip(s, i); i++ {
			if s.quick[i] < s.quick[deepest] {
				deepest = i
			}
		}
		dips = append(dips, deepest)
	}
	return dips
}

// sureDip reports whether the thrust is interrupted at i: the acceleration
// falls by most of its value in the seconds before and after, and by more than
// vibration can cause.
func sureDip(s *series, i int) bool {
	level, drop := dropAt(s, i)
	return level > pushing && drop > math.Max(math.Max(shiftDrop, shiftDepth*level), 3.5*s.doubt[i])
}

// maybeDip is sureDip without the test against vibration.
func maybeDip(s *series, i int) bool {
	level, drop := dropAt(s, i)
	return level > pushing && drop > 0.6*math.Max(shiftDrop, shiftDepth*level)
}

// interrupted reports whether the thrust disappears between two grid points of a
// push, as in an unhurried gear change. With strong vibration such a change may
// not be a sure dip. A real interruption costs speed permanently; an artefact
// of vibration does not.
func (p push) interrupted(s *series, from, to int) bool {
	return slices.ContainsFunc(drops(s, from, to), func(at int) bool { return s.costs(p.from, at, p.to) })
}

// drops are the deepest points of all intervals between two grid points without
// thrust.
func drops(s *series, from, to int) []int {
	var out []int
	for i := from; i < to; i++ {
		deepest, clear := i, false
		for ; i < to && gone(s, i); i++ {
			level, drop := dropAt(s, i)
			clear = clear || drop > sureDoubts*s.doubt[i] || drop > 2*s.doubt[i] && lasts(s, i, level)
			if s.quick[i] < s.quick[deepest] {
				deepest = i
			}
		}
		if clear {
			out = append(out, deepest)
		}
	}
	return out
}

// gone reports whether there is apparently no thrust at i.
func gone(s *series, i int) bool {
	level, drop := dropAt(s, i)
	return level >= pushing && drop >= math.Max(shiftDrop, goneShare*level)
}

// lasts reports whether the acceleration over a whole second also drops at i.
func lasts(s *series, i int, level float64) bool {
	const about = 3 // grid points
	low := level
	for k := max(i-about, 0); k <= min(i+about, s.len()-1); k++ {
		low = math.Min(low, s.calm[k])
	}
	return level-low > lostShare*level
}

// dropAt is the smaller of the accelerations before and after i, and the drop
// below it at i.
func dropAt(s *series, i int) (level, drop float64) {
	level = math.Min(around(s, i-20, i), around(s, i, i+20))
	return level, level - s.quick[i]
}

// breaks are where a push may not have been smooth: the gear changes, and its
// ends, where the throttle moves. A superfluous one does little harm.
func (p push) breaks(s *series) []fusion.Span {
	const before, after = 0.3, 0.3 // s around the deepest point of a change
	out := []fusion.Span{{From: s.time(p.from) - opening, To: s.time(p.from) + opening}}
	for _, at := range p.dips {
		out = append(out, fusion.Span{From: s.time(at) - before, To: s.time(at) + after})
	}
	return append(out, fusion.Span{From: s.time(p.to) - opening, To: s.time(p.to) + opening})
}

// gears splits a push at its gear changes, leaving out the changes.
func (p push) gears(s *series) []push {
	const clear = 4 // grid points around a change that belong to neither gear
	var out []push
	add := func(from, to int) {
		if to <= from {
			return
		}
		g := push{from: from, to: to, standing: p.standing && from == p.from}
		g.trim(s)
		out = append(out, g)
	}
	from := p.from
	for _, at := range p.shifts {
		add(from, at-clear)
		from = at + clear
	}
	add(from, p.to)
	return out
}

// found makes a candidate of a push.
func (p push) found(s *series, k Kind) Found {
	f := Found{Kind: k, From: s.time(p.from), To: s.time(p.to), Breaks: p.breaks(s), Power: thrustPower(s, p.from, p.to)}
	for _, g := range p.gears(s) {
		f.Gears = append(f.Gears, fusion.Span{From: s.time(g.from), To: s.time(g.to)})
	}
	return f
}
