package store_test

import (
	"bytes"
	"errors"
	"io/fs"
	"math"
	"strings"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/spoil"
)

// clock is a wall clock that shows the time it is set to.
type clock struct {
	platform.SystemClock
	now time.Time
}

func (c *clock) Wall() time.Time { return c.now }

func noon() *clock { return &clock{now: time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)} }

// recorded begins a session and writes some seconds of fixes into it.
func recorded(t *testing.T, s *store.Sessions, seconds int) string {
	t.Helper()
	id, f, err := s.Begin(store.About{Bike: "test bike"})
	if err != nil {
		t.Fatal(err)
	}
	w, err := session.NewWriter(session.ToFile(f), session.Header{ID: session.ID{1}}, sensors.UnknownRide())
	if err != nil {
		t.Fatal(err)
	}
	for i := range seconds {
		w.Fix(sensors.NewFix(float64(i), 20))
	}
	if err := w.Flush(); err != nil {
		t.Fatal(err)
	}
	return id
}

func ids(t *testing.T, s *store.Sessions) []string {
	t.Helper()
	list, problems := s.List()
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	var out []string
	for _, l := range list {
		out = append(out, l.ID)
	}
	return out
}

func TestASessionsLife(t *testing.T) {
	files, c := platformtest.NewMemory(), noon()
	s := store.NewSessions(files, c)
	first := recorded(t, s, 60)
	c.now = c.now.Add(-2 * time.Hour) // the clock was set back
	second := recorded(t, s, 30)
	c.now = c.now.Add(2 * time.Hour) // and again: the same second as the first
	third := recorded(t, s, 30)
	if third == first {
		t.Fatalf("two sessions are called %s", first)
	}
	if got := ids(t, s); len(got) != 3 || got[2] != second {
		t.Fatalf("list is %v, want the latest first and %s last", got, second)
	}
	found, err := s.Recover()
	if err != nil || len(found) != 3 {
		t.Fatalf("recovered %v, %v", found, err)
	}
	got, err := s.Get(first)
	if err != nil || got.About.Stage != store.CutOff || got.About.Seconds != 59 {
		t.Errorf("after recovery: %+v, %v", got.About, err)
	}
	if again, err := s.Recover(); err != nil || len(again) != 0 {
		t.Errorf("reported twice: %v, %v", again, err)
	}
}

func TestDeleteCanBeTakenBack(t *testing.T) {
	files, c := platformtest.NewMemory(), noon()
	s := store.NewSessions(files, c)
	id := recorded(t, s, 20)
	before, err := s.Read(id)
	if err != nil {
		t.Fatal(err)
	}
	for _, step := range []struct {
		name string
		do   func() error
		want int
	}{
		{"delete", func() error { return s.Delete(id) }, 0},
		{"purge what is old", func() error { return s.Purge(time.Hour) }, 0},
		{"take back", func() error { return s.Undelete(id) }, 1},
		{"purge what is not deleted", func() error { return s.Purge(0) }, 1},
		{"delete again", func() error { return s.Delete(id) }, 0},
	} {
		if err := step.do(); err != nil {
			t.Fatalf("%s: %v", step.name, err)
		}
		if got := ids(t, s); len(got) != step.want {
			t.Fatalf("%s: list is %v", step.name, got)
		}
		if after, err := s.Read(id); err != nil || len(after.Log.Fixes) != len(before.Log.Fixes) {
			t.Fatalf("%s: the recording is harmed: %v", step.name, err)
		}
	}
	c.now = c.now.Add(2 * time.Hour)
	if err := s.Purge(time.Hour); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Read(id); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("after the purge: %v, want no file", err)
	}
}

// TestWhatCannotBeReadIsLeftAlone checks that files of a later version and
// damaged ones are reported and not overwritten.
func TestWhatCannotBeReadIsLeftAlone(t *testing.T) {
	for _, c := range []struct{ name, file, content string }{
		{"later bike", "bike-1.json", `{"version": 2, "name": "from the future"}`},
		{"damaged bike", "bike-1.json", `{"version": 1, "na`},
		{"no version", "bike-1.json", `{"name": "x"}`},
		{"later choices", "choices.json", `{"version": 9}`},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := platformtest.NewMemory()
			if err := files.Replace(c.file, []byte(c.content)); err != nil {
				t.Fatal(err)
			}
			_, problems := store.NewBikes(files, noon()).List()
			if _, err := store.ReadChoices(files); err != nil {
				problems = append(problems, err)
			}
			var u *store.UnreadableError
			if len(problems) != 1 || !errors.As(problems[0], &u) || u.Name != c.file {
				t.Errorf("problems are %v", problems)
			}
			if got := platformtest.Read(t, files, c.file); string(got) != c.content {
				t.Errorf("the file is now %q", got)
			}
		})
	}
}

