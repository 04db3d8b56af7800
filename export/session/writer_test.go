package session

import (
	"errors"
	"testing"

	"stillair/sensors"
)

// shaky is a store that fails on request: each failing Append writes half of
// its data.
type shaky struct {
	memory
	fail     bool
	failSync bool
}

var errDiskFull = errors.New("no space left on device")

func (s *shaky) Append(p []byte) error {
	if s.fail {
		_ = s.memory.Append(p[:len(p)/2])
		return errDiskFull
	}
	return s.memory.Append(p)
}

func (s *shaky) Sync() error {
	if s.failSync {
		return errDiskFull
	}
	return s.memory.Sync()
}

// TestStoreFailsForAWhile checks that nothing is lost if appends fail for a
// while, although each failure leaves a torn copy behind.
func TestStoreFailsForAWhile(t *testing.T) {
	log := invented(20, 50)
	store := &shaky{}
	w, err := NewWriter(store, Header{ID: testID}, log.Ride)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	deliver(log, &tap{Sink: w, each: func() {
		n++
		store.fail = n > 300 && n < 600
		store.failSync = n > 700 && n < 760
		if n == 590 && !errors.Is(w.Err(), errDiskFull) {
			t.Errorf("while the disk is full Err is %v", w.Err())
		}
	}})
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	rec := read(t, store.data)
	if !sameSamples(log, rec.Log) || len(rec.Missing) != 0 || !rec.Closed {
		t.Errorf("missing %v, closed %v, notes %v, %d of %d samples", rec.Missing, rec.Closed, rec.Log.Notes, samples(rec.Log), samples(log))
	}
}

// tap calls each before every sample that it passes on.
type tap struct {
	sensors.Sink
	each func()
}

func (t *tap) Motion(m sensors.Motion) { t.each(); t.Sink.Motion(m) }

// TestGivesUpInTheEnd checks that a store that fails permanently does not fill
// the memory, and that the loss is reported.
func TestGivesUpInTheEnd(t *testing.T) {
	store := &shaky{}
	w, err := NewWriter(store, Header{ID: testID}, sensors.UnknownRide())
	if err != nil {
		t.Fatal(err)
	}
	store.fail = true
	text := make([]byte, 1<<20)
	state := uint32(1)
	for i := range text { // text that does not compress
		state = state*1664525 + 1013904223
		text[i] = 'a' + byte(state>>24)%26
	}
	for i := range 16 {
		w.Remark(Remark{T: float64(i), Text: string(text)})
		_ = w.Flush()
		if _, waiting := w.Stored(); waiting > backlogBytes {
			t.Fatalf("%d bytes wait", waiting)
		}
	}
	store.fail = false
	if err := w.Flush(); !errors.Is(err, ErrBacklog) {
		t.Errorf("after parts were given up Flush said %v", err)
	}
	rec := read(t, store.data)
	if len(rec.Remarks) == 0 || len(rec.Remarks) >= 16 || len(rec.Unstored) != 1 || len(rec.Missing) != 0 {
		t.Errorf("%d remarks, unstored %v, missing %v", len(rec.Remarks), rec.Unstored, rec.Missing)
	}
	if err := w.Close(); !errors.Is(err, ErrBacklog) {
		t.Errorf("Close said %v", err)
	}
	if rec := read(t, store.data); len(rec.Missing) != 1 || !rec.Closed {
		t.Errorf("closed %v, missing %v", rec.Closed, rec.Missing)
	}
}

// TestEachPartIsSynced checks that a part a second reaches the store and is
// synced, which is what bounds the loss when the phone dies.
func TestEachPartIsSynced(t *testing.T) {
	log := invented(60, 100)
	m := &memory{}
	if err := Write(m, log, Header{ID: testID}); err != nil {
		t.Fatal(err)
	}
	parts := len(partEnds(t, m.data))
	if parts < 58 || m.syncs != parts {
		t.Errorf("%d parts and %d syncs for 60 s", parts, m.syncs)
	}
}

func TestClosedWriterTakesNothing(t *testing.T) {
	m := &memory{}
	w, err := NewWriter(m, Header{ID: testID}, sensors.UnknownRide())
	if err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	if w.Flush() != ErrClosed || w.Close() != ErrClosed {
		t.Error("a closed writer took more")
	}
	if rec := read(t, m.data); !rec.Closed || samples(rec.Log) != 0 {
		t.Errorf("an empty session reads as %+v", rec)
	}
}
