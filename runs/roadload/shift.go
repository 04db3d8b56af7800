package roadload

import (
	"math"
	"slices"
)

// The mean wind may change between the two runs of a pair. A change of 1 m/s
// against both runs (they point opposite ways, so each has half of it) looks
// like a drag area larger by 1 m/s over the speed, some four per cent, in that
// pair. The pair then disagrees with the others. Such a pair is not left out:
// it gets a parameter of its own for the change, with a wide prior, so that the
// rest of its information is kept.

const (
	shiftSD    = 3.0 // prior spread of a detected change, m/s
	usualShift = 1.0 // initial value of the spread of changes in all pairs, m/s
	widestWind = 3.0 // a change larger than this, in m/s and in multiples of the wind's spread, has another cause
	oftenAll   = 3.0 // of −2 log likelihood, required advantage of a change in only some pairs
	nearlyAs   = 0.8 // pairs that disagree by this share of the worst cannot be distinguished from it
)

// shiftedPairs searches for pairs between whose runs the wind seems to have
// changed: the most significant one and those nearly as significant. It returns
// their first runs, and the test of the most significant.
func (s *system) shiftedPairs() ([]*coast, test) {
	first := make([]*coast, len(s.lay.pairs))
	tests := make([]test, len(s.lay.pairs))
	top := test{0, math.Inf(1)}
	for _, c := range s.runs {
		t := s.shiftOf(c)
		if !(t.size() > 0) || math.Abs(t.estimate) > widestWind*math.Max(1, s.opts.WindSD) {
			continue
		}
		first[c.pairIndex], tests[c.pairIndex] = c, t
		if t.size() > top.size() {
			top = t
		}
	}
	var out []*coast
	for i, c := range first {
		if c != nil && tests[i].size() > shiftLimit && tests[i].size() >= nearlyAs*top.size() {
			out = append(out, c)
		}
	}
	return out, top
}

// shiftOf tests whether the wind changed from this run to the other of its
// pair; infinitely uncertain unless it is the first.
func (s *system) shiftOf(c *coast) test {
	other := partner(s.runs, c)
	if other == nil || other.hours < c.hours || c.part != 0 {
		return test{0, math.Inf(1)}
	}
	var p probe
	p.addColumn(s, c, 2, -0.5)
	p.addColumn(s, other, 2, 0.5)
	return p.test(s)
}

// partner is the opposite run of a run's pair, or nil.
func partner(runs []*coast, c *coast) *coast {
	for _, o := range runs {
		if c.pair != 0 && o.pair == c.pair && o.setup == c.setup && o.dir != c.dir {
			return o
		}
	}
	return nil
}

// shiftAll lets the wind change between the runs of every pair.
func shiftAll(runs []*coast) {
	for _, c := range runs {
		if o := partner(runs, c); o != nil {
			c.part = math.Copysign(0.5, c.hours-o.hours)
		}
	}
}

// shiftSD is the prior standard deviation of the change of wind.
func (l *layout) shiftSD(n Noise) float64 {
	if l.shifts {
		return n.ShiftSD
	}
	return shiftSD
}

// shifted fits again with a parameter for the change of the wind: once only in
// the pairs found, once in all pairs with a learned variance. The more likely
// one is kept; in doubt the latter, since wind that changed in one pair may
// have changed in others too, and intervals that assume otherwise would be too
// narrow.
func (s *system) shifted(l *learner, firsts []*coast) (*system, *learner, error) {
	few, all := *s, *s
	few.runs, all.runs = copies(s.runs), copies(s.runs)
	for i, c := range s.runs {
		if slices.Contains(firsts, c) {
			few.runs[i].part = -0.5
			partner(few.runs, few.runs[i]).part = 0.5
		}
	}
	all.opts.Noise.ShiftSD = usualShift
	one, other := few.with(few.runs), all.with(all.runs)
	a, b := l.on(one), l.on(other)
	if err := one.settle(a); err != nil {
		return nil, nil, err
	}
	if err := other.settle(b); err == nil && b.value < a.value+oftenAll {
		return other, b, nil
	}
	return one, a, nil
}
