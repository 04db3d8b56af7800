package roadload

import (
	"math"

	"stillair/sensors/finding"
)

// Thresholds of the search for what does not belong to coasting, in standard
// errors. With some hundred fixes tested, chance alone reaches shockLimit in
// about one ride in fifty, and then costs a second of one run.
const (
	shockLimit = 4.2
	runLimit   = 4.5
	shiftLimit = 3.5
	// A changed wind disturbs both runs of a pair. It is taken to be the reason
	// where it explains nearly as much as trouble in one of them does.
	sameCase = 0.85
	// A run is looked at twice from suspectLimit on.
	suspectLimit = 2.5
	maxCuts      = 4 // in one run; with more, the run is left out
	maxFinds     = 24
)

// find is the worst disagreement that is left.
type find struct {
	run   *coast
	fix   int      // the jump is before this one; −1: the whole run disagrees
	pairs []*coast // the first runs of pairs between whose runs the wind changed; nil: something else
	test  test
}

// worst looks for it in all runs; nil: all agree.
func (s *system) worst() *find {
	best := s.worstRun()
	for _, c := range s.runs {
		for i, t := range s.shocks(c) {
			if i > 0 {
				best = best.or(find{run: c, fix: i, test: t}, shockLimit)
			}
		}
	}
	return best
}

// worstRun looks only for whole runs and pairs that disagree.
func (s *system) worstRun() *find {
	var best *find
	for _, c := range s.runs {
		best = best.or(find{run: c, fix: -1, test: s.ownLoad(c)}, runLimit)
	}
	if pairs, t := s.shiftedPairs(); pairs != nil && (best == nil || t.size() > sameCase*best.test.size()) {
		return &find{run: pairs[0], pairs: pairs, test: t}
	}
	return best
}

// or is the clearer of two finds, the second of which counts from a limit on.
func (f *find) or(g find, limit float64) *find {
	if z := g.test.size(); z > limit && (f == nil || z > f.test.size()) {
		return &g
	}
	return f
}

// masked looks for a run or a pair that makes itself look harmless: one so far
// off that the noise learned with it has become too large to notice. The one
// that disagrees most is judged again by the noise that the others have.
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

// suspect is the run that disagrees most, by itself or with its pair; nil: all
// agree well.
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

// ownLoad tests whether a run wants a drag area or a rolling resistance of its
// own, and returns the clearer of both.
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

// clean fits, leaves out what disagrees most, and fits again until all that is
// left agrees. It returns the runs that were left out.
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

// with is the system without some runs, at the same road load.
func (s *system) with(runs []*coast) *system {
	next := newSystem(runs, s.opts)
	copy(next.state.beta[:2*s.lay.setups], s.state.beta)
	return next
}

// apply cuts the jump out of the run, or returns why the run has to go.
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
