package recorder_test

import (
	"context"
	"errors"
	"io/fs"
	"math"
	"math/rand/v2"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/recorder"
	"stillair/app/store"
	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/replay"
)

// live is a simulated source that delivers in real time and records what it
// delivered when.
type live struct {
	ride  made
	at    map[float64]func() // what happens at a time of the ride
	mu    sync.Mutex
	given map[float64]time.Time // of motion samples
}

func newLive(seconds float64, at map[float64]func()) *live {
	return &live{ride: made{seconds: seconds, hz: 100, speed: steadyRide}, at: at, given: map[float64]time.Time{}}
}

func (l *live) Run(ctx context.Context, sink sensors.Sink) error {
	return l.ride.Run(ctx, &livePace{Sink: sink, live: l, began: time.Now()})
}

type livePace struct {
	sensors.Sink
	live  *live
	began time.Time
}

func (p *livePace) Motion(m sensors.Motion) {
	wait := replay.Wall{}
	if d := time.Until(p.began.Add(time.Duration(m.T * float64(time.Second)))); d > 0 {
		_ = wait.Wait(context.Background(), d) // cannot fail: the context never ends
	}
	if do := p.live.at[m.T]; do != nil {
		do()
	}
	p.live.mu.Lock()
	p.live.given[m.T] = time.Now()
	p.live.mu.Unlock()
	p.Sink.Motion(m)
}

// oldestLost is the age, at a given time, of the oldest sample that is not in rec.
func (l *live) oldestLost(rec *session.Recording, at time.Time) (age time.Duration) {
	there := map[float64]bool{}
	for _, m := range rec.Log.Motion {
		there[math.Round(m.T*1e6)] = true
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	for t, given := range l.given {
		if given.Before(at) && !there[math.Round(t*1e6)] {
			age = max(age, at.Sub(given))
		}
	}
	return age
}

// onlySession reads the one session of a storage as the app does at its start.
func onlySession(t *testing.T, files platform.Files) *session.Recording {
	t.Helper()
	sessions := store.NewSessions(files, platform.NewSystemClock())
	if _, err := sessions.Recover(); err != nil {
		t.Error(err)
	}
	list, problems := sessions.List()
	if len(list) != 1 || len(problems) > 0 {
		t.Fatalf("the storage lists %v, problems %v", list, problems)
	}
	rec, err := sessions.Read(list[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	return rec
}

// TestStorageFailsWhileRiding lets the storage fail in the middle of a ride in
// several ways, for a while: the rider is warned in the meantime, and nothing is lost.
func TestStorageFailsWhileRiding(t *testing.T) {
	for _, c := range []struct {
		name      string
		fail, end func(*platformtest.Memory)
		trouble   error // the value of Trouble meanwhile; nil: not checked
	}{
		{"read-only", func(m *platformtest.Memory) { m.Fail(syscall.EROFS) }, func(m *platformtest.Memory) { m.Fail(nil) }, syscall.EROFS},
		{"taken away", func(m *platformtest.Memory) { m.Fail(syscall.ENODEV) }, func(m *platformtest.Memory) { m.Fail(nil) }, syscall.ENODEV},
		{"sync fails and lies later", func(m *platformtest.Memory) { m.FailSync(syscall.EIO) }, func(m *platformtest.Memory) { m.FailSync(nil) }, syscall.EIO},
		{"short writes", func(m *platformtest.Memory) { m.ShortWrites(150) }, func(m *platformtest.Memory) { m.ShortWrites(0) }, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			b := newBench()
			var rec *recorder.Recording
			started := make(chan struct{})
			var seen error
			src := newLive(5, map[float64]func(){
				1: func() { <-started; c.fail(b.files) },
				3: func() { seen = rec.Status().Kept.Trouble(); c.end(b.files) },
			})
			rec = b.record(t, src)
			close(started)
			status, got := b.finish(t, rec)
			if c.trouble != nil && !errors.Is(seen, c.trouble) {
				t.Errorf("while the storage failed the rider would see %v, want %v", seen, c.trouble)
			}
			if status.Kept.Err != nil || status.Kept.Lost() || status.Kept.Waiting != 0 {
				t.Errorf("afterwards: %v, %d bytes wait", status.Kept.Err, status.Kept.Waiting)
			}
			if len(got.Log.Motion) != 500 || len(got.Log.Fixes) != 5 || len(got.Missing) > 0 {
				t.Errorf("read %d motion samples, %d fixes, missing %v", len(got.Log.Motion), len(got.Log.Fixes), got.Missing)
			}
			if after := onlySession(t, b.files.CutPower()); len(after.Log.Motion) != 500 {
				t.Errorf("after a power cut %d motion samples are there", len(after.Log.Motion))
			}
		})
	}
}

// TestStorageFailsForGood lets the storage fail permanently: the recording says
// so, and what was stored before is readable.
func TestStorageFailsForGood(t *testing.T) {
	for _, c := range []struct {
		name string
		fail func(*platformtest.Memory)
		why  recorder.Ending
		err  error
	}{
		{"read-only", func(m *platformtest.Memory) { m.Fail(syscall.EROFS) }, recorder.SourceEnded, syscall.EROFS},
		{"full at once", func(m *platformtest.Memory) { m.SetRoom(70) }, recorder.NoRoom, platform.ErrFull},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			b := newBench()
			b.files.SetRoom(recorder.MinRoom + 1<<20)
			var failed time.Time
			src := newLive(5, map[float64]func(){2: func() { failed = time.Now(); c.fail(b.files) }})
			status, got := b.finish(t, b.record(t, src))
			if status.Why != c.why || !errors.Is(status.Kept.Trouble(), c.err) {
				t.Errorf("ended %q; the rider would see %v, want %q and %v", status.Why, status.Kept.Trouble(), c.why, c.err)
			}
			if age := src.oldestLost(got, failed); age > time.Second {
				t.Errorf("lost is a sample that was %v old when the storage failed", age)
			}
			if len(got.Log.Motion) < 100 {
				t.Errorf("only %d motion samples are left", len(got.Log.Motion))
			}
			if after := onlySession(t, b.files.CutPower()); len(after.Log.Motion) < 100 {
				t.Errorf("after a power cut only %d motion samples are there", len(after.Log.Motion))
			}
		})
	}
}

