package device

import (
	"bytes"
	"errors"
	"io"
	"math/rand/v2"
	"strings"
	"sync"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/recorder"
	"stillair/app/store"
	"stillair/app/text"
	"stillair/app/view"
	"stillair/export/session"
	"stillair/sensors/device/web"
	"stillair/sensors/device/web/webtest"
)

// These are the pages of .ci/browser/storms.mjs, which takes their storage away in
// several ways and compares what was read with what the browser delivered.

// watched is a storage that records since when written data has been waiting to be
// synced.
type watched struct {
	platform.Files
	mu    sync.Mutex
	since time.Time // zero: nothing waits
}

func (w *watched) Create(name string) (platform.File, error) {
	f, err := w.Files.Create(name)
	return watchedFile{f, w}, err
}

func (w *watched) waits(from time.Time) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if from.IsZero() || w.since.IsZero() {
		w.since = from
	}
}

func (w *watched) waiting(now time.Time) time.Duration {
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.since.IsZero() {
		return 0
	}
	return now.Sub(w.since)
}

type watchedFile struct {
	platform.File
	in *watched
}

func (f watchedFile) Write(p []byte) (int, error) {
	f.in.waits(time.Now())
	return f.File.Write(p)
}

func (f watchedFile) Sync() error {
	err := f.File.Sync()
	if err == nil {
		f.in.waits(time.Time{})
	}
	return err
}

// beat is the interval at which the screen checks the recorder, as in package
// shell; a page whose beats are further apart than this multiple was hidden or
// frozen.
const (
	beat   = 500 * time.Millisecond
	stands = 3
)

// telling records what the screen says about the storage at each beat.
type telling struct {
	files   *watched
	words   view.Context
	last    time.Time
	said    bool
	Unsaid  time.Duration // the longest that something waited at a beat that said nothing
	SaidAt  time.Duration // the longest that it had waited when the screen first said so
	Letdown int           // how often that happened
}

func (s *telling) look(st recorder.Status, now time.Time) {
	if now.Sub(s.last) > stands*beat {
		s.files.mu.Lock()
		if !s.files.since.IsZero() {
			s.files.since = now // a page that does not run can show nothing
		}
		s.files.mu.Unlock()
	}
	s.last = now
	v := s.words.Riding(st)
	trouble := s.words.Book.Trouble
	tells := !v.SafeGood
	for _, w := range v.Warnings {
		tells = tells || w == trouble.StorageFails || w == trouble.StorageLost || strings.HasPrefix(w, s.words.Book.Senses.Storage)
	}
	waits := s.files.waiting(now)
	switch {
	case !tells:
		s.Unsaid = max(s.Unsaid, waits)
	case !s.said:
		s.SaidAt = max(s.SaidAt, waits)
		s.Letdown++
	}
	s.said = tells
}

// readings are those of a recording as the page's own listener would note them.
type readings struct {
	ID      string       `json:"id"`
	Stage   string       `json:"stage"`
	Motion  [][2]float64 `json:"motion"` // µs on the page's clock, force along x
	Fixes   []int64      `json:"fixes"`  // their times of day, ms
	Missing int          `json:"missing"`
	Unsaid  float64      `json:"unsaid"` // s
	SaidAt  float64      `json:"said_at"`
	Letdown int          `json:"letdown"`
	Why     string       `json:"why"`
	Err     string       `json:"err"`
	Rescued int          `json:"rescued"` // bytes handed over at the end
}

func (r *readings) take(rec *session.Recording) {
	r.Missing = len(rec.Missing) + len(rec.Unstored)
	for _, m := range rec.Log.Motion {
		r.Motion = append(r.Motion, [2]float64{m.T * 1e6, m.Force.X})
	}
	for _, f := range rec.Log.Fixes {
		r.Fixes = append(r.Fixes, f.UTC.UnixMilli())
	}
}

func onTheDevice(t *testing.T) *platform.Device {
	t.Helper()
	d := opened(t)
	if webtest.Asked("stormTables") {
		tables, err := web.OpenTables("stillair")
		if err != nil {
			t.Fatal(err)
		}
		d.Files = browserFiles{tables}
	}
	return d
}

func TestRecordThroughAStorm(t *testing.T) {
	d := onTheDevice(t)
	files := &watched{Files: d.Files}
	rec, err := begin(t, d, files)
	if err != nil {
		t.Fatal(err)
	}
	s := telling{files: files, words: view.Context{Book: text.English()}, last: time.Now()}
	begun := sync.OnceFunc(func() { tell(t, "RECORDING", rec.ID()) })
	end := sync.OnceFunc(func() { go rec.Stop() })
	for over := false; !over; {
		select {
		case <-rec.Done():
			over = true
		case <-time.After(beat):
		}
		st := rec.Status()
		s.look(st, time.Now())
		if st.Kept.Until > 0 {
			begun()
		}
		if webtest.Asked("stormEnd") {
			end()
		}
		if webtest.Asked("stormBulk") {
			rec.Remark(noise(400_000))
		}
	}
	tell(t, "ENDED", whatIsLeft(t, d, rec, s))
}

// noise is text that hardly compresses, so that it uses up the space that a
// browser reserved for a file.
func noise(n int) string {
	b := make([]byte, n)
	for i := range b {
		b[i] = byte(' ' + 3 + rand.IntN(58))
	}
	return string(b)
}

// whatIsLeft is the ride as the rider has it: the file, followed by what the
// storage did not take.
func whatIsLeft(t *testing.T, d *platform.Device, rec *recorder.Recording, s telling) readings {
	t.Helper()
	st := rec.Status()
	out := readings{ID: rec.ID(), Unsaid: s.Unsaid.Seconds(), SaidAt: s.SaidAt.Seconds(), Letdown: s.Letdown, Why: string(st.Why), Rescued: len(rec.Unstored())}
	if st.Kept.Err != nil {
		out.Err = st.Kept.Err.Error()
	}
	_, data, err := store.NewSessions(d.Files, d.Clock).Bytes(rec.ID())
	if err != nil {
		out.Err += "; " + err.Error()
	}
	all, err := session.ReadAll(io.MultiReader(bytes.NewReader(data), bytes.NewReader(rec.Unstored())), "storm")
	if err != nil || len(all) != 1 {
		t.Fatalf("%d recordings of %d bytes: %v", len(all), len(data), err)
	}
	out.take(all[0])
	return out
}

// TestASecondTab opens the app's storage while another tab is recording: it
// reads everything, as the app does when it starts, and may not record itself.
func TestASecondTab(t *testing.T) {
	d := onTheDevice(t)
	sessions := store.NewSessions(d.Files, d.Clock)
	tell(t, "SECOND", nil)
	for range 4 {
		if _, err := sessions.Recover(); !errors.Is(err, platform.ErrBusy) {
			t.Errorf("a second tab looked after what the first one records: %v", err)
		}
		list, problems := sessions.List()
		if len(problems) > 0 {
			t.Error(problems)
		}
		for _, s := range list {
			if _, err := sessions.Read(s.ID); err != nil {
				t.Error(err)
			}
		}
		if rec, err := begin(t, d, d.Files); err == nil {
			t.Error("a second tab began a recording")
			rec.Stop()
		}
		time.Sleep(beat)
	}
}

func TestWhatAStormLeft(t *testing.T) {
	left := []readings{}
	eachLeft(t, onTheDevice(t), func(s store.Session, rec *session.Recording) {
		one := readings{ID: s.ID, Stage: string(s.About.Stage)}
		one.take(rec)
		left = append(left, one)
	})
	tell(t, "LEFT", left)
}
