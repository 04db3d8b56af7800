package shell_test

import (
	"bytes"
	"context"
	"crypto/rand"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/screens/kit"
	"stillair/app/shell"
	"stillair/sensors"
	"stillair/sensors/sim"
)

// hand operates the app like a rider's finger and finds objects by their labels.
type hand struct {
	t   *testing.T
	app *shell.Shell
	win fyne.Window
	mu  *sync.Mutex // held by the drawing goroutine
}

func (h hand) visit(do func(fyne.CanvasObject)) {
	var walk func(fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		do(o)
		switch x := o.(type) {
		case *fyne.Container:
			for _, c := range x.Objects {
				walk(c)
			}
		case fyne.Widget:
			for _, c := range test.WidgetRenderer(x).Objects() {
				walk(c)
			}
		}
	}
	walk(h.app.Root())
}

// words is all text on the screen.
func (h hand) words() string {
	h.mu.Lock()
	defer h.mu.Unlock()
	var all []string
	h.visit(func(o fyne.CanvasObject) {
		if x, ok := o.(*kit.Prose); ok {
			all = append(all, x.AccessibilityLabel())
		}
	})
	return strings.Join(all, "\n")
}

// await waits until the screen says one of some things.
func (h hand) await(words ...string) {
	h.t.Helper()
	for end := time.Now().Add(2 * time.Minute); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		seen := h.words()
		if slices.ContainsFunc(words, func(w string) bool { return strings.Contains(seen, w) }) {
			return
		}
	}
	h.t.Fatalf("the screen does not come to say %q but\n%s", words, h.words())
}

// touch taps the object with the label, or else the first whose label begins with it.
func (h hand) touch(label string) {
	h.t.Helper()
	h.mu.Lock()
	defer h.mu.Unlock()
	h.find(label).Tapped(nil)
}

// hold holds the object with the label.
func (h hand) hold(label string) {
	h.t.Helper()
	h.mu.Lock()
	defer h.mu.Unlock()
	h.find(label).TouchDown(nil)
}

func (h hand) find(label string) *kit.Touch {
	h.t.Helper()
	var found *kit.Touch
	h.visit(func(o fyne.CanvasObject) {
		x, ok := o.(*kit.Touch)
		if !ok {
			return
		}
		if is := x.AccessibilityLabel(); is == label || found == nil && strings.HasPrefix(is, label) {
			found = x
		}
	})
	if found == nil {
		h.t.Fatalf("nothing to touch is called %q", label)
	}
	return found
}

func (h hand) typeInto(n int, text string) {
	h.t.Helper()
	h.mu.Lock()
	defer h.mu.Unlock()
	type entry interface {
		fyne.Focusable
		SetText(string)
	}
	var all []entry
	h.visit(func(o fyne.CanvasObject) {
		if e, ok := o.(entry); ok {
			all = append(all, e)
		}
	})
	if n >= len(all) {
		h.t.Fatalf("there are only %d fields", len(all))
	}
	all[n].SetText(text)
}

// rideOnce is a source that first reports working sensors and then, on a signal, rides.
type rideOnce struct {
	src   sensors.Source
	begin <-chan struct{}
}

func (r rideOnce) Run(ctx context.Context, sink sensors.Sink) error {
	select {
	case <-r.begin:
		return r.src.Run(ctx, sink)
	case <-ctx.Done():
		return ctx.Err()
	}
}

// spoken records what the app says aloud and what it shares.
type outlet struct {
	mu     sync.Mutex
	said   []string
	shared map[string][]byte
}

func (o *outlet) Say(text, _ string) error {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.said = append(o.said, text)
	return nil
}

func (o *outlet) Share(_ context.Context, name, _ string, data []byte) error {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.shared[name] = data
	return nil
}

func (o *outlet) file(ending string) []byte {
	o.mu.Lock()
	defer o.mu.Unlock()
	for name, data := range o.shared {
		if strings.HasSuffix(name, ending) {
			return data
		}
	}
	return nil
}

// await waits until a file of that ending was shared.
func (o *outlet) await(ending string) []byte {
	for end := time.Now().Add(time.Minute); time.Now().Before(end) && o.file(ending) == nil; time.Sleep(20 * time.Millisecond) {
	}
	return o.file(ending)
}

// drawing is held while text is drawn or measured. Fyne has one text shaper for
// the whole process, so work left over from an earlier test must not run at the
// same time as the next one's.
var drawing sync.Mutex

func open(t *testing.T, files platform.Files, source func() sensors.Source, out *outlet) hand {
	t.Helper()
	return openOn(t, &platform.Device{Files: files, Clock: platform.NewSystemClock(), Random: rand.Reader, Source: source, Locale: "en-IE", Voice: out, Share: out})
}

