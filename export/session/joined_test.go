package session

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"stillair/sensors"
)

// cutUp is a file split into its parts.
func cutUp(t testing.TB, data []byte) (parts [][]byte) {
	from := 0
	for _, end := range partEnds(t, data) {
		parts = append(parts, data[from:end])
		from = end
	}
	return parts
}

// joinings are the ways in which parts of two recordings get into one file.
func joinings() map[string]func(rng *rand.Rand, a, b [][]byte) [][]byte {
	return map[string]func(rng *rand.Rand, a, b [][]byte) [][]byte{
		"joined": func(_ *rand.Rand, a, b [][]byte) [][]byte { return slices.Concat(a, b) },
		"interleaved": func(rng *rand.Rand, a, b [][]byte) (out [][]byte) {
			for len(a)+len(b) > 0 {
				if rng.IntN(len(a)+len(b)) < len(a) {
					out, a = append(out, a[0]), a[1:]
				} else {
					out, b = append(out, b[0]), b[1:]
				}
			}
			return out
		},
		"stale behind": func(rng *rand.Rand, a, b [][]byte) [][]byte {
			tail := b[1+rng.IntN(len(b)-1):]
			torn := tail[0][rng.IntN(len(tail[0])):]
			return slices.Concat(a, [][]byte{torn}, tail[1:])
		},
		"shuffled": func(rng *rand.Rand, a, b [][]byte) [][]byte {
			out := slices.Concat(a, b)
			rng.Shuffle(len(out), func(i, j int) { out[i], out[j] = out[j], out[i] })
			return out
		},
	}
}

// TestRecordingsAreKeptApart joins, interleaves and shuffles the parts of two
// recordings whose clocks and numbers are alike, and leaves old blocks after
// one: each recording is read with its own samples and no others.
func TestRecordingsAreKeptApart(t *testing.T) {
	times := 500 // of each kind
	if testing.Short() {
		times = 60
	}
	rng := rand.New(rand.NewPCG(17, 2000))
	one, two := invented(14, 6), invented(9, 6)
	for i := range two.Motion { // to distinguish them
		two.Motion[i].Force.X = 77
	}
	a, b := cutUp(t, writtenAs(t, ID{1}, one)), cutUp(t, writtenAs(t, ID{2}, two))
	for name, join := range joinings() {
		for n := range times {
			all, err := ReadAll(bytes.NewReader(bytes.Join(join(rng, a, b), nil)), name)
			if err != nil {
				t.Fatalf("%s %d: %v", name, n, err)
			}
			for _, rec := range all {
				checkOnly(t, fmt.Sprintf("%s %d", name, n), rec)
				if rec.Header.ID == (ID{1}) && !sameSamples(rec.Log, one) {
					t.Errorf("%s %d: the first has %d of %d samples", name, n, samples(rec.Log), samples(one))
				}
				if name != "stale behind" && (len(all) != 2 || rec.Header.ID == (ID{2}) && !sameSamples(rec.Log, two)) {
					t.Errorf("%s %d: %d recordings", name, n, len(all))
				}
			}
			if t.Failed() {
				return
			}
		}
	}
}

// checkOnly checks that a recording holds samples of one ride only, reports a
// second one in the file, and reports nothing as missing that is there.
func checkOnly(t *testing.T, name string, rec *Recording) {
	t.Helper()
	for _, m := range rec.Log.Motion {
		if (m.Force.X == 77) != (rec.Header.ID == ID{2}) {
			t.Errorf("%s: the recording %s holds a reading of another", name, rec.Header.ID)
			return
		}
	}
	if rec.Header.ID == (ID{1}) && len(rec.Missing)+len(rec.Unstored) > 0 {
		t.Errorf("%s: missing %v, unstored %v", name, rec.Missing, rec.Unstored)
	}
}

// TestOthersAreNamed checks that the largest recording names the others in the
// file, even in an unpacked one.
func TestOthersAreNamed(t *testing.T) {
	data := append(writtenAs(t, ID{2}, invented(9, 6)), written(t, invented(14, 6))...)
	rec := read(t, data)
	if rec.Header.ID != testID || len(rec.Others) != 1 || rec.Others[0].ID != (ID{2}) || rec.Others[0].Parts < 8 {
		t.Errorf("%v beside %v", rec.Others, rec.Header.ID)
	}
	if n := fmt.Sprint(rec.Log.Notes); !strings.Contains(n, "session.another") {
		t.Errorf("notes %s", n)
	}
}