func TestBikesAreKeptAsEntered(t *testing.T) {
	files := platformtest.NewMemory()
	b := store.NewBikes(files, noon())
	mass, with := 290.0, 302.0
	kept, err := b.Put(store.Bike{Name: "blue", Mass: &mass, Gears: []store.Gear{{Name: "4", RPMPerMPS: 165}},
		Setups: []store.Setup{{Name: "off"}, {Name: "on", Mass: &with}}})
	if err != nil {
		t.Fatal(err)
	}
	list, problems := b.List()
	if len(list) != 1 || len(problems) > 0 || list[0].ID != kept.ID {
		t.Fatalf("list is %+v, %v", list, problems)
	}
	r := list[0].Ride("on", sensors.Air{Temperature: math.NaN(), Pressure: math.NaN(), Humidity: math.NaN()})
	if r.Bike != "blue" || r.Mass != 290 || r.SetupAt(5).Mass != 302 || r.Gears[0].RPMPerMPS != 165 || !math.IsNaN(r.RotatingMass) {
		t.Errorf("the ride says %+v", r)
	}
	raw := platformtest.Read(t, files, "bike-"+kept.ID+".json")
	for _, want := range []string{`"version": 1`, `"mass_kg": 290`, "\n"} {
		if !bytes.Contains(raw, []byte(want)) {
			t.Errorf("the file lacks %q:\n%s", want, raw)
		}
	}
	second, err := b.Put(store.Bike{Name: "another"})
	if err != nil || second.ID == kept.ID {
		t.Errorf("a second bike in the same second: %q, %v", second.ID, err)
	}
}

func TestImpossibleBikesAreRefused(t *testing.T) {
	n := func(x float64) *float64 { return &x }
	for _, c := range []struct {
		name, field string
		bike        store.Bike
	}{
		{"no name", "name", store.Bike{Name: " "}},
		{"no mass at all", "mass_kg", store.Bike{Name: "x", Mass: n(0)}},
		{"mass in grams", "mass_kg", store.Bike{Name: "x", Mass: n(290_000)}},
		{"not a number", "mass_kg", store.Bike{Name: "x", Mass: n(math.NaN())}},
		{"gear in km/h", "gears", store.Bike{Name: "x", Gears: []store.Gear{{Name: "1", RPMPerMPS: 3}}}},
		{"two setups of one name", "setups", store.Bike{Name: "x", Setups: []store.Setup{{Name: "a"}, {Name: "a"}}}},
		{"setup too light", "setups", store.Bike{Name: "x", Setups: []store.Setup{{Name: "a", Mass: n(20)}}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			field, err := c.bike.Check()
			if field != c.field || !errors.Is(err, store.ErrInvalid) {
				t.Errorf("field %q, %v; want %q and ErrInvalid", field, err, c.field)
			}
			files := platformtest.NewMemory()
			if _, err := store.NewBikes(files, noon()).Put(c.bike); err == nil || !strings.Contains(err.Error(), c.field) {
				t.Errorf("Put says %v", err)
			}
			if infos, _ := files.List(); len(infos) != 0 {
				t.Errorf("it was kept all the same: %v", infos)
			}
		})
	}
}

func FuzzBikeFile(f *testing.F) {
	f.Add([]byte(`{"version": 1, "id": "1", "name": "x", "mass_kg": 290, "setups": [{"name": "a"}]}`))
	f.Add([]byte(`{"version": 1, "gears": [{}], "setups": null}`))
	f.Add([]byte(`[]`))
	f.Fuzz(mustListOne)
}

// FuzzBikeFields lists files of bikes whose fields were changed one by one.
func FuzzBikeFields(f *testing.F) {
	files, mass := platformtest.NewMemory(), 290.0
	bike := store.Bike{Name: "x", Gears: []store.Gear{{Name: "1", RPMPerMPS: 600}}, Setups: []store.Setup{{Name: "a", Mass: &mass}, {Name: "b"}}}
	kept, err := store.NewBikes(files, noon()).Put(bike)
	if err != nil {
		f.Fatal(err)
	}
	whole := strings.ReplaceAll(string(platformtest.Read(f, files, "bike-"+kept.ID+".json")), ",", ",\n")
	f.Add([]byte{1, 2, 70, 9, 80, 90, 3, 3, 3})
	f.Add([]byte{0, 0, 20, 90, 0, 66, 200, 128, 69, 40, 100, 81})
	f.Fuzz(func(t *testing.T, ops []byte) { mustListOne(t, []byte(spoil.Text(whole, ":", ops))) })
}

// mustListOne lists a bike's file: it is one bike or one problem, without a panic.
func mustListOne(t *testing.T, data []byte) {
	files := platformtest.NewMemory()
	if err := files.Replace("bike-1.json", data); err != nil {
		t.Skip()
	}
	list, problems := store.NewBikes(files, noon()).List()
	if len(list)+len(problems) != 1 {
		t.Fatalf("%d bikes and %d problems of one file", len(list), len(problems))
	}
	for _, b := range list {
		b.Ride("a", sensors.Air{})
		_, _ = b.Check()
	}
}
