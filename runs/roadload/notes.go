package roadload

import (
	"math"

	"stillair/runs/measure"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// Thresholds of the notes.
const (
	roughRoad    = 0.001 // slope's standard deviation
	gustyTimes   = 2.0   // gusts relative to the expected ones
	wideShare    = 0.1   // standard error over drag area
	shownPosture = 0.025 // relative, of the drag area from run to run: gusts can look like less
	shownFrom    = 2.5   // standard errors from which tyres are reported as cold
	startsOver   = 500.0 // range in m of the starts in one direction, from which road and drag can be separated
)

// notes are the findings that a reader of the figures should know.
func (s *system) notes(e *Estimate) []finding.Finding {
	var out []finding.Finding
	say := func(code finding.Code, args ...finding.Arg) { out = append(out, finding.New(code, args...)) }
	n, expected := e.Noise, s.opts.Noise
	if k := s.opts.Slope; k.X != 0 {
		say(codeGrowth, finding.Share("growth", 10*k.X*units.KMH), finding.Speed("over", 10*units.KMH))
	}
	if n.GustSD > gustyTimes*expected.GustSD {
		say(codeGusty, finding.Wind("gusts", n.GustSD), finding.Num("times", n.GustSD/expected.GustSD))
	}
	if n.PostureSD > shownPosture {
		say(codePosture, finding.Share("by", n.PostureSD))
	}
	switch {
	case s.lay.mirror != nil:
		say(codeNoPlaces)
	case s.lay.knots == 0 && s.opts.Noise.RoadSD > 0:
		say(codeMaybeSmooth, finding.Share("slope", roughRoad))
	}
	s.noteShifts(say)
	if cold, ok := e.Assumed.cold(); ok {
		say(codeWarmed, finding.Share("by", cold.X).With(cold.SE))
	}
	if code := s.roughness(n); code != "" {
		say(code, finding.Share("slope", n.RoadSD))
	}
	for i, l := range e.Loads {
		scale := math.Hypot(s.opts.MassSD, s.opts.DensitySD)
		own := math.Sqrt(math.Max(0, math.Pow(l.CdA.SE/l.CdA.X, 2)-scale*scale))
		if own > wideShare {
			say(codeUncertain, finding.Share("se", 1.96*own), finding.Count("setup", i+1))
			break
		}
	}
	return out
}

// cold is the relative excess of rolling resistance at the first run over that
// of warm tyres, and whether the runs show it.
func (a Assumed) cold() (measure.Value, bool) {
	for j, what := range a.what {
		if what.code == codeColdTyres {
			return a.shown[j], a.shown[j].X > shownFrom*a.shown[j].SE
		}
	}
	return measure.Value{}, false
}

// roughness is the code of the note about an uneven road; "" if it is even.
func (s *system) roughness(n Noise) finding.Code {
	switch {
	case s.lay.knots == 0 || n.RoadSD <= roughRoad:
		return ""
	case s.lay.mirror != nil:
		return codeRough
	case s.lay.press >= 0:
		return codeRoughBaro
	case startsApart(s.runs) > startsOver:
		return codeRoughApart
	}
	return codeRoughSame
}

// startsApart is the spread of the starts of the runs in one direction, m.
func startsApart(runs []*coast) float64 {
	lo := [2]float64{math.Inf(1), math.Inf(1)}
	hi := [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, c := range runs {
		w := way(c.dir)
		lo[w], hi[w] = math.Min(lo[w], c.x[0]), math.Max(hi[w], c.x[0])
	}
	return math.Min(hi[0]-lo[0], hi[1]-lo[1])
}

// sayShifts notes the pairs between whose runs the wind changed.
func (s *system) noteShifts(say func(finding.Code, ...finding.Arg)) {
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
			say(codeWindPair, finding.Wind("by", math.Abs(d.Shift.X)).With(d.Shift.SE),
				finding.Count("pair", c.pair), finding.Count("first", c.id), finding.Count("second", other.id))
		default:
			unclear++
		}
	}
	if unclear > 0 {
		say(codeDisagree, finding.Count("pairs", unclear))
	}
}
