package roadload

import (
	"math"

	"stillair/sensors/finding"
)

// Thresholds of the outlier search, in standard errors. With some hundred fixes
// tested, chance alone reaches shockLimit in about one ride in fifty, and then
// costs a second of one run.
const (
	shockLimit = 4.2
	runLimit   = 4.5
	shiftLimit = 3.5
	// A change of wind affects both runs of a pair. It is taken as the cause if
	// it explains nearly as much as a fault in one of them does.
	sameCase = 0.85
	// From suspectLimit on a run is tested again with the noise of the others.
	suspectLimit = 2.5
	maxCuts      = 4 // in one run; with more, the run is left out
	maxFinds     = 24
)

// find is the most significant outlier.
type find struct {
	run   *coast
	fix   int      // the jump is before this one; −1: the whole run disagrees
	pairs []*coast // the first runs of pairs with a change of wind between their runs; nil: another cause
	test  test
}

// worst searches all runs for it; nil if there is none.
func (s *system) worst() *find {
	best := s.worstRun()
	for _, c := range s.runs {
		for i, t := range s.shocks(c) {
			if i > 0 {
				best = best.moreSignificant(find{run: c, fix: i, test: t}, shockLimit)
			}
		}
	}
	return best
}

// worstRun searches only for whole runs and pairs that disagree.
func (s *system) worstRun() *find {
	var best *find
	for _, c := range s.runs {
		best = best.moreSignificant(find{run: c, fix: -1, test: s.ownLoad(c)}, runLimit)
	}
	if pairs, t := s.shiftedPairs(); pairs != nil && (best == nil || t.size() > sameCase*best.test.size()) {
		return &find{run: pairs[0], pairs: pairs, test: t}
	}
	return best
}

// moreSignificant returns the more significant of two finds; the second counts
// from a limit on.
func (f *find) moreSignificant(g find, limit float64) *find {
	if z := g.test.size(); z > limit && (f == nil || z > f.test.size()) {
		return &g
	}
	return f
}

// masked searches for a masked outlier: a run or pair so far off that the noise
// learned with it is too large for it to be significant. The one that disagrees
// most is tested again with the noise learned from the others.
func (s *system) masked(l *learner) *find {
	suspect := s.suspect()
	if suspect == nil {
		return nil
	}
	rest := others(s.runs, suspect, partner(s.runs, suspect))
	if pairsLeft(rest, s.lay.setups) != nil {
		rest = others(s.runs, suspect)
	}
	if pairsLeft(rest, s.lay.setups) != nil {
		return nil
	}
	without := l.on(s.with(copies(rest)))
	if without.s.settle(without) != nil {
		return nil
	}
	if _, err := s.evaluate(without.noise); err != nil {
		return nil
	}
	if f := s.worstRun(); f != nil {
		return f
	}
	if _, err := s.evaluate(l.noise); err != nil {
		return nil
	}
	return nil
}

// suspect is the run that disagrees most, by itself or with its pair; nil if
// all agree well.
func (s *system) suspect() *coast {
	var suspect *coast
	top := suspectLimit
	for _, c := range s.runs {
		if z := math.Max(s.ownLoad(c).size(), s.shiftOf(c).size()); z > top {
			suspect, top = c, z
		}
	}
	return suspect
}

// ownLoad tests whether a run has a drag area or a rolling resistance of its
// own, and returns the more significant of the two.
func (s *system) ownLoad(c *coast) test {
	drag, roll := s.column(c, 0), s.column(c, 1)
	if drag.size() > roll.size() {
		return drag
	}
	return roll
}

// rejected is a run that was left out.
type rejected struct {
	run    *coast
	reason finding.Code
}

// clean fits, leaves out the most significant outlier, and fits again until
// none is left. It returns the runs that were left out.
func clean(s *system, l *learner) (*system, *learner, []rejected, error) {
	var out []rejected
	for range maxFinds {
		f := s.worst()
		if f == nil {
			f = s.masked(l)
		}
		if f == nil {
			return s, l, out, nil
		}
		if f.pairs != nil {
			var err error
			if s, l, err = s.shifted(l, f.pairs); err != nil {
				return nil, nil, nil, err
			}
			continue
		}
		reason := f.apply()
		if reason != "" {
			rest := others(s.runs, f.run)
			if err := pairsLeft(rest, s.lay.setups); err != nil {
				return s, l, out, nil
			}
			out = append(out, rejected{f.run, reason})
			s = s.with(rest)
		} else {
			f.run.attach(s.lay)
		}
		l = l.on(s)
		if err := s.settle(l); err != nil {
			return nil, nil, nil, err
		}
	}
	return s, l, out, nil
}

// with is a system of other runs, at the same road loads.
func (s *system) with(runs []*coast) *system {
	next := newSystem(runs, s.opts)
	copy(next.state.beta[:2*s.lay.setups], s.state.beta)
	return next
}

// apply cuts the jump out of the run, or returns the reason for rejecting the
// run.
func (f *find) apply() (reason finding.Code) {
	c := f.run
	if f.fix < 0 {
		if f.test.estimate > 0 {
			return codeHeld
		}
		return codeHelped
	}
	c.cut(f.fix, f.test.estimate)
	if len(c.cuts) > maxCuts {
		return codeTorn
	}
	return ""
}
