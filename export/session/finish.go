package session

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"stillair/sensors"
)

// finish puts the recordings in order, the largest first, and says in the notes
// of each what is not as it should be.
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
		found[0].notes.note(fmt.Sprintf("the file holds another recording beside this one, %s; desk export writes each as a file of its own", rec.brief()), 0)
	}
	for i, g := range found {
		out[i].Log.Notes = append(g.notes.list(), out[i].Log.ClockNotes()...)
	}
	return out
}

// ofFile tells with the largest recording what no recording can be said to own.
func (d *decoder) ofFile(g *gather) {
	for _, text := range d.notes.order {
		n := d.notes.counts[text]
		g.notes.many(text, n.Line, n.Count)
	}
	if d.strays > 0 {
		g.notes.many("a part that holds nothing of a recording is left out", 0, d.strays)
	}
}

// finish puts the log in order and notes what is missing from it. Torn says that
// the file ends in the middle of a part that followed it.
func (g *gather) finish(torn bool) {
	rec, log, n := &g.rec, g.rec.Log, &g.notes
	g.gaps()
	for _, m := range rec.Missing {
		n.note("damaged: missing is "+m.String(), 0)
	}
	for _, m := range rec.Unstored {
		n.note("never reached the storage: "+m.String(), 0)
	}
	switch end := g.to; {
	case torn && math.IsInf(end, -1):
		n.note("the file ends in the middle of a part, and nothing of the ride is before it", 0)
	case torn && !rec.Closed:
		n.note(fmt.Sprintf("the file ends in the middle of a part: what was recorded after %.2f s, normally less than a second, is lost", end), 0)
	case torn:
		n.note("behind the end of the recording the file goes on with something damaged", 0)
	case !rec.Closed:
		n.note("the recording was not closed: the phone or the program stopped unexpectedly", 0)
	}
	log.Motion = inOrder(n, "motion samples", g.motion.Take(), func(m sensors.Motion) float64 { return m.T })
	log.Fixes = inOrder(n, "fixes", g.fixes.Take(), func(f sensors.Fix) float64 { return f.T })
	log.Pressure = inOrder(n, "pressures", g.pressure.Take(), func(p sensors.Pressure) float64 { return p.T })
	log.Sound = apart(n, inOrder(n, "stretches of sound", g.sounds.Take(), func(s sensors.Sound) float64 { return s.T }))
	sort.SliceStable(log.States, func(i, j int) bool { return log.States[i].T < log.States[j].T })
}

// String says the span in words.
func (s Span) String() string {
	switch {
	case math.IsInf(s.From, -1) && math.IsInf(s.To, 1):
		return "all times"
	case math.IsInf(s.From, -1):
		return fmt.Sprintf("what was recorded before %.2f s", s.To)
	case math.IsInf(s.To, 1):
		return fmt.Sprintf("what was recorded after %.2f s", s.From)
	}
	return fmt.Sprintf("%.2f s to %.2f s", s.From, s.To)
}

// inOrder sorts samples by time and removes doubles, noting how many.
func inOrder[S any](notes *notes, kind string, s []S, at func(S) float64) []S {
	late := 0
	for i := 1; i < len(s); i++ {
		if at(s[i]) < at(s[i-1]) {
			late++
		}
	}
	if late > 0 {
		sort.SliceStable(s, func(i, j int) bool { return at(s[i]) < at(s[j]) })
		notes.many(strings.TrimSpace(kind)+" came before earlier ones and were put in order", 0, late)
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
		notes.many(kind+" at a time that had one already were left out", 0, doubles)
	}
	return s[:kept]
}
