package session

import (
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// memoryOf names, in the environment, the file that a process of its own reads to
// measure what that takes.
const memoryOf = "STILLAIR_MEMORY_OF"

// TestMemoryOfAReading holds what a reading takes while a file is read, as
// FAULTS.md says it: 56 bytes stay, and less than 160 are used at the most. A
// fresh process reads: one that has a heap already would read into that.
func TestMemoryOfAReading(t *testing.T) {
	if path := os.Getenv(memoryOf); path != "" {
		measureReading(t, path)
		return
	}
	if testing.Short() {
		t.Skip("writes and reads a million readings")
	}
	m := &memory{}
	w, err := NewWriter(m, Header{ID: testID}, sensors.UnknownRide())
	if err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(4, 4))
	for i := range memoryReadings {
		w.Motion(sensors.Motion{T: float64(i) / 200, Force: r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: 9.8}, Turn: r3.Vec{Z: rng.NormFloat64() / 10}})
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "million")
	if err := os.WriteFile(path, m.data, 0o600); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(os.Args[0], "-test.run=^TestMemoryOfAReading$", "-test.v")
	cmd.Env = append(os.Environ(), memoryOf+"="+path)
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	t.Logf("%s", out)
}

const memoryReadings = 1_000_000

// measureReading reads the file and compares what the heap took of the machine.
func measureReading(t *testing.T, path string) {
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	rec := read(t, data[:len(data):len(data)])
	runtime.ReadMemStats(&after)
	if n := len(rec.Log.Motion); n != memoryReadings {
		t.Fatalf("%d readings", n)
	}
	each := (float64(after.HeapSys) - float64(before.HeapSys)) / memoryReadings
	if each > 160 || each < 56 {
		t.Errorf("%.0f bytes each while reading, want 56 to 160", each)
	} else {
		t.Logf("%.0f bytes each while reading", each)
	}
}
