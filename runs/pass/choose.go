package pass

import (
	"cmp"
	"slices"

	"stillair/runs/pairing"
)

// couple is two legs that may be a pass, in order of time.
type couple struct {
	a, b leg
	road road
	how  approach
}

// couples are those legs of one setup that may be passes; the legs come the fastest
// first.
func (r Ride) couples(l line, legs []leg) []couple {
	var all []couple
	for i, a := range legs {
		if a.top < nearTop*legs[0].top {
			break
		}
		for _, b := range legs[i+1:] {
			first, last := a, b
			if b.from < a.from {
				first, last = b, a
			}
			if last.Start-first.Start > Within.Seconds() {
				continue
			}
			road, ok := r.shared(l, first, last)
			if !ok {
				continue
			}
			if how := l.approaches(first.stretch, last.stretch, r.Fade(a.setup)); how != brief {
				all = append(all, couple{first, last, road, how})
			}
		}
	}
	return all
}

// ofSetup gives the passes of one setup: of all that went over the fastest road, those
// whose legs lie closest in time first, each leg in one.
func (r Ride) ofSetup(l line, legs []leg) []Pass {
	all := r.couples(l, legs)
	if len(all) == 0 {
		return nil
	}
	best := slices.MaxFunc(all, func(x, y couple) int {
		return cmp.Or(cmp.Compare(x.open(), y.open()), cmp.Compare(x.a.top+x.b.top, y.a.top+y.b.top))
	})
	all = slices.DeleteFunc(all, func(c couple) bool { return !c.besides(best) })
	slices.SortStableFunc(all, func(x, y couple) int { return cmp.Compare(x.b.Start-x.a.Start, y.b.Start-y.a.Start) })
	var out []Pass
	used := map[int]bool{}
	for _, c := range all {
		if !used[c.a.from] && !used[c.b.from] {
			used[c.a.from], used[c.b.from] = true, true
			out = append(out, r.measured(l, c))
		}
	}
	return withoutMore(out)
}

// withoutMore keeps the passes that count. If none does, it keeps the first, so that the
// rider sees why without a list of every trip along the road.
func withoutMore(all []Pass) []Pass {
	counting := slices.DeleteFunc(slices.Clone(all), func(p Pass) bool { return !p.Accepted() })
	if len(counting) == 0 && len(all) > 0 {
		return all[:1]
	}
	return counting
}

// open is 1 for legs that came to their speed as to a limit.
func (c couple) open() int {
	if c.how == open {
		return 1
	}
	return 0
}

// besides reports whether a couple went over the road of the best, each way as fast.
func (c couple) besides(best couple) bool {
	for _, g := range []leg{c.a, c.b} {
		on := false
		for _, o := range []leg{best.a, best.b} {
			way, ok := pairing.Lay(g.where, o.where)
			if g.from == o.from || ok && !way.Opposite {
				on = g.top >= asFast*o.top
			}
		}
		if !on {
			return false
		}
	}
	return true
}
