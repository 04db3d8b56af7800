package session

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// mark holds where the log stood, to go back to when a part turns out damaged.
type mark struct {
	motion, fixes, pressure, states, remarks int
	sounds, heard                            int
	ride                                     sensors.Ride
	header                                   Header
	name                                     string
	line                                     int
	text, words                              int64
}

func (d *decoder) mark() mark {
	l := d.rec.Log
	return mark{motion: d.motion.Len(), fixes: d.fixes.Len(), pressure: d.pressure.Len(), states: len(l.States),
		remarks: len(d.rec.Remarks), ride: l.Ride, header: d.rec.Header, name: d.rec.Name,
		sounds: d.sounds.Len(), heard: d.heard, line: d.line, text: d.text, words: d.words}
}

func (d *decoder) back(m mark) {
	l := d.rec.Log
	d.motion.Cut(m.motion)
	d.fixes.Cut(m.fixes)
	d.pressure.Cut(m.pressure)
	d.sounds.Cut(m.sounds)
	d.heard = m.heard
	l.States = l.States[:m.states]
	d.rec.Remarks, l.Ride, d.rec.Header, d.rec.Name = d.rec.Remarks[:m.remarks], m.ride, m.header, m.name
	d.line, d.text, d.words = m.line, m.text, m.words
}

// note counts what was found odd, by its text.
func (d *decoder) note(text string, line int) {
	n, ok := d.counts[text]
	if !ok {
		const most = 200
		if len(d.order) >= most {
			text, line = "more that is odd", 0
			if n, ok = d.counts[text]; ok {
				n.Count++
				return
			}
		}
		n = &sensors.Note{File: d.name, Line: line, What: finding.Said(text)}
		d.counts[text] = n
		d.order = append(d.order, text)
	}
	n.Count++
}

// finish puts the log in order and says in its notes what is not as it should
// be.
func (d *decoder) finish() *Recording {
	rec, log := &d.rec, d.rec.Log
	for _, m := range rec.Missing {
		d.note("damaged: missing is "+m.String(), 0)
	}
	switch {
	case d.damaged && math.IsInf(d.lastTo, -1):
		d.note("the file ends in the middle of a part, and nothing of the ride is before it", 0)
	case d.damaged:
		d.note(fmt.Sprintf("the file ends in the middle of a part: what was recorded after %.2f s, normally less than a second, is lost", d.lastTo), 0)
	case !rec.Closed:
		d.note("the recording was not closed: the phone or the program stopped unexpectedly", 0)
	}
	log.Motion = inOrder(d, "motion samples", d.motion.Take(), func(m sensors.Motion) float64 { return m.T })
	log.Fixes = inOrder(d, "fixes", d.fixes.Take(), func(f sensors.Fix) float64 { return f.T })
	log.Pressure = inOrder(d, "pressures", d.pressure.Take(), func(p sensors.Pressure) float64 { return p.T })
	log.Sound = apart(d, inOrder(d, "stretches of sound", d.sounds.Take(), func(s sensors.Sound) float64 { return s.T }))
	sort.SliceStable(log.States, func(i, j int) bool { return log.States[i].T < log.States[j].T })
	for _, text := range d.order {
		log.Notes = append(log.Notes, *d.counts[text])
	}
	return rec
}

// String says the span in words.
func (s Span) String() string {
	if math.IsInf(s.From, -1) {
		return fmt.Sprintf("what was recorded before %.2f s", s.To)
	}
	return fmt.Sprintf("%.2f s to %.2f s", s.From, s.To)
}

// inOrder sorts samples by time and removes doubles, noting how many.
func inOrder[S any](d *decoder, kind string, s []S, at func(S) float64) []S {
	late := 0
	for i := 1; i < len(s); i++ {
		if at(s[i]) < at(s[i-1]) {
			late++
		}
	}
	if late > 0 {
		sort.SliceStable(s, func(i, j int) bool { return at(s[i]) < at(s[j]) })
		d.noteMany(strings.TrimSpace(kind)+" came before earlier ones and were put in order", late)
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
		d.noteMany(kind+" at a time that had one already were left out", doubles)
	}
	return s[:kept]
}

func (d *decoder) noteMany(text string, count int) {
	d.note(text, 0)
	d.counts[text].Count = count
}
