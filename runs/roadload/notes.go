package roadload

import (
	"fmt"
	"math"

	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// When the notes speak up.
const (
	roughRoad  = 0.001 // slope's standard deviation
	gustyTimes = 2.0   // gusts over what was expected
	wideShare  = 0.1   // standard error over drag area
	startsOver = 500.0 // m over which runs one way start, from which they tell the road from drag
)

// notes says what a reader of the figures should know.
func (s *system) notes(e *Estimate) []finding.Finding {
	var out []finding.Finding
	say := func(format string, args ...any) { out = append(out, finding.Said(fmt.Sprintf(format, args...))) }
	n, expected := e.Noise, s.opts.Noise
	if k := s.opts.Slope; k.X != 0 {
		say("rolling resistance is taken to grow by %.1f %% for each 10 km/h", 1000*k.X*units.KMH)
	}
	if n.GustSD > gustyTimes*expected.GustSD {
		say("gusts of %.1f m/s are what limits the certainty: they are %.1f times what the wind told makes likely", n.GustSD, n.GustSD/expected.GustSD)
	}
	switch {
	case s.lay.mirror != nil:
		say("not every fix says where it was, so an uneven road is hard to tell from drag: the ± given here allows for one as far as the runs show it. " +
			"Positions in every fix would make it smaller")
	case s.lay.knots == 0 && s.opts.Noise.RoadSD > 0:
		say("not every fix says where it was; the runs agree as they do on a smooth road, " +
			"but a road whose slope varies by less than about 0.1 %% would pass for one")
	}
	s.sayShifts(say)
	switch rough := s.lay.knots > 0 && n.RoadSD > roughRoad; {
	case rough && s.lay.mirror != nil:
		say("the road is uneven: its slope seems to vary by about %.2f %%", 100*n.RoadSD)
	case rough && s.lay.press >= 0:
		say("the road is uneven: its slope varies by about %.2f %%; this was learned from all runs and the barometer", 100*n.RoadSD)
	case rough && startsApart(s.runs) > startsOver:
		say("the road is uneven: its slope varies by about %.2f %%; this was learned from all runs, which start in different places", 100*n.RoadSD)
	case rough:
		say("the road is uneven: its slope varies by about %.2f %%. A phone with a barometer would tell it from drag better, "+
			"and so would pairs that start some 200 m farther on, there and back, than the one before: at the same places with every setup", 100*n.RoadSD)
	}
	for _, l := range e.Loads {
		if l.CdA.SE > wideShare*l.CdA.X {
			say("the drag area is known to no better than %.0f %%: more pairs, a higher speed or a calmer day would help", 100*l.CdA.SE/l.CdA.X)
			break
		}
	}
	return out
}

// startsApart is over how much of the road the runs of one way start, m.
func startsApart(runs []*coast) float64 {
	lo := [2]float64{math.Inf(1), math.Inf(1)}
	hi := [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, c := range runs {
		w := way(c.dir)
		lo[w], hi[w] = math.Min(lo[w], c.x[0]), math.Max(hi[w], c.x[0])
	}
	return math.Min(hi[0]-lo[0], hi[1]-lo[1])
}

// sayShifts tells between the runs of which pairs the wind changed.
func (s *system) sayShifts(say func(string, ...any)) {
	unclear := 0
	for _, c := range s.runs {
		at := s.lay.shift[c.pairIndex]
		if at < 0 || c.part > 0 {
			continue
		}
		other := partner(s.runs, c)
		d := PairFit{Shift: s.valueOf(at)}
		switch {
		case other == nil:
		case d.WindChanged():
			say("the wind along the road changed by about %.1f ± %.1f m/s between the two runs of pair %d (runs %d and %d): "+
				"that pair counts for less", math.Abs(d.Shift.X), 1.96*d.Shift.SE, c.pair, c.id, other.id)
		default:
			unclear++
		}
	}
	if unclear > 0 {
		say("the pairs disagree by more than gusts explain, as when the wind changes between two runs: "+
			"in %d of them a change would not be seen by itself, and all count for less", unclear)
	}
}
