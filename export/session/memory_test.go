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

// memoryOf is the environment variable with the file that a separate process
// reads to measure its memory.
const memoryOf = "STILLAIR_MEMORY_OF"

// TestMemoryOfAReading checks the memory per reading while a file is read, as
// stated in FAULTS.md: 56 bytes remain, and less than 160 are used at the peak.
// A fresh process reads it, since another would reuse its existing heap.
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

// measureReading reads the file and measures the growth of the heap.
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
