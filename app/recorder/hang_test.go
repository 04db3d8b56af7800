package recorder_test

import (
	"bytes"
	"context"
	"syscall"
	"testing"
	"time"

	"stillair/export/session"
	"stillair/sensors"
)

// mostHeldUp is how long a storage may delay a source.
const mostHeldUp = time.Second

// TestAHangingStorageHoldsUpNoSensor lets the storage hang while far more data
// arrives than usually waits for it: the source is never delayed by more than a
// second, the rider sees that nothing is saved, and everything is saved once the
// storage continues.
func TestAHangingStorageHoldsUpNoSensor(t *testing.T) {
	t.Parallel()
	b := newBench()
	src := &timed{ride: made{seconds: 240, hz: 100, speed: steadyRide}, begin: make(chan struct{}), done: make(chan struct{})}
	rec := b.record(t, src)
	let := make(chan struct{})
	b.files.Hang(let)
	close(src.begin)
	select {
	case <-src.done:
	case <-time.After(time.Minute):
		t.Fatal("the source is held up by a storage that hangs")
	}
	if unsaved := rec.Status().Unsaved; unsaved < 200 {
		t.Errorf("with 240 s ridden and the storage hanging, %.0f s are said to be unsaved", unsaved)
	}
	b.files.Hang(nil)
	close(let)
	status, got := b.finish(t, rec)
	if src.longest > mostHeldUp {
		t.Errorf("the source was held up for %v", src.longest)
	}
	if len(got.Log.Motion) != 24_000 || len(got.Log.Fixes) != 240 || len(got.Missing)+len(got.Unstored) > 0 || status.Kept.Err != nil || rec.Unstored() != nil {
		t.Errorf("%d of motion, %d fixes, missing %v, unstored %v, %v", len(got.Log.Motion), len(got.Log.Fixes), got.Missing, got.Unstored, status.Kept.Err)
	}
}

// TestWhatIsNotStoredIsRescued ends a recording on a storage that fails for good:
// the unstored bytes complete the file.
func TestWhatIsNotStoredIsRescued(t *testing.T) {
	t.Parallel()
	b := newBench()
	rec := b.record(t, newLive(3, map[float64]func(){1: func() { b.files.Fail(syscall.EIO) }}))
	<-rec.Done()
	b.files.Fail(nil)
	name, data, err := b.sessions.Bytes(rec.ID())
	if err != nil || len(rec.Unstored()) == 0 {
		t.Fatalf("%s: %d bytes unstored, %v", name, len(rec.Unstored()), err)
	}
	all, err := session.ReadAll(bytes.NewReader(append(data, rec.Unstored()...)), name)
	if err != nil || len(all) != 1 || len(all[0].Log.Motion) != 300 || !all[0].Closed || len(all[0].Missing)+len(all[0].Unstored) > 0 {
		t.Errorf("%d recordings with %d readings, %v", len(all), len(all[0].Log.Motion), err)
	}
}

// timed is a source that begins on request and records how long it was delayed.
type timed struct {
	ride        made
	begin, done chan struct{}
	longest     time.Duration
}

func (s *timed) Run(ctx context.Context, sink sensors.Sink) error {
	<-s.begin
	defer close(s.done)
	return s.ride.Run(ctx, timing{sink, s})
}

type timing struct {
	sensors.Sink
	of *timed
}

func (t timing) Motion(m sensors.Motion) {
	began := time.Now()
	t.Sink.Motion(m)
	t.of.longest = max(t.of.longest, time.Since(began))
}
