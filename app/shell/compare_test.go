package shell_test

import (
	"strings"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
)

// TestTwoRidesAreCompared compares two rides of different days and finds
// everything that a comparison within one ride has, marked as less certain. Their
// season, without stored results, measures them and stores the results.
func TestTwoRidesAreCompared(t *testing.T) {
	if testing.Short() {
		t.Skip("measures two whole rides")
	}
	files := platformtest.NewMemory()
	sessions := store.NewSessions(files, platform.NewSystemClock())
	for seed, name := range map[uint64]string{7: "May", 8: "June"} {
		id := recordedRide(t, sessions, shortRideOf(t, seed), store.About{Name: name})
		if err := sessions.Update(id, func(a *store.About) { a.Stage, a.Measured = store.Closed, time.Now() }); err != nil {
			t.Fatal(err)
		}
	}
	h := open(t, files, quiet, &outlet{})
	h.touch("Compare")
	h.touch("Rides compared")
	h.touch("May")
	h.touch("June")
	h.touch("Compare these")
	for _, words := range []string{"From different rides, so whatever changed", "Drag area", "absolute", "What that means on the road", "Power at 120 km/h",
		"What limits the certainty", "What differs from day to day", "is given in the air of"} {
		h.await(words)
	}
	h.touch("80")
	h.await("Power at 80 km/h")
	h.touch("Results")
	h.touch("Season")
	h.await("Measured with each setup")
	kept := 0
	for end := time.Now().Add(time.Minute); kept < 2 && time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		kept = 0
		list, _ := files.List()
		for _, f := range list {
			if strings.HasSuffix(f.Name, ".season.json") {
				kept++
			}
		}
	}
	if kept != 2 {
		t.Errorf("the results of %d rides are kept, of 2 that the season measured", kept)
	}
}
