package shell_test

import (
	"context"
	"slices"
	"strings"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/export/session"
	"stillair/sensors"
)

// silent is a device whose sensors deliver nothing.
type silent struct{}

func (silent) Run(ctx context.Context, _ sensors.Sink) error {
	<-ctx.Done()
	return ctx.Err()
}

func quiet() sensors.Source { return silent{} }

func TestEveryPlaceOpens(t *testing.T) {
	h := open(t, platformtest.NewMemory(), quiet, &outlet{})
	h.await("Before the ride")
	for _, c := range []struct{ touch, says string }{
		{"Results", "No rides yet"}, {"Bikes", "Which bike do you ride?"}, {"Compare", "Nothing to compare yet"}, {"More", "Before anything else"},
		{"Deutsch", "Vor allem anderen"}, {"Fahrt", "Vor der Fahrt"},
	} {
		h.touch(c.touch)
		h.await(c.says)
	}
}

func TestChoicesAreKept(t *testing.T) {
	files := platformtest.NewMemory()
	h := open(t, files, quiet, &outlet{})
	h.touch("More")
	h.touch("mph")
	h.touch("Dark")
	h.typeInto(0, "68") // °F
	h.touch("Results")
	for c := (store.Choices{}); c.Units != "imperial" || c.Look != "dark" || c.Air.Temperature == nil; {
		var err error
		time.Sleep(10 * time.Millisecond)
		if c, err = store.ReadChoices(files); err != nil {
			t.Fatal(err)
		}
	}
	c, err := store.ReadChoices(files)
	if err != nil {
		t.Fatal(err)
	}
	if *c.Air.Temperature < 19.99 || *c.Air.Temperature > 20.01 { // 68 °F are 20 °C by definition
		t.Errorf("68 °F were kept as %g °C", *c.Air.Temperature)
	}
	again := open(t, files, quiet, &outlet{})
	again.touch("More")
	again.await("°F")
}

func TestTheGuideLeadsThrough(t *testing.T) {
	h := open(t, platformtest.NewMemory(), quiet, &outlet{})
	h.touch("Your first coast-down?")
	for range 5 {
		h.touch("Next")
	}
	h.touch("I am ready")
	h.await("Before the ride")
	if strings.Contains(h.words(), "Your first coast-down?") {
		t.Error("the guide is still offered as if it had not been read")
	}
}

// begunRide writes some fixes into a new session and leaves it open.
func begunRide(t *testing.T, sessions *store.Sessions, about store.About) (id string, w *session.Writer) {
	t.Helper()
	id, f, err := sessions.Begin(about)
	if err != nil {
		t.Fatal(err)
	}
	if w, err = session.NewWriter(session.ToFile(f), session.Header{ID: session.ID{1}}, sensors.UnknownRide()); err != nil {
		t.Fatal(err)
	}
	for i := range 100 {
		w.Fix(sensors.NewFix(float64(i), 20))
	}
	return id, w
}

// keptRide is a closed session of that name.
func keptRide(t *testing.T, sessions *store.Sessions, name string) (id string) {
	t.Helper()
	id, w := begunRide(t, sessions, store.About{Name: name})
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	if err := sessions.Update(id, func(a *store.About) { a.Stage = store.Closed }); err != nil {
		t.Fatal(err)
	}
	return id
}

// TestACrashIsToldOf starts the app after a recording was killed.
func TestACrashIsToldOf(t *testing.T) {
	files := platformtest.NewMemory()
	sessions := store.NewSessions(files, platform.NewSystemClock())
	begunRide(t, sessions, store.About{Bike: "test bike"})
	h := open(t, files.CutPower(), quiet, &outlet{})
	h.await("A recording was cut off")
	h.touch("Results")
	h.await("cut off, saved up to then")
}

func TestABusyRecorderIsToldOf(t *testing.T) {
	files := platformtest.NewMemory()
	unlock, err := files.Lock(store.RecorderLock)
	if err != nil {
		t.Fatal(err)
	}
	defer unlock()
	h := open(t, files, quiet, &outlet{})
	h.touch("Start recording")
	h.await("already recording, in another window")
}

// TestADeletedRideComesBackAfterACrash deletes a ride, starts the app again on
// the same files, and restores it; permanent removal has to be confirmed.
func TestADeletedRideComesBackAfterACrash(t *testing.T) {
	files := platformtest.NewMemory()
	sessions := store.NewSessions(files, platform.NewSystemClock())
	id := keptRide(t, sessions, "wet road")
	if err := sessions.Delete(id); err != nil {
		t.Fatal(err)
	}
	h := open(t, files, quiet, &outlet{})
	h.touch("Results")
	h.await("No rides yet")
	h.touch("Deleted rides")
	h.await("gone in 6 days")
	h.touch("Bring back")
	h.await("Nothing here.")
	h.touch("Back")
	h.await("wet road")
	if err := sessions.Delete(id); err != nil {
		t.Fatal(err)
	}
	again := open(t, files, quiet, &outlet{})
	again.touch("Results")
	again.touch("Deleted rides")
	again.touch("Remove for good")
	again.await("Nothing can bring it back")
	again.touch("Yes, remove it for good")
	again.await("Nothing here.")
	if infos, err := files.List(); err != nil || slices.ContainsFunc(infos, func(i platform.Info) bool { return strings.HasPrefix(i.Name, id) }) {
		t.Errorf("files left: %v, %v", infos, err)
	}
}
