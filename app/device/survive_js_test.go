package device

import (
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/recorder"
	"stillair/app/store"
	"stillair/export/session"
	"stillair/sensors"
)

// These are the two halves of the test in .ci/browser/kills.mjs, which kills
// the browser while the first runs and reads what the second found.
var surviving = flag.Bool("surviving", false, "record until killed, and tell what an earlier kill left")

// noFilter is a filter that estimates nothing.
type noFilter struct{}

func (noFilter) Motion(sensors.Motion) {}
func (noFilter) Fix(sensors.Fix)       {}
func (noFilter) Estimate() recorder.Estimate {
	return recorder.Estimate{Speed: math.NaN(), Accel: math.NaN()}
}

// left is the remainder of a session, as the second half reads it.
type left struct {
	ID     string  `json:"id"`
	Stage  string  `json:"stage"`
	First  float64 `json:"first"` // s on the page's clock
	Last   float64 `json:"last"`
	Motion int     `json:"motion"`
	Fixes  int     `json:"fixes"`
	Gap    float64 `json:"gap"`     // longest between two readings of motion, s
	Lost   int     `json:"missing"` // damaged stretches
}

func tell(t *testing.T, word string, v any) {
	t.Helper()
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	fmt.Println(word, string(b))
}

// opened is the device of a test that a script drives.
func opened(t *testing.T) *platform.Device {
	t.Helper()
	if !*surviving {
		t.Skip("kills.mjs and storms.mjs run this")
	}
	d, err := Open()
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// begin begins a recording that is kept in files.
func begin(t *testing.T, d *platform.Device, files platform.Files) (*recorder.Recording, error) {
	t.Helper()
	id, err := session.NewID(d.Random)
	if err != nil {
		t.Fatal(err)
	}
	return recorder.Start(t.Context(), recorder.Config{Sessions: store.NewSessions(files, d.Clock), Clock: d.Clock, Awake: d.Awake, Source: d.Source(),
		Filter: noFilter{}, Ride: sensors.UnknownRide(), Header: session.Header{ID: id, Started: d.Clock.Wall(), Device: "browser"}})
}

// eachLeft reads every session that is left and deletes it.
func eachLeft(t *testing.T, d *platform.Device, read func(store.Session, *session.Recording)) {
	t.Helper()
	sessions := store.NewSessions(d.Files, d.Clock)
	if _, err := sessions.Recover(); err != nil {
		t.Error(err)
	}
	list, problems := sessions.List()
	for _, p := range problems {
		t.Error(p)
	}
	for _, s := range list {
		rec, err := sessions.Read(s.ID)
		if err != nil {
			t.Errorf("%s: %v", s.ID, err)
			continue
		}
		read(s, rec)
		if err := sessions.Delete(s.ID); err != nil {
			t.Error(err)
		}
	}
	if err := sessions.Purge(0); err != nil {
		t.Error(err)
	}
}

func TestWhatAKillLeft(t *testing.T) {
	eachLeft(t, opened(t), func(s store.Session, rec *session.Recording) { tell(t, "LEFT", inspect(s, rec)) })
}

func inspect(s store.Session, rec *session.Recording) left {
	l := left{ID: s.ID, Stage: string(s.About.Stage), Motion: len(rec.Log.Motion), Fixes: len(rec.Log.Fixes), Lost: len(rec.Missing)}
	for i, m := range rec.Log.Motion {
		if i == 0 {
			l.First = m.T
		} else {
			l.Gap = max(l.Gap, m.T-l.Last)
		}
		l.Last = m.T
	}
	return l
}

func TestRecordUntilKilled(t *testing.T) {
	d := opened(t)
	r, err := begin(t, d, d.Files)
	if err != nil {
		t.Fatal(err)
	}
	for deadline := time.After(2 * time.Minute); r.Status().Kept.Until == 0; {
		select {
		case <-deadline:
			t.Fatal("nothing was kept in two minutes")
		case <-time.After(20 * time.Millisecond):
		}
	}
	tell(t, "RECORDING", r.ID())
	time.Sleep(2 * time.Minute)
	t.Fatal("nobody killed the browser")
}
