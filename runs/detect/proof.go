package detect

import (
	"math"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Nothing in one push tells a throttle that is half open from a taller gear or a
// weaker bike. What tells is that a throttle against its stop repeats itself,
// and a hand does not: everyday pushes differ by a quarter and more (common
// practice). So a push counts as full throttle where others of the ride pulled
// as hard through the same speeds, or a launch did. Below others that did pull
// harder, which may have been in a lower gear, more is asked. Tuned on simulated
// rides of seeds from 1001 on; judged on others in the accuracy report.
const (
	repeats     = 0.03 // part of the thrust by which full throttle differs from push to push: engine, rider, line (PullsVary in package plan is 0.02)
	windVaries  = 0.7  // m/s by which the wind along the road may differ between two pushes, beyond what the ride shows of it
	mostWind    = 5.0  // m/s that it is looked for up to
	windStep    = 0.5  // m/s
	windCosts   = 0.05 // pairs of pushes that must agree more for each m/s of it
	sureWhole   = 1.0  // standard deviations of the speed's own error that are allowed for over all common speeds
	surePart    = 2.0  // and over a part of them
	sharedLeast = 3    // bands of speed that two pushes need in common
	sharedShare = 0.6  // part of the push that must be common
	closely     = 0.65 // part of all that is allowed within which two agree that have no third
	clearly     = 0.1  // part of the thrust from which on another pulled harder
	crowd       = 2    // others that agree, from which on nothing else is asked
	lowCrowd    = 3    // and where others pulled harder, riding along reaches as much, or no launch shows that the rider means it
	crowdShare  = 0.25 // and of those with speeds in common at least so many
	mostPaired  = 0.95 // part of the pushes that must repeat where fewer agree
	alongPower  = 34.0 // W/kg of thrust that riding along does not reach
	weakShare   = 0.45 // of the best, where a launch shows what the bike has
)

// opened tells which pushes were ridden at full throttle.
type opened struct {
	s      *series
	drives []drive
	wind   float64 // along the way of the first drive, m/s
	single bool    // the machine has one gear
	meant  bool    // there are launches
}

// relation is how one push compares with another.
type relation struct {
	common bool    // they have speeds in common
	level  float64 // difference of their mean thrusts, as a part of what is allowed
	off    float64 // and the largest over any part of the speeds
	harder bool    // the other pulls clearly harder
}

func (r relation) alike() bool { return r.common && r.off < 1 }

// nearness is 1 for two pushes that agree exactly and 0 for two that do not.
func (r relation) nearness() float64 {
	if !r.alike() {
		return 0
	}
	return 1 - r.level*r.level
}

// find looks for the steady wind with which most pushes agree best.
func (o *opened) find() {
	for i, d := range o.drives {
		switch turn := math.Abs(math.Remainder(d.bearing-o.drives[0].bearing, 360)); {
		case turn < 60:
			o.drives[i].way = 1
		case turn > 120:
			o.drives[i].way = -1
		}
	}
	best, most := 0.0, math.Inf(-1)
	for w := -mostWind; w <= mostWind; w += windStep {
		o.wind = w
		agree := -windCosts * math.Abs(w)
		for i, a := range o.drives {
			for _, b := range o.drives[:i] {
				agree += math.Max(o.compare(a, b).nearness(), o.compare(b, a).nearness())
			}
		}
		if agree > most {
			best, most = w, agree
		}
	}
	o.wind = best
}

// compare holds a push against another over the speeds that both pass.
func (o *opened) compare(a, b drive) relation {
	lo, hi := max(a.first, b.first), min(a.last(), b.last())-1
	if hi-lo < sharedLeast || float64(hi-lo) < sharedShare*float64(len(a.edges)-1) {
		return relation{}
	}
	r := relation{common: true, level: o.off(a, b, lo, hi, sureWhole), harder: b.thrust(lo, hi).x > a.thrust(lo, hi).x*(1+clearly)}
	r.off = r.level
	for k := range proofParts {
		r.off = math.Max(r.off, o.off(a, b, lo+(hi-lo)*k/proofParts, lo+(hi-lo)*(k+1)/proofParts, surePart))
	}
	return r
}

// off is how far the thrusts of two pushes between two edges differ, as a part
// of what is allowed.
func (o *opened) off(a, b drive, from, to int, sure float64) float64 {
	x, y := a.thrust(from, to), b.thrust(from, to)
	perWind := dragSlope * float64(from+to) / 2 * bandWidth
	most := repeats*(x.x+y.x)/2 + perWind*windVaries + sure*math.Hypot(x.sd, y.sd)
	return math.Abs(x.x-y.x-perWind*o.wind*(a.way-b.way)) / most
}

// dragSlope is how much more a middling motorcycle is held back for each m/s of
// wind and each m/s of speed, 1/m: twice the factor of v² in load.
const dragSlope = 2.2e-3

// tally is what speaks for a push.
type tally struct {
	alike, close int  // others that agree
	launch       bool // a launch agrees
	need, beside int
	beaten       bool // nothing but a launch can speak for it
	weak         bool
}

func (c tally) crowded() bool {
	unopposed := c.alike >= crowd && c.alike == c.beside
	return c.launch || !c.beaten && (unopposed || c.alike >= c.need && float64(c.alike) >= crowdShare*float64(c.beside))
}

// count holds a push against all others.
func (o *opened) count(i int, along float64) tally {
	a := o.drives[i]
	c := tally{need: lowCrowd, launch: a.proven, weak: thrustPower(o.s, a.from, a.to) < along}
	if o.meant {
		c.need = crowd
	}
	for j, b := range o.drives {
		r := o.compare(a, b)
		if i == j || !r.common {
			continue
		}
		if !b.proven {
			c.beside++
		}
		switch {
		case r.alike():
			c.launch = c.launch || b.proven
			c.alike++ // a launch speaks for itself
			if r.level < closely {
				c.close++
			}
		case r.harder && o.single, r.harder && c.weak && !b.proven:
			c.beaten = true
		case r.harder && !b.proven: // a launch is, in its low gears
			c.need = lowCrowd
		}
	}
	return c
}

// full tells, for each push, why the ride does not show that the throttle was
// fully open; "": it does.
func (o *opened) full(along float64) []finding.Code {
	counts := make([]tally, len(o.drives))
	for i := range o.drives {
		counts[i] = o.count(i, along)
	}
	out := make([]finding.Code, len(o.drives))
	for i, d := range o.drives {
		c := counts[i]
		pair := c.close > 0 && !c.beaten && (o.twin(i, counts) || o.meant && o.paired(i, counts) >= mostPaired)
		switch {
		case !o.meant && !d.possible() || !c.crowded() && !pair:
			out[i] = codeUnproven
		case c.weak && !o.meant:
			out[i] = codeNoLaunch
		}
	}
	return out
}

// twin reports whether a push and one other agree, and nothing disagrees with
// either.
func (o *opened) twin(i int, counts []tally) bool {
	if counts[i].alike != counts[i].beside {
		return false
	}
	for j, c := range counts {
		if i != j && c.alike == c.beside && o.compare(o.drives[j], o.drives[i]).alike() {
			return true
		}
	}
	return false
}

// paired is which part of the pushes beside one, itself included, repeat
// themselves, those that need no further proof left out.
func (o *opened) paired(i int, counts []tally) float64 {
	with, of := 1.0, 1.0
	for j, b := range o.drives {
		if i == j || !o.compare(o.drives[i], b).common || counts[j].crowded() {
			continue
		}
		of++
		if counts[j].close > 0 {
			with++
		}
	}
	return with / of
}

// unproven says of the candidates at full throttle which of them the ride does
// not show to be that; weak ones, which nobody may have meant as runs, are not
// listed at all. The same seconds may be two candidates.
func (r Ride) unproven(s *series, found []Found, pushes []push) []Found {
	o, fixes := opened{s: s, single: r.Gears == 1}, r.Fixes
	of, along := map[int]int{}, alongPower
	for i, f := range found {
		if f.Kind == RollOn || f.Kind == Pull {
			of[i] = o.add(s.pushOf(f, pushes), fixes, false)
		}
	}
	for _, f := range found {
		if f.Kind == Launch && len(f.Reasons) == 0 {
			o.meant = true
			along = math.Min(along, weakShare*bestPower(s, pushes))
			for _, g := range gearsOf(s, f, pushes) {
				o.add(g, fixes, true)
			}
		}
	}
	if len(o.drives) == 0 {
		return found
	}
	o.find()
	full := o.full(along)
	var out []Found
	for i, f := range found {
		k, open := of[i]
		switch {
		case !open || full[k] == "":
			out = append(out, f)
		case full[k] == codeNoLaunch || thrustPower(s, s.index(f.From), s.index(f.To)) > strongPush:
			f.Reasons = append(f.Reasons, finding.New(full[k]))
			out = append(out, f)
		}
	}
	return out
}

// pushOf is the push behind a candidate, with its gear changes.
func (s *series) pushOf(f Found, pushes []push) push {
	p := push{from: s.index(f.From), to: s.index(f.To)}
	for _, q := range pushes {
		for _, at := range q.shifts {
			if at > p.from && at < p.to {
				p.shifts = append(p.shifts, at)
			}
		}
	}
	return p
}

// add notes a push and returns its number; one that overlaps another is the
// same, and the wider counts.
func (o *opened) add(p push, fixes []sensors.Fix, proven bool) int {
	for k, d := range o.drives {
		if p.from < d.to && p.to > d.from {
			if o.s.v[p.to]-o.s.v[p.from] > o.s.v[d.to]-o.s.v[d.from] {
				o.drives[k] = o.s.newDrive(p, fixes, proven || d.proven)
			}
			return k
		}
	}
	o.drives = append(o.drives, o.s.newDrive(p, fixes, proven))
	return len(o.drives) - 1
}

// gearsOf are the single gears of a launch.
func gearsOf(s *series, f Found, pushes []push) []push {
	for _, p := range pushes {
		if p.standing && s.time(p.from) == f.From {
			return p.gears(s)
		}
	}
	return nil
}
