package recorder_test

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"syscall"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/export/session"
)

var stormyRides = flag.Int("stormy", 3, "how many rides to record on a storage that fails in every way")

// stormy is the storage of a ride with random failures, and what a power cut
// would have left of it.
type stormy struct {
	bench
	rng  *rand.Rand
	rec  func() float64 // the time up to which the recorder reports that all is saved
	cuts []stormCut
}

// A stormCut is what a power cut left, just before a sample of that second.
type stormCut struct {
	files *platformtest.Memory
	kept  float64
	t     float64
}

// each changes the failures once for every second of the ride.
func (s *stormy) each(t float64) {
	time.Sleep(10 * time.Millisecond) // with 100 readings: a queue fills within a second
	switch s.rng.IntN(30) {
	case 0:
		let := make(chan struct{})
		s.files.Hang(let)
		time.AfterFunc(time.Duration(s.rng.IntN(3000))*time.Millisecond, func() {
			s.files.Hang(nil)
			close(let)
		})
	case 1:
		s.files.FailRename(syscall.EACCES)
	case 2:
		s.files.FailRename(nil)
	default:
		weather(s.files, s.rng)
	}
	if s.rng.IntN(12) == 0 {
		kept := s.rec()
		after := s.files.CutPowerLeaving(func(tail []byte) []byte { return tail[:s.rng.IntN(len(tail)+1)] })
		s.cuts = append(s.cuts, stormCut{after, kept, t})
	}
}

// TestARideThroughAStorm records rides of 24 000 readings on a storage that hangs,
// refuses, writes half and loses what it failed to sync, and that loses power at
// random times: the source is never delayed by more than a second, what the
// recorder reported as saved is there, and nothing that is there is reported as
// missing. At the end everything is in the file or, if the storage has failed by
// then, in the file and the unstored rest.
func TestARideThroughAStorm(t *testing.T) {
	rides := *stormyRides
	if testing.Short() {
		rides = min(rides, 1)
	}
	for seed := range rides {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			t.Parallel()
			s := &stormy{bench: newBench(), rng: rand.New(rand.NewPCG(uint64(seed), 240))}
			s.ride(t, seed%2 == 1)
		})
	}
}

func (s *stormy) ride(t *testing.T, broken bool) {
	t.Helper()
	const seconds, hz = 240, 100
	src := &timed{begin: make(chan struct{}), done: make(chan struct{}), ride: made{seconds: seconds, hz: hz, speed: steadyRide, each: s.each}}
	rec := s.record(t, src)
	s.rec = func() float64 { return rec.Status().Kept.Until }
	close(src.begin)
	<-src.done
	s.files.FailRename(nil)
	calmDown(s.files)
	if broken {
		s.files.Fail(syscall.EIO)
	}
	<-rec.Done()
	if src.longest > mostHeldUp {
		t.Errorf("the source was held up for %v", src.longest)
	}
	s.checkCuts(t, rec.ID(), hz)
	_, data, err := s.sessions.Bytes(rec.ID())
	if err != nil || broken != (rec.Unstored() != nil) {
		t.Fatalf("%d bytes are not stored, %v", len(rec.Unstored()), err)
	}
	all, err := session.ReadAll(io.MultiReader(bytes.NewReader(data), bytes.NewReader(rec.Unstored())), "ride")
	if err != nil || len(all) != 1 {
		t.Fatalf("%d recordings: %v", len(all), err)
	}
	if got := all[0]; len(got.Log.Motion) != seconds*hz || len(got.Log.Fixes) != seconds || len(got.Missing)+len(got.Unstored) > 0 || !got.Closed {
		t.Errorf("%d readings, %d fixes, missing %v, unstored %v", len(got.Log.Motion), len(got.Log.Fixes), got.Missing, got.Unstored)
	}
}

func (s *stormy) checkCuts(t *testing.T, id string, hz int) {
	t.Helper()
	for _, c := range s.cuts {
		rec, err := store.NewSessions(c.files, platform.NewSystemClock()).Read(id)
		if err == nil {
			holdsUpTo(t, rec, int(c.kept*float64(hz)), int(c.t*float64(hz)))
		} else if c.kept > 0 {
			t.Errorf("cut at %.2f s with %.2f s kept: %v", c.t, c.kept, err)
		}
	}
}
