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

// couples are the candidate passes among the legs of one setup, which are
// sorted with the fastest first.
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
			all = append(all, couple{first, last, road, l.approaches(r.Fade(a.setup), first.stretch, last.stretch)})
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
		return cmp.Or(cmp.Compare(x.promise(), y.promise()), cmp.Compare(x.a.top+x.b.top, y.a.top+y.b.top))
	})
	all = slices.DeleteFunc(all, func(c couple) bool { return !c.sameRoad(best) })
	atLimit := l.approaches(r.Fade(best.a.setup), stretches(all)...) == open
	slices.SortStableFunc(all, func(x, y couple) int { return cmp.Compare(x.b.Start-x.a.Start, y.b.Start-y.a.Start) })
	var out []Pass
	used := map[int]bool{}
	for _, c := range all {
		if c.how == open && !atLimit {
			c.how = eased
		}
		if c.how != brief && !used[c.a.from] && !used[c.b.from] {
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

// promise ranks couples by how their legs reached their speed.
func (c couple) promise() int {
	switch c.how {
	case open:
		return 2
	case brief:
		return 0
	}
	return 1
}

// stretches are the distinct legs of couples.
func stretches(all []couple) []stretch {
	var out []stretch
	for _, c := range all {
		for _, g := range []leg{c.a, c.b} {
			if !slices.Contains(out, g.stretch) {
				out = append(out, g.stretch)
			}
		}
	}
	return out
}

// sameRoad reports whether a couple was on the road of the best, at the same
// speed in each direction.
func (c couple) sameRoad(best couple) bool {
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