// TestOldRecordingsJoined checks that two files of version 1 that were joined are
// distinguished by their numbers and clocks, which is all they have.
func TestOldRecordingsJoined(t *testing.T) {
	anonymous := func(data []byte) []byte {
		var out bytes.Buffer
		for _, p := range cutUp(t, data) {
			text := unpacked(t, p)
			text = bytes.Replace(text, []byte(`"id":"`+testID.String()+`",`), nil, 1)
			out.Write(packed(bytes.NewReader(bytes.Replace(text, []byte(`"version":2`), []byte(`"version":1`), 1))))
		}
		return out.Bytes()
	}
	one, two := invented(14, 6), invented(9, 6)
	later := &memory{}
	if err := Write(later, two, Header{ID: testID, Device: "another invented phone"}); err != nil {
		t.Fatal(err)
	}
	all, err := ReadAll(bytes.NewReader(append(anonymous(written(t, one)), anonymous(later.data)...)), "joined")
	if err != nil || len(all) != 2 {
		t.Fatalf("%d recordings, %v", len(all), err)
	}
	for i, log := range []*sensors.Log{one, two} {
		if !sameSamples(all[i].Log, log) || len(all[i].Missing) > 0 {
			t.Errorf("recording %d: %d of %d samples, missing %v", i, samples(all[i].Log), samples(log), all[i].Missing)
		}
	}
}

// unpacked is the text of one part.
func unpacked(t testing.TB, part []byte) []byte {
	t.Helper()
	d := newDecoder("part", len(part))
	if err := d.unpack(bytes.NewReader(part)); err != nil {
		t.Fatal(err)
	}
	if _, _, err := d.hold(); err != nil {
		t.Fatal(err)
	}
	return bytes.Clone(d.text)
}

// TestLatePartsAreNotMissing stores parts in the order that results from failed
// syncs: some are lost and written again after later ones. Nothing is missing,
// and the latest entry counts.
func TestLatePartsAreNotMissing(t *testing.T) {
	log := invented(14, 6)
	m := &memory{}
	w, err := NewWriter(m, Header{ID: testID}, log.Ride)
	if err != nil {
		t.Fatal(err)
	}
	deliver(log, w)
	w.SetName("first")
	if err := w.Flush(); err != nil {
		t.Fatal(err)
	}
	w.SetName("second")
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	parts := cutUp(t, m.data)
	rng := rand.New(rand.NewPCG(3, 3))
	for range 200 {
		from := rng.IntN(len(parts) - 1)
		to := from + 1 + rng.IntN(len(parts)-from-1)
		late := slices.Concat(parts[:from], parts[to:], parts[from:])
		rec := read(t, bytes.Join(late, nil))
		if !sameSamples(rec.Log, log) || len(rec.Missing)+len(rec.Unstored) > 0 || !rec.Closed || rec.Name != "second" {
			t.Fatalf("parts %d to %d late: missing %v, unstored %v, %q, notes %v", from, to, rec.Missing, rec.Unstored, rec.Name, rec.Log.Notes)
		}
	}
}

// TestMissingOrLate distinguishes gaps due to damage from parts that never
// reached the storage, in a recording that was cut off: each part contains the
// number up to which all were synced.
func TestMissingOrLate(t *testing.T) {
	store := &shaky{}
	log := invented(20, 6)
	w, err := NewWriter(store, Header{ID: testID}, log.Ride)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	deliver(log, &tap{Sink: w, each: func() { n++; store.failSync = n > 80 }})
	parts := cutUp(t, store.data)
	safe := slices.Delete(slices.Clone(parts), 4, 5)
	if rec := read(t, bytes.Join(safe, nil)); len(rec.Missing) != 1 || len(rec.Unstored) != 0 {
		t.Errorf("a part that was safe: missing %v, unstored %v", rec.Missing, rec.Unstored)
	}
	unsafe := slices.Delete(slices.Clone(parts), len(parts)-3, len(parts)-2)
	if rec := read(t, bytes.Join(unsafe, nil)); len(rec.Missing) != 0 || len(rec.Unstored) != 1 {
		t.Errorf("a part that no sync confirmed: missing %v, unstored %v", rec.Missing, rec.Unstored)
	}
}