// TestReadOnlyFromTheStart checks that a recording fails visibly if the storage
// is read-only.
func TestReadOnlyFromTheStart(t *testing.T) {
	b := newBench()
	b.files.Fail(syscall.EROFS)
	_, err := recorder.Start(context.Background(), b.config(made{}))
	if !errors.Is(err, syscall.EROFS) || !strings.Contains(err.Error(), "read-only") {
		t.Errorf("err = %v, want one that says that the storage is read-only", err)
	}
	b.files.Fail(nil)
	if list, problems := b.sessions.List(); len(list) > 0 || len(problems) > 0 {
		t.Errorf("left behind: %v, %v", list, problems)
	}
	b.files.SetRoom(recorder.MinRoom - 1)
	if _, err := recorder.Start(context.Background(), b.config(made{})); !errors.Is(err, recorder.ErrNoRoom) {
		t.Errorf("with little room: err = %v, want ErrNoRoom", err)
	}
}

// TestPowerCut cuts the power at random instants of one recording, each time
// with a different part of the unsynced data left: everything older than a
// second must be there.
func TestPowerCut(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(5, 5))
	tails := map[string]func([]byte) []byte{
		"nothing":          func([]byte) []byte { return nil },
		"half":             func(b []byte) []byte { return b[:len(b)/2] },
		"zeros":            func(b []byte) []byte { clear(b); return b },
		"other data":       func(b []byte) []byte { return noise(rng, b) },
		"everything":       func(b []byte) []byte { return b },
		"a hole at first":  func(b []byte) []byte { clear(b[:len(b)/2]); return b },
		"a page of before": func(b []byte) []byte { return append(b, noise(rng, make([]byte, 4096))...) },
	}
	type cut struct {
		tail  string
		files *platformtest.Memory
		at    time.Time
	}
	var cuts []cut
	b := newBench()
	instants := map[float64]func(){}
	for len(instants) < 60 {
		instants[float64(rng.IntN(400))/100] = func() {
			for name, tail := range tails {
				at := time.Now()
				cuts = append(cuts, cut{name, b.files.CutPowerLeaving(tail), at})
			}
		}
	}
	src := newLive(4, instants)
	b.finish(t, b.record(t, src))
	for _, c := range cuts {
		if age := src.oldestLost(onlySession(t, c.files), c.at); age > time.Second {
			t.Errorf("power cut leaving %s: lost is a sample that was %v old", c.tail, age)
		}
	}
	if len(cuts) != 60*len(tails) {
		t.Errorf("the power was cut %d times", len(cuts))
	}
}

func noise(rng *rand.Rand, b []byte) []byte {
	for i := range b {
		b[i] = byte(rng.Uint32())
	}
	return b
}

