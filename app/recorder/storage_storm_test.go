package recorder_test

import (
	"bytes"
	"errors"
	"math/rand/v2"
	"syscall"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/app/platform/platformtest"
	"stillair/export/session"
	"stillair/sensors"
)

// TestAStormOfFaults writes rides of 24 000 readings to a storage that fails
// randomly in every way, and cuts the power at random times: what the storage
// confirmed is there each time, nothing that is there is reported as missing, and
// nothing is missing once the storage works again.
func TestAStormOfFaults(t *testing.T) {
	t.Parallel()
	rides := 8
	if testing.Short() {
		rides = 2
	}
	for seed := range rides {
		storm(t, rand.New(rand.NewPCG(uint64(seed), 24)))
	}
}

func storm(t *testing.T, rng *rand.Rand) {
	t.Helper()
	files := platformtest.NewMemory()
	f, err := files.Create("ride")
	if err != nil {
		t.Fatal(err)
	}
	w, err := session.NewWriter(session.ToFile(f), session.Header{ID: session.ID{8}}, sensors.UnknownRide())
	if err != nil {
		t.Fatal(err)
	}
	const readings = 24_000
	confirmed := -1
	for i := range readings {
		w.Motion(sensors.Motion{T: float64(i) / 100, Force: r3.Vec{X: rng.NormFloat64(), Z: 9.8}})
		if i%50 == 49 && w.Flush() == nil {
			confirmed = i
		}
		if i%100 == 0 {
			weather(files, rng)
		}
		if rng.IntN(1500) == 0 {
			after := files.CutPowerLeaving(func(tail []byte) []byte { return tail[:rng.IntN(len(tail)+1)] })
			rec, err := session.Read(bytes.NewReader(platformtest.Read(t, after, "ride")), "ride")
			if err != nil {
				t.Fatal(err)
			}
			holdsUpTo(t, rec, confirmed, i)
		}
	}
	calmDown(files)
	if err := errors.Join(w.Flush(), w.Close()); err != nil {
		t.Fatal(err)
	}
	rec, err := session.Read(bytes.NewReader(platformtest.Read(t, files.CutPower(), "ride")), "ride")
	if err != nil || len(rec.Log.Motion) != readings || len(rec.Missing)+len(rec.Unstored) > 0 || !rec.Closed || len(rec.Others) > 0 {
		t.Errorf("at the end %d readings, missing %v, unstored %v, %v", len(rec.Log.Motion), rec.Missing, rec.Unstored, err)
	}
}

// weather changes the failures of the storage.
func weather(files *platformtest.Memory, rng *rand.Rand) {
	switch rng.IntN(12) {
	case 0:
		files.Fail(syscall.EIO)
	case 1:
		files.FailSync(syscall.EIO) // the data that it should have put on the disk is lost
	case 2:
		files.ShortWrites(1 + rng.IntN(300))
	case 3, 4, 5:
		calmDown(files)
	}
}

func calmDown(files *platformtest.Memory) {
	files.Fail(nil)
	files.FailSync(nil)
	files.ShortWrites(0)
}

// holdsUpTo checks a file that a power cut left behind.
func holdsUpTo(t *testing.T, rec *session.Recording, confirmed, written int) {
	t.Helper()
	there := make([]bool, written+1)
	for _, m := range rec.Log.Motion {
		there[int(m.T*100+0.5)] = true
	}
	for i := range confirmed + 1 {
		if !there[i] {
			t.Fatalf("reading %d of %d that were confirmed is lost", i, confirmed)
		}
	}
	for _, s := range append(rec.Missing, rec.Unstored...) {
		lost := false
		for i := max(0, int(s.From*100)+1); i < min(written, int(s.To*100)); i++ {
			lost = lost || !there[i]
		}
		if !lost {
			t.Fatalf("%v is named missing, and all of it is there", s)
		}
	}
}
