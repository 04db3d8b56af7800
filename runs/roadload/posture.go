package roadload

import "slices"

// A rider does not sit in exactly the same way in every run. The drag area then differs
// from run to run by a part that belongs to no setup, and runs of one setup disagree by
// more than wind and noise explain. It is a random effect of each run, relative to the
// drag area of its setup, with a learned variance. The mean of n runs keeps 1/n of that
// variance, so that a comparison that neglects it finds differences where there are none.

const (
	usualPosture = 0.03 // relative standard deviation expected where it is visible (from memory: repeated field tests of cyclists)
	leastUnlike  = 1.0  // mean square of the tests of single runs, in standard errors, from which it is worth a second fit
	postureGain  = 1.0  // of −2 log likelihood that it must gain
)

// fewRuns is how many runs of a setup are too few to show whether its drag area varies.
const fewRuns = 4

// fewPosture is the relative standard deviation of the drag area from run to run that is
// expected of any rider, in tests of few runs. Without it a drag area that varies by 6 %
// made the 95 % interval of a difference miss in 19 of 200 simulated tests with two pairs
// for each setup, with it in 15; where it varies by 3 %, in 13 and 8. A rider who sits alike
// in all runs gets intervals a tenth wider (TestPostureOfFewPairs).
const fewPosture = 0.02

// steadyPosture is what a fit of so few runs finds in its place if the rider sits alike in
// all of them. Chosen with the first plan of TestPlannedChance in package plan, judged by
// its TestPlansKeepTheirWord on other days and roads.
const steadyPosture = 0.75 * fewPosture

// withPosture fits again with a drag area of its own for each run, and keeps that if it
// is clearly the more likely, or if the runs are too few to show it.
func (s *system) withPosture(l *learner) (*system, *learner) {
	if few(s.runs) {
		if next, again, err := s.varied(l, fewPosture); err == nil {
			return next, again
		}
		return s, l
	}
	if s.unlike() < leastUnlike {
		return s, l
	}
	next, again, err := s.varied(l, usualPosture)
	if err != nil || again.value > l.value-postureGain {
		return s, l
	}
	return next, again
}

// varied is a fit with a drag area of its own for each run, of an expected spread.
func (s *system) varied(l *learner, expected float64) (*system, *learner, error) {
	varied := *s
	varied.opts.Noise.PostureSD = expected
	next := varied.with(copies(s.runs))
	again := l.on(next)
	return next, again, next.settle(again)
}

// few reports whether a setup has no more than fewRuns of the runs.
func few(runs []*coast) bool {
	var n []int
	for _, c := range runs {
		n = append(n, make([]int, max(0, c.setup+1-len(n)))...)
		n[c.setup]++
	}
	return slices.Min(n) <= fewRuns
}

// unlike is the mean square of how far each run's drag area is from that of the others
// of its setup, in standard errors: 1 is expected where wind and noise are its causes.
func (s *system) unlike() float64 {
	sum := 0.0
	for _, c := range s.runs {
		z := s.column(c, 0).size()
		sum += z * z / float64(len(s.runs))
	}
	return sum
}
