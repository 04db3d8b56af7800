package session

import (
	"bytes"
	"fmt"
	"testing"
	"time"

	"stillair/sensors"
)

func written(t testing.TB, log *sensors.Log) []byte {
	t.Helper()
	m := &memory{}
	h := Header{ID: testID, Start: 12, Started: time.Date(2026, 5, 3, 9, 0, 0, 0, time.UTC), Device: "invented phone", Program: "test", Origin: "simulated"}
	if err := Write(m, log, h); err != nil {
		t.Fatal(err)
	}
	return m.data
}

func read(t testing.TB, data []byte) *Recording {
	t.Helper()
	rec, err := Read(bytes.NewReader(data), "ride.jsonl.gz")
	if err != nil {
		t.Fatal(err)
	}
	return rec
}

// sameSamples compares all samples bit by bit (NaN as NaN).
func sameSamples(a, b *sensors.Log) bool {
	all := func(l *sensors.Log) string {
		return fmt.Sprintf("%x %x %x %x %v", l.Motion, l.Fixes, l.Pressure, l.Sound, l.States)
	}
	return all(a) == all(b)
}

func TestRoundTrip(t *testing.T) {
	log := invented(30, 100)
	rec := read(t, written(t, log))
	if !sameSamples(log, rec.Log) {
		t.Error("samples at the file's resolution did not come back bit by bit")
	}
	if got, want := fmt.Sprint(rec.Log.Ride), fmt.Sprint(log.Ride); got != want {
		t.Errorf("ride\n got %s\nwant %s", got, want)
	}
	if !rec.Closed || len(rec.Log.Notes) != 0 || len(rec.Missing) != 0 {
		t.Errorf("closed %v, notes %v, missing %v", rec.Closed, rec.Log.Notes, rec.Missing)
	}
	if rec.Header.Device != "invented phone" || rec.Header.Start != 12 || rec.Header.Started.Year() != 2026 {
		t.Errorf("header %+v", rec.Header)
	}
}