func openOn(t *testing.T, d *platform.Device) hand {
	t.Helper()
	test.NewTempApp(t)
	mu := &drawing
	app := shell.Open(shell.Config{Device: d, Do: func(f func()) {
		mu.Lock()
		defer mu.Unlock()
		f()
	}})
	mu.Lock()
	w := test.NewWindow(app.Root())
	w.SetPadded(false)
	w.Resize(fyne.NewSize(390, 844))
	app.Start()
	mu.Unlock()
	t.Cleanup(func() {
		mu.Lock()
		defer mu.Unlock()
		app.Close()
		w.Close()
	})
	return hand{t: t, app: app, win: w, mu: mu}
}

// shortRide is an invented ride of a launch and two pairs of coast-downs.
func shortRide(t *testing.T) *sim.Ride { return shortRideOf(t, 7) }

// shortRideOf is the same ride in other winds.
func shortRideOf(t *testing.T, seed uint64) *sim.Ride {
	t.Helper()
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = append(append([]sim.Act{sim.Stand{Seconds: 20}}, sim.Launches(1, 0, 300)...), sim.CoastPairs(2, 30, 8)...)
	r, err := sim.Run(sc, seed)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestARideFromStartToResults goes through the whole app by taps: a bike is
// entered, a ride is recorded and measured, named, shared, deleted and restored.
func TestARideFromStartToResults(t *testing.T) {
	if testing.Short() {
		t.Skip("records and measures a whole ride")
	}
	ride := shortRide(t)
	start := make(chan struct{})
	out := &outlet{shared: map[string][]byte{}}
	files := platformtest.NewMemory()
	h := open(t, files, func() sensors.Source { return rideOnce{ride.Source(), start} }, out)
	h.await("No bike yet")
	h.touch("No bike yet")
	h.touch("Add a bike")
	h.typeInto(0, "test bike")
	h.typeInto(1, "2900")
	h.touch("Save")
	h.await("Not possible")
	h.typeInto(1, "290")
	h.touch("Save")
	h.await("290 kg as ridden")
	h.touch("Ride")
	h.await("test bike")
	h.touch("Start recording")
	h.await("Searching for satellites")
	close(start)
	h.await("What was found")
	h.await("The sensors stopped")
	h.await("Launch, 0–100 km/h")
	h.await("Coast-down, pair 1")
	h.await("Drag area CdA")
	h.touch("Name, notes, share")
	h.typeInto(0, "first test")
	h.touch("The recording as it is")
	h.touch("The recording, without the place")
	h.touch("The results")
	h.touch("A report to read or print")
	h.touch("For other programs")
	h.touch("Tables for a spreadsheet")
	h.touch("Track for a map")
	h.touch("Back")
	h.touch("Back")
	h.await("first test")
	h.sharedHolds(out, ride)
	h.touch("Name, notes, share")
	h.touch("Delete this ride")
	h.await("Ride deleted")
	h.touch("Undo")
	h.await("first test")
}

// TestStartedAhead checks that a recording started before the app had loaded
// continues: no tap is needed, and it uses the first source.
func TestStartedAhead(t *testing.T) {
	var asked atomic.Int32
	d := &platform.Device{Files: platformtest.NewMemory(), Clock: platform.NewSystemClock(), Random: rand.Reader, Locale: "en-IE",
		Ahead: func() bool { return asked.Load() == 0 },
		Source: func() sensors.Source {
			asked.Add(1)
			return rideOnce{}
		}}
	h := openOn(t, d)
	h.await("Searching for satellites")
	if n := asked.Load(); n != 1 {
		t.Errorf("%d sources were made, want one, of the recording", n)
	}
}

// sharedHolds checks what was shared against the ride that went in.
func (h hand) sharedHolds(out *outlet, ride *sim.Ride) {
	h.t.Helper()
	out.await(".results.json")
	for ending, holds := range map[string]string{".html": "<svg", "-tables.zip": "comparisons.csv", ".gpx": "<trkpt"} {
		if f := out.await(ending); !bytes.Contains(f, []byte(holds)) {
			h.t.Errorf("what was shared as %s, %d bytes, does not hold %s", ending, len(f), holds)
		}
	}
	rec := readSession(h.t, out.file("0.jsonl.gz"), out)
	whole := rec.Log
	if len(whole.Motion) != len(ride.Log.Motion) || len(whole.Fixes) != len(ride.Log.Fixes) {
		h.t.Errorf("shared %d motion samples and %d fixes, rode %d and %d", len(whole.Motion), len(whole.Fixes), len(ride.Log.Motion), len(ride.Log.Fixes))
	}
	away := readSession(h.t, out.file("-elsewhere.jsonl.gz"), out).Log
	if len(away.Fixes) == 0 || len(away.Fixes) >= len(whole.Fixes) {
		h.t.Errorf("without its ends the ride has %d fixes of %d", len(away.Fixes), len(whole.Fixes))
	}
	for _, f := range away.Fixes {
		if f.HasPosition() && (f.LatDeg > 1 || f.LatDeg < -1 || f.LonDeg > 1 || f.LonDeg < -1) {
			h.t.Fatalf("a shared position is still %g, %g", f.LatDeg, f.LonDeg)
		}
	}
	h.sameAsDesk(rec, out.file(".results.json"))
}