// TestClockStepsBack checks that setting the phone's clock back in the middle
// of a ride loses no sample, and that the file says what happened.
func TestClockStepsBack(t *testing.T) {
	b := newBench()
	_, got := b.finish(t, b.record(t, made{seconds: 60, hz: 50, speed: steadyRide, clock: func(t float64) float64 {
		if t < 20 {
			return 5000 + t
		}
		return t
	}}))
	if len(got.Log.Motion) != 3000 || len(got.Log.Fixes) != 60 || len(got.Log.Notes) > 0 {
		t.Errorf("read %d motion samples, %d fixes, notes %v", len(got.Log.Motion), len(got.Log.Fixes), got.Log.Notes)
	}
	seen := false
	for _, s := range got.Log.States {
		seen = seen || s.Detail.String() == "recorder.clock_step by=5000"
	}
	if !seen {
		t.Errorf("nothing says that the clock was set back: %v", got.Log.States)
	}
}

// backwards is a wall clock that always shows the same second, like one that is
// set back again and again.
type backwards struct{ platform.SystemClock }

func (backwards) Wall() time.Time { return time.Date(2026, 5, 1, 9, 0, 0, 0, time.UTC) }

// TestDateStepsBack checks that rides recorded under one date do not overwrite
// each other.
func TestDateStepsBack(t *testing.T) {
	b := newBench()
	b.sessions = store.NewSessions(b.files, backwards{platform.NewSystemClock()})
	for n := 1; n <= 3; n++ {
		_, got := b.finish(t, b.record(t, made{seconds: float64(n), hz: 20, speed: steadyRide}))
		if len(got.Log.Motion) != 20*n {
			t.Errorf("ride %d has %d motion samples", n, len(got.Log.Motion))
		}
	}
	if list, _ := b.sessions.List(); len(list) != 3 {
		t.Errorf("%d rides are there, want 3", len(list))
	}
}

// TestSensorDies checks that the others continue when one sensor dies, that the
// status shows it, and that the file says so.
func TestSensorDies(t *testing.T) {
	t.Parallel()
	b := newBench()
	src := newLive(9, nil)
	src.ride.dies = map[sensors.Sensor]float64{sensors.SensorFix: 2}
	status, got := b.finish(t, b.record(t, src))
	if len(got.Log.Motion) != 900 || len(got.Log.Fixes) != 2 {
		t.Errorf("read %d motion samples and %d fixes", len(got.Log.Motion), len(got.Log.Fixes))
	}
	shown, kept := false, false
	for _, s := range status.Senses {
		shown = shown || s.Sensor == sensors.SensorFix && s.Condition == sensors.Silent
	}
	for _, s := range got.Log.States {
		kept = kept || s.Sensor == sensors.SensorFix && s.Condition == sensors.Silent && s.T > 5 && s.T < 9
	}
	if !shown || !kept {
		t.Errorf("shown %v, kept %v: %v", shown, kept, got.Log.States)
	}
	if !math.IsNaN(status.Speed) {
		t.Errorf("without fixes a speed of %v m/s is shown", status.Speed)
	}
}

// TestTwoProcessesOneStorage represents two instances of the app on one folder.
func TestTwoProcessesOneStorage(t *testing.T) {
	path := t.TempDir()
	var two [2]*store.Sessions
	for i := range two {
		dir, err := platform.NewDir(path)
		if err != nil {
			t.Fatal(err)
		}
		two[i] = store.NewSessions(dir, platform.NewSystemClock())
	}
	hold := make(chan struct{})
	b := bench{sessions: two[0]}
	first := b.record(t, made{seconds: 2, hz: 50, speed: steadyRide, each: func(float64) { <-hold }})
	other := bench{sessions: two[1]}
	if _, err := recorder.Start(context.Background(), other.config(made{})); !errors.Is(err, platform.ErrBusy) || !strings.Contains(err.Error(), "another recording is running") {
		t.Errorf("the second recorder got %v", err)
	}
	if _, err := two[1].Recover(); !errors.Is(err, platform.ErrBusy) {
		t.Errorf("recovery beside a running recorder: %v", err)
	}
	close(hold)
	if _, got := b.finish(t, first); len(got.Log.Motion) != 100 || !got.Closed {
		t.Errorf("the first has %d motion samples, closed %v", len(got.Log.Motion), got.Closed)
	}
}

// TestNothingBegun checks that a kill between creating a file and writing its
// first byte leaves no ride that cannot be opened.
func TestNothingBegun(t *testing.T) {
	b := newBench()
	f, err := b.files.Create("ride-20260501-090000.jsonl.gz")
	if err == nil {
		err = f.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
	if _, err := b.sessions.Recover(); err != nil {
		t.Error(err)
	}
	if _, err := b.files.Open("ride-20260501-090000.jsonl.gz"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the empty file is still there: %v", err)
	}
}
