package roadload

import (
	"cmp"
	"slices"
)

// layout maps the unknowns common to several runs to indices: first the road
// loads of the setups (fixed effects), then the random effects, which have a
// prior variance. Unknowns of a single run (its starting speed) are not in this
// vector.
type layout struct {
	setups  int
	pairs   []int   // pair numbers; runs without a partner have their own
	days    [][]int // indices of the pairs ridden on one day
	slope   int     // index of k; −1: held
	wind    int     // first of one for each pair
	grade   int     // first of one for each pair
	shift   []int   // of each pair: index of the change of wind between its runs; −1: none
	shifts  bool    // it changed in all pairs, with a learned spread
	posture int     // first of one for each run: relative deviation of its drag area; −1: none
	warm    int     // −1: none
	press   int     // the barometer's share of dynamic pressure; −1: no barometer
	knot    int     // first knot of the road's profile
	knots   int
	road    []stretch
	mirror  *mirror // nil: places are known
	size    int
}

// cdaAt and crrAt are the indices of a setup's road load.
func cdaAt(setup int) int { return 2 * setup }
func crrAt(setup int) int { return 2*setup + 1 }

// newLayout numbers the unknowns of runs.
func newLayout(runs []*coast, opts Options) layout {
	l := layout{slope: -1, posture: -1, warm: -1, press: -1, shifts: opts.Noise.ShiftSD > 0}
	if l.shifts {
		shiftAll(runs)
	}
	for _, r := range runs {
		l.setups = max(l.setups, r.setup+1)
		r.pairIndex = l.pairIndex(r)
	}
	l.days = daysOf(runs, len(l.pairs))
	l.size = 2 * l.setups
	take := func(n int) int {
		at := l.size
		l.size += n
		return at
	}
	if opts.Slope.SE > 0 {
		l.slope = take(1)
	}
	l.wind = take(len(l.pairs))
	l.grade = take(len(l.pairs))
	for range l.pairs {
		l.shift = append(l.shift, -1)
	}
	for _, r := range runs {
		if r.part != 0 && l.shift[r.pairIndex] < 0 {
			l.shift[r.pairIndex] = take(1)
		}
	}
	if opts.Noise.PostureSD > 0 {
		l.posture = take(len(runs))
		for i, r := range runs {
			r.postureIndex = i
		}
	}
	if opts.WarmUpSD > 0 {
		l.warm = take(1)
	}
	for _, r := range runs {
		if r.heights == byBarometer && l.press < 0 {
			l.press = take(1)
		}
	}
	l.road, l.knots = roadOf(runs, opts)
	l.knot = take(l.knots)
	if l.knots > 0 && runs[0].estimated {
		l.mirror = newMirror(runs, l.road, opts.Noise.RoadLength)
	}
	return l
}

// pairIndex finds or adds the pair of r; a run alone is a pair of its own.
func (l *layout) pairIndex(r *coast) int {
	number := r.pair
	if number == 0 {
		number = -1 - r.id
	}
	for i, p := range l.pairs {
		if p == number {
			return i
		}
	}
	l.pairs = append(l.pairs, number)
	return len(l.pairs) - 1
}

// sameDay is the time between two runs, h, from which they are of different
// days, with a wind of its own each.
const sameDay = 12

// daysOf groups the pairs by day.
func daysOf(runs []*coast, pairs int) [][]int {
	at := make([]float64, pairs)
	for _, r := range runs {
		at[r.pairIndex] = r.hours
	}
	order := make([]int, pairs)
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(at[i], at[j]) })
	var days [][]int
	for k, i := range order {
		if k == 0 || at[i]-at[order[k-1]] > sameDay {
			days = append(days, nil)
		}
		last := len(days) - 1
		days[last] = append(days[last], i)
	}
	for _, d := range days {
		slices.Sort(d)
	}
	return days
}
