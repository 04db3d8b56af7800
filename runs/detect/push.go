package detect

import (
	"math"
	"slices"

	"stillair/fusion"
	"stillair/sensors/median"
)

// push is a stretch of accelerating without a break longer than a gear
// change, as grid points.
type push struct {
	from, to int
	standing bool  // it starts at standstill
	shifts   []int // where the thrust broke off for a gear change, deepest points
	dips     []int // where it may have done so: the same and weaker ones
}

const (
	pushing    = 0.3  // least acceleration of a push, m/s²
	idle       = 0.15 // mean acceleration that is none, m/s²
	shiftTime  = 1.3  // longest break for a gear change, s
	pushGain   = 5.0  // least gain of speed worth a look, m/s
	opening    = 0.6  // how long the throttle or the clutch takes at most, s
	shiftDepth = 0.5  // share of the acceleration that a gear change takes away, seen over 0.4 s
	goneShare  = 0.85 // share that is taken away when the clutch is pulled without haste
	shiftDrop  = 1.0  // and what it takes away at least, m/s²
	sureDoubts = 5.0  // standard deviations of shaking by which it is gone for certain
	lostShare  = 0.5  // share of the acceleration over a whole second that goes with it
)

// findPushes returns every stretch of accelerating in the ride.
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

// pushEnd follows a push from i over its gear changes to its last point: until
// the bike has hardly gained speed for longer than a gear change takes.
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
		if !s.feigned(i, s.deepest(back, j), s.len()) {
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

// newPush trims the ends of a stretch to where the rider meant it and finds
// its gear changes.
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

// trim takes off what is not yet or no longer the push that the rider meant:
// the throttle opening and closing.
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

// sureDip reports whether the thrust is interrupted at i: the acceleration is
// below that of the seconds before and after by most of itself, and by more
// than the engine's shaking can feign.
func sureDip(s *series, i int) bool {
	level, drop := dropAt(s, i)
	return level > pushing && drop > math.Max(math.Max(shiftDrop, shiftDepth*level), 3.5*s.doubt[i])
}

// maybeDip is sureDip without regard to shaking.
func maybeDip(s *series, i int) bool {
	level, drop := dropAt(s, i)
	return level > pushing && drop > 0.6*math.Max(shiftDrop, shiftDepth*level)
}

// letGo reports whether somewhere between two grid points of a push the thrust
// is gone altogether, as when a rider without haste changes gear. In the
// engine's shaking such a change may not be a sure dip. Who lets go loses speed
// that is gone for good; a kick of the engine's shaking costs none.
func (p push) letGo(s *series, from, to int) bool {
	return slices.ContainsFunc(drops(s, from, to), func(at int) bool { return s.costs(p.from, at, p.to) })
}

// drops are the deepest points of all stretches between two grid points over
// which the thrust seems clearly gone.
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

// gone reports whether there seems to be no thrust at i.
func gone(s *series, i int) bool {
	level, drop := dropAt(s, i)
	return level >= pushing && drop >= math.Max(shiftDrop, goneShare*level)
}

// lasts reports whether a drop of the thrust at i is one of the acceleration
// over a whole second as well.
func lasts(s *series, i int, level float64) bool {
	const about = 3 // grid points
	low := level
	for k := max(i-about, 0); k <= min(i+about, s.len()-1); k++ {
		low = math.Min(low, s.calm[k])
	}
	return level-low > lostShare*level
}

// dropAt is the acceleration before and after i, whichever is less, and how
// far that at i is below it.
func dropAt(s *series, i int) (level, drop float64) {
	level = math.Min(around(s, i-20, i), around(s, i, i+20))
	return level, level - s.quick[i]
}

// breaks are where a push may not have been smooth: the gear changes, and its
// ends, where the throttle moves. One too many costs little.
func (p push) breaks(s *series) []fusion.Span {
	const before, after = 0.3, 0.3 // s about the deepest point of a change
	out := []fusion.Span{{From: s.time(p.from) - opening, To: s.time(p.from) + opening}}
	for _, at := range p.dips {
		out = append(out, fusion.Span{From: s.time(at) - before, To: s.time(at) + after})
	}
	return append(out, fusion.Span{From: s.time(p.to) - opening, To: s.time(p.to) + opening})
}

// gears splits a push at its gear changes, leaving out the changes.
func (p push) gears(s *series) []push {
	const clear = 4 // grid points about a change that belong to neither gear
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

// found is a push as a candidate.
func (p push) found(s *series, k Kind) Found {
	f := Found{Kind: k, From: s.time(p.from), To: s.time(p.to), Breaks: p.breaks(s), Power: thrustPower(s, p.from, p.to)}
	for _, g := range p.gears(s) {
		f.Gears = append(f.Gears, fusion.Span{From: s.time(g.from), To: s.time(g.to)})
	}
	return f
}
