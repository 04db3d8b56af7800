package session

import (
	"math"
	"slices"
	"sort"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// finish sorts the recordings, the largest first, and adds notes about the
// faults of each.
func (d *decoder) finish() []*Recording {
	var found []*gather
	for _, g := range d.all {
		if g.known > 0 || len(d.all) == 1 {
			found = append(found, g)
		} else {
			d.strays += g.rec.Parts
		}
	}
	slices.SortStableFunc(found, func(a, b *gather) int { return b.rec.Parts - a.rec.Parts })
	var out []*Recording
	for i, g := range found {
		if i == 0 {
			d.ofFile(g)
		}
		g.finish(d.torn && d.last == g)
		out = append(out, &g.rec)
	}
	first := out[0]
	for _, rec := range out[1:] {
		first.Others = append(first.Others, rec.brief())
		found[0].notes.note(rec.brief().finding(), 0)
	}
	for i, g := range found {
		out[i].Log.Notes = append(g.notes.list(), out[i].Log.ClockNotes()...)
	}
	return out
}

// ofFile adds the notes that belong to no recording to the largest one.
func (d *decoder) ofFile(g *gather) {
	for _, n := range d.notes.list() {
		g.notes.many(n.What, n.Line, n.Count)
	}
	if d.strays > 0 {
		g.notes.many(finding.New("session.stray_part"), 0, d.strays)
	}
}

// finish sorts the log and notes what is missing from it. torn means that the
// file ends in the middle of a part that followed it.
func (g *gather) finish(torn bool) {
	rec, log, n := &g.rec, g.rec.Log, &g.notes
	g.gaps()
	for _, m := range rec.Missing {
		n.note(finding.New("session.missing", finding.Of("span", m.finding())), 0)
	}
	for _, m := range rec.Unstored {
		n.note(finding.New("session.unstored", finding.Of("span", m.finding())), 0)
	}
	switch end := g.to; {
	case torn && math.IsInf(end, -1):
		n.note(finding.New("session.torn_at_once"), 0)
	case torn && !rec.Closed:
		n.note(finding.New("session.torn", finding.Moment("after", end)), 0)
	case torn:
		n.note(finding.New("session.damaged_behind"), 0)
	case !rec.Closed:
		n.note(finding.New("session.not_closed"), 0)
	}
	log.Motion = inOrder(n, "session.samples", g.motion.Take(), func(m sensors.Motion) float64 { return m.T })
	log.Fixes = inOrder(n, "session.fixes", g.fixes.Take(), func(f sensors.Fix) float64 { return f.T })
	log.Pressure = inOrder(n, "session.pressures", g.pressure.Take(), func(p sensors.Pressure) float64 { return p.T })
	log.Sound = apart(n, inOrder(n, "session.sounds", g.sounds.Take(), func(s sensors.Sound) float64 { return s.T }))
	sort.SliceStable(log.States, func(i, j int) bool { return log.States[i].T < log.States[j].T })
}

// finding is the finding about the span.
func (s Span) finding() finding.Finding {
	switch {
	case math.IsInf(s.From, -1) && math.IsInf(s.To, 1):
		return finding.New("session.span_all")
	case math.IsInf(s.From, -1):
		return finding.New("session.span_before", finding.Moment("to", s.To))
	case math.IsInf(s.To, 1):
		return finding.New("session.span_after", finding.Moment("from", s.From))
	}
	return finding.New("session.span", finding.Moment("from", s.From), finding.Moment("to", s.To))
}

// inOrder sorts samples by time and removes doubles, noting how many.
func inOrder[S any](notes *notes, kind finding.Code, s []S, at func(S) float64) []S {
	late := 0
	for i := 1; i < len(s); i++ {
		if at(s[i]) < at(s[i-1]) {
			late++
		}
	}
	if late > 0 {
		sort.SliceStable(s, func(i, j int) bool { return at(s[i]) < at(s[j]) })
		notes.many(finding.New("session.sorted", finding.Of("what", finding.New(kind))), 0, late)
	}
	kept := 0
	for i := range s {
		if kept > 0 && at(s[i]) == at(s[kept-1]) {
			continue
		}
		s[kept] = s[i]
		kept++
	}
	if doubles := len(s) - kept; doubles > 0 {
		notes.many(finding.New("session.doubled", finding.Of("what", finding.New(kind))), 0, doubles)
	}
	return s[:kept]
}
