package sheets

import (
	"math"
	"slices"
	"strings"
)

// timing is a column of time with the unit found for it.
type timing struct {
	column *column
	unit   unit
	said   bool    // the unit is in the header or was requested
	epoch  bool    // it counts from 1970
	middle float64 // median
	from   float64
	to     float64
	wild   int     // number of times farther than mostApart from the median
	even   float64 // share of the steps above 0
}

// mostApart is the maximum distance of a time from the median of its column, s: a
// year. No ride is as long, and dates from a clock that was not set yet are
// farther off.
const mostApart = 365 * 86400.0

// at is the time of a row, s, NaN if it is missing or wild.
func (t *timing) at(row int) float64 {
	at := t.column.v[row] * t.unit.si
	if !(math.Abs(at-t.middle) <= mostApart) {
		return math.NaN()
	}
	return at
}

// Limits of the interval between readings, s, from 1 kHz down: the unit of a
// column of time is the one in which its median interval is within them. In
// each of the two ranges the largest is less than a thousand times the
// smallest, so that only one unit fits.
const (
	leastStep, mostStep       = 0.9e-3, 0.6
	leastFixStep, mostFixStep = 0.035, 30.0
)

// timings are the possible columns of time in a sheet, for the given rows.
func (s *sheet) timings(r role, least, most float64, counts func(row int) bool) []*timing {
	var all []*timing
	for _, c := range s.columns {
		if c.role == r {
			if t := c.timing(least, most, counts); t != nil {
				all = append(all, t)
			}
		}
	}
	return all
}

func (c *column) timing(least, most float64, counts func(row int) bool) *timing {
	var seen []float64
	for i, x := range c.v {
		if !math.IsNaN(x) && counts(i) {
			seen = append(seen, x)
		}
	}
	if len(seen) < 2 {
		return nil
	}
	var steps []float64
	for i := 1; i < len(seen); i++ {
		if d := seen[i] - seen[i-1]; d > 0 {
			steps = append(steps, d)
		}
	}
	if len(steps) == 0 {
		return nil
	}
	t := &timing{column: c, even: float64(len(steps)) / float64(len(seen)-1)}
	slices.Sort(steps)
	t.unit, t.said = c.timeUnit(steps[len(steps)/2], seen[len(seen)/2], least, most)
	if !t.unit.known() {
		return nil
	}
	const y1980, y2200 = 3.155e8, 7.258e9
	middle := seen[len(seen)/2] * t.unit.si
	t.epoch = middle > y1980 && middle < y2200
	slices.Sort(seen)
	t.middle = seen[len(seen)/2] * t.unit.si
	whole := len(seen)
	seen = slices.DeleteFunc(seen, func(x float64) bool { return !(math.Abs(x*t.unit.si-t.middle) <= mostApart) })
	t.wild = whole - len(seen)
	t.from, t.to = seen[0]*t.unit.si, seen[len(seen)-1]*t.unit.si
	return t
}

// timeUnit finds the unit of times with that median step: as requested, as in
// the header, seconds for moments in words, else the one that fits.
func (c *column) timeUnit(step, middle, least, most float64) (u unit, said bool) {
	fits := func(u unit) bool { return step*u.si >= least && step*u.si <= most }
	if c.unit.known() && (c.asked || fits(c.unit)) {
		return c.unit, true
	}
	all := spelled(ofTime)
	if c.words {
		return all[0].unit, false
	}
	for _, u := range all {
		if fits(u.unit) {
			return u.unit, false
		}
	}
	return unit{}, false
}

// leastShare is the minimum overlap of two sensors of a recording, as a share
// of the longer span. Spans in units that differ by a factor of a thousand
// overlap less.
const leastShare = 0.01

// overlap is the share of the shorter span in which both run, 0 if that is a
// negligible part of the longer.
func overlap(a, b *timing) float64 {
	both := math.Min(a.to, b.to) - math.Max(a.from, b.from)
	if both < leastShare*math.Max(a.to-a.from, b.to-b.from) {
		return 0
	}
	return both / math.Max(math.Min(a.to-a.from, b.to-b.from), 1e-9)
}

// agree returns, of all pairs of columns of time, the one with the best overlap
// of two sheets; nil if none overlaps.
func agree(one, other []*timing) (a, b *timing) {
	best := 0.5
	for _, x := range one {
		for _, y := range other {
			shared := overlap(x, y)
			if shared < 0.5 {
				continue
			}
			if score := shared + x.score() + y.score() + alike(x, y); score > best {
				best, a, b = score, x, y
			}
		}
	}
	return a, b
}

// score prefers columns that differ between readings, that are numbers, and
// that were requested.
func (t *timing) score() float64 {
	w := 4 * t.even
	if !t.column.words {
		w += 0.5
	}
	if t.column.asked {
		w += 100
	}
	return w - 0.5*float64(t.column.rank)
}

func alike(a, b *timing) (score float64) {
	if strings.EqualFold(a.column.name, b.column.name) {
		score++
	}
	if a.epoch == b.epoch {
		score++
	}
	return score
}

// common is the best of the timings in both lists, such as a column of a wide
// table that suits both readings and fixes; nil if none.
func common(one, other []*timing) *timing {
	return best(slices.DeleteFunc(slices.Clone(one), func(x *timing) bool {
		return !slices.ContainsFunc(other, func(y *timing) bool { return x.column == y.column && x.unit == y.unit })
	}))
}

// best is the timing with the highest score, nil if none.
func best(all []*timing) (most *timing) {
	for _, t := range all {
		if most == nil || t.score() > most.score() {
			most = t
		}
	}
	return most
}
