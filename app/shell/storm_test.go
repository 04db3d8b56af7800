package shell_test

import (
	crand "crypto/rand"
	"math/rand/v2"
	"sync"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/sensors"
)

// TestStormsOfJobs runs all actions concurrently in random order while the app is
// drawn without a pause. With the race detector it finds unsynchronised access
// between jobs and drawing; without it, it checks that nothing fails, that the
// ride is still there, and that a double tap on start makes one recording.
func TestStormsOfJobs(t *testing.T) {
	files := platformtest.NewMemory()
	sessions := store.NewSessions(files, platform.NewSystemClock())
	id := riddenWith(t, sessions, store.Bike{Name: "test bike"})
	out := &outlet{shared: map[string][]byte{}}
	h := openOn(t, &platform.Device{Files: files, Clock: platform.NewSystemClock(), Random: crand.Reader, Source: quiet, Hear: quiet,
		PermitHearing: func() bool { return true }, Locale: "en-IE", Voice: out, Share: out})
	acts := h.app.Acts(id)
	storm := 300
	if testing.Short() {
		storm = 120
	}
	var wg sync.WaitGroup
	over := make(chan struct{})
	wg.Go(func() { // draws continuously, as a screen does
		for {
			select {
			case <-over:
				return
			case <-time.After(time.Millisecond):
				h.mu.Lock()
				acts[0]()
				h.mu.Unlock()
			}
		}
	})
	r := rand.New(rand.NewPCG(17, 1))
	for range storm {
		h.mu.Lock()
		acts[r.IntN(len(acts))]()
		h.mu.Unlock()
		if r.IntN(3) == 0 {
			time.Sleep(time.Duration(r.IntN(3000)) * time.Microsecond)
		}
	}
	close(over)
	wg.Wait()
	h.endAll(acts)
	if _, err := sessions.Read(id); err != nil {
		t.Errorf("the ride after the storm: %v", err)
	}
	list, problems := sessions.List()
	if len(problems) > 0 {
		t.Errorf("problems: %v", problems)
	}
	for _, s := range list {
		if s.About.Stage == store.Recording {
			t.Errorf("%s was left open", s.ID)
		}
	}
}

// endAll ends the recording and waits until no job is left.
func (h hand) endAll(acts []func()) {
	h.t.Helper()
	end := acts[len(acts)-2]
	for stop := time.Now().Add(time.Minute); time.Now().Before(stop); time.Sleep(5 * time.Millisecond) {
		h.mu.Lock()
		end()
		settled := h.app.Settled()
		h.mu.Unlock()
		if settled {
			return
		}
	}
	h.t.Fatal("jobs are left after a minute")
}

// stuck is a storage whose first listing blocks until it is released.
type stuck struct {
	platform.Files
	let chan struct{}
}

func (s stuck) List() ([]platform.Info, error) {
	<-s.let
	return s.Files.List()
}

// TestASlowStorageHoldsUpNoFinger adds far more jobs than a queue of fixed
// length would hold while the storage hangs: the drawing goroutine never waits
// for them.
func TestASlowStorageHoldsUpNoFinger(t *testing.T) {
	let := make(chan struct{})
	close(let)
	files := &stuck{platformtest.NewMemory(), let}
	h := openOn(t, &platform.Device{Files: files, Clock: platform.NewSystemClock(), Random: crand.Reader, Source: func() sensors.Source { return silent{} }, Locale: "en-IE"})
	h.mu.Lock()
	hung := make(chan struct{})
	files.let = hung
	h.mu.Unlock()
	acts := h.app.Acts("none")
	done := make(chan struct{})
	go func() {
		for range 500 {
			h.mu.Lock()
			acts[5]()
			h.mu.Unlock()
		}
		close(done)
	}()
	select {
	case <-done:
	case <-time.After(20 * time.Second):
		t.Error("the drawing goroutine waits for the storage")
	}
	close(hung)
	<-done
}
