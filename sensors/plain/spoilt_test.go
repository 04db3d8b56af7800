package plain

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"testing/fstest"

	"stillair/sensors"
)

// spoils are ways to damage a file; each takes a file's text and returns it
// damaged.
var spoils = map[string]func(*rand.Rand, string) string{
	"bytes changed": func(rng *rand.Rand, s string) string {
		b := []byte(s)
		for range 1 + rng.IntN(50) {
			b[rng.IntN(len(b))] = byte(rng.Uint32())
		}
		return string(b)
	},
	"cut short": func(rng *rand.Rand, s string) string { return s[:rng.IntN(len(s))] },
	"a hole": func(rng *rand.Rand, s string) string {
		from := rng.IntN(len(s))
		return s[:from] + strings.Repeat("\x00", min(4096, len(s)-from)) + s[min(len(s), from+4096):]
	},
	"lines shuffled": func(rng *rand.Rand, s string) string {
		lines := strings.SplitAfter(s, "\n")
		rows := lines[1:]
		rng.Shuffle(len(rows), func(i, j int) { rows[i], rows[j] = rows[j], rows[i] })
		return strings.Join(lines, "")
	},
	"a column scaled": func(rng *rand.Rand, s string) string {
		factor := []float64{0, -1, 1e-9, 1e9, 1e200}[rng.IntN(5)]
		return each(times(factor), rng.IntN(7))(s)
	},
	"cells emptied": func(rng *rand.Rand, s string) string {
		cells := strings.Split(s, ",")
		for range len(cells) / (1 + rng.IntN(20)) {
			cells[rng.IntN(len(cells))] = []string{"", "NaN", "Inf", "-", "\"", "1e999"}[rng.IntN(6)]
		}
		return strings.Join(cells, ",")
	},
	"twice": func(_ *rand.Rand, s string) string { return s + s },
	"another log inside": func(rng *rand.Rand, s string) string {
		at := rng.IntN(len(s))
		return s[:at] + s + s[at:]
	},
}

// TestSpoiltFiles: 400 logs with a damaged file give an error with a remedy or a
// valid log, and most of those with small damage a log.
func TestSpoiltFiles(t *testing.T) {
	good := sheet(nil)
	for name, spoil := range spoils {
		read := 0
		for seed := range uint64(50) {
			rng := rand.New(rand.NewPCG(seed, 11))
			fsys := fstest.MapFS{}
			for file, f := range good {
				fsys[file] = f
			}
			file := []string{motionFile, gnssFile, pressureFile, rideFile}[rng.IntN(4)]
			fsys[file] = &fstest.MapFile{Data: []byte(spoil(rng, string(good[file].Data)))}
			log, err := ReadFS(fsys, "ride")
			t.Run(fmt.Sprintf("%s %d", name, seed), func(t *testing.T) { mustBeSound(t, log, err) })
			if err == nil {
				read++
			}
		}
		if read == 0 {
			t.Errorf("%s: not one log of 50 could be read", name)
		}
	}
}

// TestSpoiltArchives: the same for the bytes of a zip.
func TestSpoiltArchives(t *testing.T) {
	log, err := ReadFS(sheet(nil), "ride")
	if err != nil {
		t.Fatal(err)
	}
	var z bytes.Buffer
	if err := WriteZip(&z, log); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"bytes changed", "cut short", "a hole", "twice", "another log inside"} {
		for seed := range uint64(40) {
			b := spoils[name](rand.New(rand.NewPCG(seed, 12)), z.String())
			var got *sensors.Log
			got, err := ReadZip(strings.NewReader(b), int64(len(b)), "ride.zip")
			mustBeSound(t, got, err)
		}
	}
}
