package store_test

import (
	"testing"

	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/export/exporttest"
	"stillair/export/results"
)

// TestKeptResults stores the results of a ride, which are returned only for the
// program and values that computed them, and are removed with the ride.
func TestKeptResults(t *testing.T) {
	files := platformtest.NewMemory()
	s := store.NewSessions(files, noon())
	id := recorded(t, s, 3)
	mass, other := 290.0, 300.0
	with := &store.Values{Mass: &mass}
	if s.KeptResults(id, "program 1", with) != nil {
		t.Fatal("results before any were kept")
	}
	doc := results.From(exporttest.Result()).ForSeason()
	if err := s.KeepResults(id, "program 1", with, doc); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, by string
		values   *store.Values
		kept     bool
	}{
		{"the same again", "program 1", &store.Values{Mass: &mass}, true},
		{"another program", "program 2", with, false},
		{"another weight", "program 1", &store.Values{Mass: &other}, false},
		{"as recorded", "program 1", nil, false},
	} {
		got := s.KeptResults(id, c.by, c.values)
		if (got != nil) != c.kept {
			t.Errorf("%s: %v", c.name, got)
		}
		if got != nil && (len(got.RoadLoad) != len(doc.RoadLoad) || *got.RoadLoad[0].CdA != *doc.RoadLoad[0].CdA) {
			t.Errorf("%s: %+v", c.name, got.RoadLoad)
		}
	}
	if list := ids(t, s); len(list) != 1 {
		t.Errorf("rides %v", list)
	}
	if err := files.Replace(id+".season.json", []byte("{")); err != nil || s.KeptResults(id, "program 1", with) != nil {
		t.Errorf("damaged results are given, or %v", err)
	}
	if err := s.Delete(id); err != nil {
		t.Fatal(err)
	}
	if err := s.Remove(id); err != nil {
		t.Fatal(err)
	}
	if left, _ := files.List(); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}
