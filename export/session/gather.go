package session

import (
	"maps"
	"math"
	"slices"

	"stillair/sensors"
	"stillair/sensors/chunk"
	"stillair/sensors/finding"
)

// gather is one recording of the file while it is being read.
type gather struct {
	id    ID
	rec   Recording
	parts map[int]piece // the numbered ones, by their numbers
	last  int           // highest number
	to    float64       // time of the last sample announced by a part; −∞ before the first
	kept  int           // the recorder knew that the parts up to this one were synced
	known int           // lines of a known type

	motion   chunk.Buffer[sensors.Motion]
	fixes    chunk.Buffer[sensors.Fix]
	pressure chunk.Buffer[sensors.Pressure]
	sounds   chunk.Buffer[sensors.Sound]

	latest map[string]int // number of the part with the last line of each kind
	notes  notes
}

// later reports whether the line in part n is newer than the last of its kind so
// far. A part that was stored late, after a failed sync, does not bring back an
// older line.
func (g *gather) later(kind string, n int) bool {
	if n < g.latest[kind] {
		return false
	}
	g.latest[kind] = n
	return true
}

// piece identifies a part, to recognise copies of it and the seconds that are
// missing.
type piece struct {
	sum      uint32 // CRC-32 of its text
	from, to float64
}

func newGather(file string, id ID) *gather {
	return &gather{id: id, to: math.Inf(-1), parts: map[int]piece{}, latest: map[string]int{}, notes: notes{file: file},
		rec: Recording{Header: Header{ID: id, Start: math.NaN()}, Log: &sensors.Log{Ride: sensors.UnknownRide()}}}
}

// accept records a complete part as present.
func (g *gather) accept(p part, sum uint32) {
	g.rec.Parts++
	g.rec.Closed = g.rec.Closed || p.end
	g.known += p.known
	if p.n > 0 {
		g.parts[p.n] = piece{sum, p.from, p.to}
		g.last = max(g.last, p.n)
		if p.to > g.to {
			g.to = p.to
		}
		g.kept = max(g.kept, p.kept)
	}
}

// fits reports whether an unmarked part of another content than all so far may
// belong to this recording: its number is free, it is not behind the end of a
// closed one, and its times lie between those of its neighbours by number. A
// file of version 1 has nothing else to go by.
func (g *gather) fits(p part) bool {
	if p.n <= 0 {
		return true
	}
	if _, taken := g.parts[p.n]; taken || g.rec.Closed && p.n > g.last {
		return false
	}
	if math.IsNaN(p.from) {
		return true
	}
	const interleaved = 5.0 // s by which samples of different kinds may be out of order
	if p.n > g.last {
		return g.to <= p.from+interleaved
	}
	const near = 64 // numbers, to limit the time for a malformed file
	for i := 1; i <= near; i++ {
		if x, there := g.parts[p.n-i]; there && x.to > p.from+interleaved {
			return false
		}
		if x, there := g.parts[p.n+i]; there && x.from < p.to-interleaved {
			return false
		}
	}
	return true
}

// gaps finds the numbers without a part. Those that the recorder knew to be
// stored, or of a closed recording, are missing; the others, of a recording
// that was cut off or is still being written, never reached the storage.
func (g *gather) gaps() {
	numbers := slices.Sorted(maps.Keys(g.parts))
	at, before, to := 0, 0, math.Inf(-1) // last part present, and its end
	owed, late := false, false
	for _, n := range numbers {
		x := g.parts[n]
		if n > before+1 {
			if g.rec.Closed || before+1 <= g.kept || g.id == (ID{}) {
				owed = true
			} else {
				late = true
			}
		}
		before = n
		if math.IsNaN(x.from) {
			continue
		}
		if s := (Span{From: to, To: x.from}); owed {
			g.rec.Missing = append(g.rec.Missing, s)
		} else if late {
			g.rec.Unstored = append(g.rec.Unstored, s)
		}
		owed, late, at, to = false, false, n, max(to, x.to)
	}
	if owed && at > 0 {
		g.rec.Missing = append(g.rec.Missing, Span{From: to, To: math.Inf(1)})
	}
}

// notes counts what was found odd, by its code and arguments.
type notes struct {
	file   string
	counts map[string]*sensors.Note
	order  []string // keys of counts in order of appearance
}

func (s *notes) note(what finding.Finding, line int) { s.many(what, line, 1) }

func (s *notes) many(what finding.Finding, line, count int) {
	const most = 200
	key := what.String()
	n, ok := s.counts[key]
	if !ok && len(s.order) >= most {
		what, line = finding.New("session.more_odd"), 0
		key = what.String()
		n, ok = s.counts[key]
	}
	if !ok {
		if s.counts == nil {
			s.counts = map[string]*sensors.Note{}
		}
		n = &sensors.Note{File: s.file, Line: line, What: what}
		s.counts[key] = n
		s.order = append(s.order, key)
	}
	n.Count += count
}

// list returns the notes in order of occurrence.
func (s *notes) list() []sensors.Note {
	var out []sensors.Note
	for _, key := range s.order {
		out = append(out, *s.counts[key])
	}
	return out
}
