package session

import (
	"bytes"
	"math/rand/v2"
	"runtime"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// TestMemoryOfAReading holds what a reading takes while a file is read, as
// FAULTS.md says it: 56 bytes stay, and less than 160 are used at the most.
func TestMemoryOfAReading(t *testing.T) {
	if testing.Short() {
		t.Skip("writes and reads a million readings")
	}
	const readings = 1_000_000
	m := &memory{}
	w, err := NewWriter(m, Header{ID: testID}, sensors.UnknownRide())
	if err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(4, 4))
	for i := range readings {
		w.Motion(sensors.Motion{T: float64(i) / 200, Force: r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: 9.8}, Turn: r3.Vec{Z: rng.NormFloat64() / 10}})
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	rec := read(t, bytes.Clone(m.data)[:len(m.data):len(m.data)])
	runtime.ReadMemStats(&after)
	if n := len(rec.Log.Motion); n != readings {
		t.Fatalf("%d readings", n)
	}
	if each := float64(after.HeapSys-before.HeapSys) / readings; each > 160 {
		t.Errorf("%.0f bytes each while reading, want less than 160", each)
	} else {
		t.Logf("%.0f bytes each while reading", each)
	}
}
