package session

import (
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"stillair/sensors"
)

// partEnds returns where the members of a whole file end, found with the
// standard library's reader only.
func partEnds(t testing.TB, data []byte) []int {
	t.Helper()
	var ends []int
	for at := 0; at < len(data); {
		src := bytes.NewReader(data[at:])
		gz, err := gzip.NewReader(src)
		if err != nil {
			t.Fatal(err)
		}
		gz.Multistream(false)
		if _, err := io.Copy(io.Discard, gz); err != nil {
			t.Fatal(err)
		}
		at = len(data) - src.Len()
		ends = append(ends, at)
	}
	return ends
}

// samples counts the samples of a log.
func samples(l *sensors.Log) int {
	return len(l.Motion) + len(l.Fixes) + len(l.Pressure) + len(l.States)
}

// TestCutAnywhere cuts a file at every byte: every part that is complete
// before the cut must come back whole.
func TestCutAnywhere(t *testing.T) {
	seconds, rate := 6, 25
	if testing.Short() {
		seconds, rate = 4, 8
	}
	data := written(t, invented(seconds, rate))
	ends := partEnds(t, data)
	whole := make([]int, len(ends)) // samples in the parts up to each
	for i, end := range ends {
		whole[i] = samples(read(t, data[:end]).Log)
	}
	if last := samples(read(t, data).Log); whole[len(whole)-1] != last || last != seconds*(rate+2)+2 {
		t.Fatalf("whole file holds %d samples", last)
	}
	complete := 0
	for cut := range len(data) {
		for complete < len(ends) && ends[complete] <= cut {
			complete++
		}
		rec, err := Read(bytes.NewReader(data[:cut]), "cut")
		if complete == 0 {
			var input *sensors.InputError
			if !errors.As(err, &input) || input.Remedy.IsZero() {
				t.Fatalf("cut at %d before the first part's end: %v", cut, err)
			}
			continue
		}
		if err != nil {
			t.Fatalf("cut at %d: %v", cut, err)
		}
		if got := samples(rec.Log); got != whole[complete-1] || rec.Parts != complete || rec.Closed {
			t.Fatalf("cut at %d: %d parts with %d samples, closed %v; want %d with %d", cut, rec.Parts, got, rec.Closed, complete, whole[complete-1])
		}
		if len(rec.Log.Notes) == 0 {
			t.Fatalf("cut at %d: nothing is said about it", cut)
		}
	}
}

// TestDamage damages one part in every way and checks that all others are read,
// and that the seconds of the lost one are reported.
func TestDamage(t *testing.T) {
	log := invented(10, 50)
	data := written(t, log)
	ends := partEnds(t, data)
	const bad = 5
	from, to := ends[bad-1], ends[bad]
	spoilt := map[string][]byte{
		"removed":         append(bytes.Clone(data[:from]), data[to:]...),
		"zeroed":          append(append(bytes.Clone(data[:from]), make([]byte, to-from)...), data[to:]...),
		"its middle gone": append(bytes.Clone(data[:from+60]), data[to-60:]...),
		"magic inside":    append(append(bytes.Clone(data[:from+40]), 0x1f, 0x8b, 8, 0, 1, 2), data[from+46:]...),
	}
	step := 1
	if testing.Short() {
		step = 11
	}
	for at := from; at < to; at += step {
		d := bytes.Clone(data)
		d[at] ^= 0x55
		spoilt[fmt.Sprint("byte ", at-from)] = d
	}
	before, after := read(t, data[:from]), read(t, data[:to])
	want := samples(log) - samples(after.Log) + samples(before.Log)
	for name, d := range spoilt {
		rec := read(t, d)
		if samples(rec.Log) == samples(log) && strings.HasPrefix(name, "byte") {
			continue // a byte of the member's header that gzip ignores
		}
		if got := samples(rec.Log); got != want || rec.Parts != len(ends)-1 || !rec.Closed {
			t.Errorf("%s: %d samples in %d parts came back, closed %v; want %d in %d", name, got, rec.Parts, rec.Closed, want, len(ends)-1)
		}
		checkMissing(t, name, rec, before.Log, after.Log)
	}
}

// checkMissing checks that the missing span covers what is in after and not in
// before.
func checkMissing(t *testing.T, name string, rec *Recording, before, after *sensors.Log) {
	t.Helper()
	if len(rec.Missing) != 1 {
		t.Errorf("%s: missing %v, want one span", name, rec.Missing)
		return
	}
	lost, first := rec.Missing[0], after.Motion[len(before.Motion)].T
	last := after.Motion[len(after.Motion)-1].T
	if lost.From > first || lost.To < last || lost.To-lost.From > last-first+0.1 {
		t.Errorf("%s: missing %v, lost were %.3f to %.3f", name, lost, first, last)
	}
	if len(rec.Log.Notes) == 0 || !strings.Contains(rec.Log.Notes[0].What.String(), lost.finding().String()) {
		t.Errorf("%s: the notes %v do not name %v", name, rec.Log.Notes, lost)
	}
}

// TestFirstPartLost checks that a session without its header can be read.
func TestFirstPartLost(t *testing.T) {
	log := invented(90, 10)
	data := written(t, log)
	for lost := range 3 {
		d := bytes.Clone(data)
		d[partEnds(t, data)[lost]-6] ^= 1 // in the CRC
		rec := read(t, d)
		if rec.Log.Ride.Bike != log.Ride.Bike {
			t.Errorf("part %d lost: the ride was not had back from its repetition", lost+1)
		}
		if lost > 0 && len(rec.Missing) != 1 {
			t.Errorf("part %d lost: missing %v", lost+1, rec.Missing)
		}
		if len(rec.Log.Notes) == 0 {
			t.Errorf("part %d lost: not a word about it", lost+1)
		}
	}
}
