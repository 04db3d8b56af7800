package roadload

import (
	"fmt"

	"stillair/sensors/units"
)

// When the notes speak up.
const (
	roughRoad  = 0.001 // slope's standard deviation
	gustyTimes = 2.0   // gusts over what was expected
	wideShare  = 0.1   // standard error over drag area
)

// notes says what a reader of the figures should know.
func (s *system) notes(e *Estimate) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	n, expected := e.Noise, s.opts.Noise
	if k := s.opts.Slope; k.X != 0 {
		say("rolling resistance is taken to grow by %.1f %% for each 10 km/h", 1000*k.X*units.KMH)
	}
	if n.GustSD > gustyTimes*expected.GustSD {
		say("gusts of %.1f m/s are what limits the certainty: they are %.1f times what the wind told makes likely", n.GustSD, n.GustSD/expected.GustSD)
	}
	switch rough := s.lay.knots > 0 && n.RoadSD > roughRoad; {
	case rough && s.lay.press < 0:
		say("the road is uneven: its slope varies by about %.2f %%. "+
			"A phone with a barometer, or runs that start in different places, would tell it from drag better", 100*n.RoadSD)
	case rough:
		say("the road is uneven: its slope varies by about %.2f %%; this was learned from all runs and the barometer", 100*n.RoadSD)
	}
	for _, l := range e.Loads {
		if l.CdA.SE > wideShare*l.CdA.X {
			say("the drag area is known to no better than %.0f %%: more pairs, a higher speed or a calmer day would help", 100*l.CdA.SE/l.CdA.X)
			break
		}
	}
	return out
}
