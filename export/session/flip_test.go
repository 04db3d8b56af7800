package session

import (
	"bytes"
	"compress/gzip"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"stillair/sensors"
	"stillair/sensors/sim/batch"
)

// countsOf counts the samples of whole members of a file with the standard
// library's reader, by member.
func countsOf(t testing.TB, data []byte) (ends []int, times []map[float64]bool) {
	t.Helper()
	ends = partEnds(t, data)
	from := 0
	for _, end := range ends {
		gz, err := gzip.NewReader(bytes.NewReader(data[from:end]))
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(gz)
		if err != nil {
			t.Fatal(err)
		}
		of := map[float64]bool{}
		if bytes.Contains(text, []byte(`"type":"motion"`)) || bytes.Contains(text, []byte(`"type":"fix"`)) {
			rec, err := ReadText(bytes.NewReader(text), "part")
			if err != nil {
				t.Fatal(err)
			}
			for _, m := range rec.Log.Motion {
				of[m.T] = true
			}
			for _, f := range rec.Log.Fixes {
				of[-f.T] = true
			}
		}
		times = append(times, of)
		from = end
	}
	return ends, times
}

// flipFiles are the kinds of files in which bits are flipped.
func flipFiles(t testing.TB) map[string][]byte {
	silent := invented(25, 10)
	silent.Sound, silent.Pressure = nil, nil
	sounding := written(t, invented(25, 10))
	ends := partEnds(t, sounding)
	old, err := os.ReadFile(filepath.Join("testdata", "version1", "with-sound-closed.jsonl.gz"))
	if err != nil {
		t.Fatal(err)
	}
	return map[string][]byte{"closed": sounding, "without sound": written(t, silent), "cut off": sounding[:ends[len(ends)-3]],
		"of version 1": old, "joined": append(writtenAs(t, ID{9}, invented(12, 5)), sounding...)}
}

// writtenAs writes a log as the recording with a given ID.
func writtenAs(t testing.TB, id ID, log *sensors.Log) []byte {
	t.Helper()
	m := &memory{}
	if err := Write(m, log, Header{ID: id, Device: "invented phone"}); err != nil {
		t.Fatal(err)
	}
	return m.data
}

// TestOneBitFlipped flips bits all over files of five kinds, one at a time: every
// part except the one with the bit is read, whatever its content, and nothing is
// read that was not written.
func TestOneBitFlipped(t *testing.T) {
	flips := batch.Size(4000, 300) // of each kind
	for name, data := range flipFiles(t) {
		t.Run(name, func(t *testing.T) {
			ends, times := countsOf(t, data)
			rng := rand.New(rand.NewPCG(20, 26))
			for range flips {
				bit := rng.IntN(8 * len(data))
				data[bit/8] ^= 1 << (bit % 8)
				checkFlipped(t, data, bit, ends, times)
				data[bit/8] ^= 1 << (bit % 8)
				if t.Failed() {
					return
				}
			}
		})
	}
}

// checkFlipped reads a file with one flipped bit.
func checkFlipped(t *testing.T, data []byte, bit int, ends []int, times []map[float64]bool) {
	t.Helper()
	all, err := ReadAll(bytes.NewReader(data), "flipped")
	if err != nil {
		t.Errorf("bit %d: %v", bit, err)
		return
	}
	back := map[float64]int{}
	for _, rec := range all {
		for _, m := range rec.Log.Motion {
			back[m.T]++
		}
		for _, f := range rec.Log.Fixes {
			back[-f.T]++
		}
		if rec.Log.Ride.Mass != 290 {
			t.Errorf("bit %d: the ride was lost", bit)
		}
	}
	hit, from := -1, 0
	for i, of := range times {
		within := bit/8 >= from && bit/8 < ends[i]
		if from = ends[i]; within {
			hit = i
			continue
		}
		for at := range of {
			if back[at] == 0 {
				t.Errorf("bit %d: part %d has lost its sample at %g, and the bit is in another one", bit, i+1, at)
				return
			}
			back[at]--
		}
	}
	for at := range times[hit] {
		back[at]--
	}
	for at, more := range back {
		if more <= 0 {
			continue
		}
		t.Errorf("bit %d: a sample at %g came back that nobody wrote", bit, at)
		return
	}
}
