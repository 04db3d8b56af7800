package runs

import (
	"cmp"
	"math"
	"slices"

	"stillair/runs/engine"
)

// Where neither gears nor the engine's limit were entered, the engine still turns a
// fixed number of times per metre in each gear. Which order of the engine shakes the
// phone most is not known, so the engine speed cannot be computed; but two pushes
// with the same line were in the same gear, and two with different lines in
// different gears, whose ratios differ by the quotient of the lines. That holds if
// the engine shakes at the same order in both, so it is used only between
// neighbouring gears, and not where a mistaken order would explain the difference of
// torque.
//
// The limits were set on the seeds 3001 to 3040 of the pulls of package foreign, in
// which noise reaches 2.5 to 4 somewhere; they are judged on its others and on the
// accuracy report's studies "power-mixed" and "riders".
const (
	mostPushing  = 26.0  // 1/m: the second order of an engine at 780 1/min per m/s
	ownLine      = 4.5   // standard deviations from which a line counts if another push has it too
	oneGearLine  = 4.0   // standard deviations for a line that is searched for only near a few places
	rivalLine    = 0.7   // of the clearest line, limit for a line of another gear
	sameLine     = 0.025 // maximum relative difference of lines of one gear: the error of the speed, and of a short push
	fewestRolled = 2     // coast-downs without a line that show that it comes from the engine
	nextGears    = 1.42  // ratio of two gears up to which orders are not confused
	orderApart   = 1.45  // ratio of torques from which they may be
)

// gearLine is the vibration of a gear: its lines, 1/m, from the lowest visible
// order.
type gearLine []float64

// against is how much faster the engine turns in one gear than in another at one road
// speed, where that is known, and whether they are two. Of neighbouring gears the lines
// of one order are nearest to each other, whichever orders each shows.
func (g gearLine) against(other gearLine) (scale float64, known, two bool) {
	if g[0] == other[0] {
		return 1, true, false
	}
	scale = math.Inf(1)
	for _, a := range g {
		for _, b := range other {
			if math.Abs(math.Log(a/b)) < math.Abs(math.Log(scale)) {
				scale = a / b
			}
		}
	}
	if apart := math.Abs(math.Log(scale)); apart > math.Log(nextGears) || apart < sameGear {
		return 1, false, true
	}
	return scale, true, true
}

// shownGears are the gears that a ride shows.
type shownGears []gearLine

// listen finds the lines of pushes of which none has a ratio that is known. A line may
// be a wheel's or a chain's as well: none counts that was felt while the bike rolled
// freely, and none alone unless the bike rolled freely without it.
func (e *tachometer) listen(pushes []drive, rolling []engine.Spectrum) {
	if slices.ContainsFunc(pushes, func(d drive) bool { return d.ratio > 0 }) {
		return
	}
	all, own := make([]engine.Spectrum, len(pushes)), make([]engine.Line, len(pushes))
	parallel(len(pushes), func(k int) {
		felt := axes(e.log, e.track, Run{Start: pushes[k].from, End: pushes[k].to})
		all[k] = engine.NewSpectrum(felt, fewestTurns, mostPushing)
		own[k] = engineLine(felt, all[k])
	})
	gears := gearsOf(all, own, rolling)
	for k := range pushes {
		pushes[k].lines = gears.of(all[k])
	}
}

// gearsOf are the gears that a ride shows; none where the lines may not come
// from a gear.
func gearsOf(all []engine.Spectrum, own []engine.Line, rolling []engine.Spectrum) shownGears {
	gears := gearsShown(own, rolling)
	if len(gears) == 1 && rolledBy(gears[0][0], rolling) < fewestRolled {
		return nil
	}
	return gears.joined(all)
}

// rolledBy is the number of coast-downs in which a line could have been
// visible.
func rolledBy(line float64, rolling []engine.Spectrum) (n int) {
	for _, s := range rolling {
		if s.Near(line, sameLine).Frames > 0 {
			n++
		}
	}
	return n
}

// gearsShown are the lines that several pushes confirm, or one alone beyond doubt.
func gearsShown(own []engine.Line, rolling []engine.Spectrum) (gears shownGears) {
	own = slices.Clone(own)
	slices.SortFunc(own, func(a, b engine.Line) int { return cmp.Compare(b.Strength(), a.Strength()) })
	for i, l := range own {
		borne := l.Strength() >= ownLine && slices.ContainsFunc(own[i+1:], func(other engine.Line) bool {
			return other.Strength() >= ownLine && math.Abs(other.PerMetre/l.PerMetre-1) < sameLine
		})
		known := slices.ContainsFunc(gears, func(g gearLine) bool { return math.Abs(g[0]/l.PerMetre-1) < sameGear })
		rolled := slices.ContainsFunc(rolling, func(s engine.Spectrum) bool { return s.Near(l.PerMetre, sameLine).Strength() >= ownLine })
		if (sure(l) || borne) && !known && !rolled {
			gears = append(gears, gearLine{l.PerMetre})
		}
	}
	slices.SortFunc(gears, func(a, b gearLine) int { return cmp.Compare(a[0], b[0]) })
	return gears
}

// joined adds to each gear the other order that a push in it shows as well, and
// merges two gears that prove to be the same.
func (gears shownGears) joined(all []engine.Spectrum) (out shownGears) {
	for _, g := range gears {
		lines := gearLine{g[0]}
		for _, other := range [2]float64{g[0] / 2, g[0] * 2} { // an engine's strongest orders (Heywood, see package engine)
			if other > fewestTurns && other < mostPushing && shownAtOnce(all, g[0], other) {
				lines = append(lines, other)
			}
		}
		slices.Sort(lines)
		if !slices.ContainsFunc(out, func(o gearLine) bool { return math.Abs(o[0]/lines[0]-1) < sameGear }) {
			out = append(out, lines)
		}
	}
	return out
}

// shownAtOnce reports whether a push shows two lines at once.
func shownAtOnce(all []engine.Spectrum, a, b float64) bool {
	return slices.ContainsFunc(all, func(s engine.Spectrum) bool {
		return min(s.Near(a, sameLine).Strength(), s.Near(b, sameLine).Strength()) >= leastTurning
	})
}

// of is the gear that one push shows; nil: none, or two.
func (gears shownGears) of(s engine.Spectrum) gearLine {
	var shown gearLine
	best, second := 0.0, 0.0
	for _, g := range gears {
		z := 0.0
		for _, line := range g {
			z = math.Max(z, s.Near(line, sameLine).Strength())
		}
		if z > best {
			shown, best, second = g, z, best
		} else {
			second = math.Max(second, z)
		}
	}
	if best < oneGearLine || second > rivalLine*best {
		return nil
	}
	return shown
}
