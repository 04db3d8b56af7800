package roadload

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

// withPosture fits again with a drag area of its own for each run, and keeps that if it
// is clearly the more likely.
func (s *system) withPosture(l *learner) (*system, *learner) {
	if s.unlike() < leastUnlike {
		return s, l
	}
	varied := *s
	varied.opts.Noise.PostureSD = usualPosture
	next := varied.with(copies(s.runs))
	again := l.on(next)
	if err := next.settle(again); err != nil || again.value > l.value-postureGain {
		return s, l
	}
	return next, again
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
