package shell_test

import (
	"strings"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/shell"
	"stillair/app/store"
	"stillair/export/results"
)

func number(x float64) *float64 { return &x }

// inventedDay is the result of an invented ride with two setups.
func inventedDay(a, b string, cda, more float64) *results.Document {
	load := func(setup string, x float64) results.RoadLoad {
		return results.RoadLoad{Setup: setup, CdA: number(x), CdASE: number(0.026), Crr: number(0.018), CrrSE: number(0.001), CdANoise: number(0.005), CrrNoise: number(0.0005), AirDensity: number(1.19)}
	}
	return &results.Document{Version: results.Version, Bike: "Blue", RoadLoad: []results.RoadLoad{load(a, cda), load(b, cda+more)},
		Comparisons: []results.Comparison{{A: a, B: b, DeltaCdA: number(more), SE: number(0.007)}},
		Runs: []results.Run{{ID: 1, Kind: "launch", Accepted: true, Start: number(10), BearingDeg: number(84), Setup: a,
			Marks: []results.Mark{{Mark: "0-100 km/h", Time: number(4.8), TimeSE: number(0.05), Rollout: number(4.4), RolloutSE: number(0.04)}}}}}
}

// TestASeasonFromWhatIsKept opens the season of rides with stored results: their
// recordings are empty, so it cannot measure them again; rides that are left out
// are named. Its rides and the way back are one tap away.
func TestASeasonFromWhatIsKept(t *testing.T) {
	files := platformtest.NewMemory()
	sessions := store.NewSessions(files, platform.NewSystemClock())
	for name, doc := range map[string]*results.Document{"May": inventedDay("short screen", "short screen + panniers", 0.55, 0.06),
		"June": inventedDay("short screen", "tall screen", 0.555, 0.045), "Lost": nil} {
		id, f, err := sessions.Begin(store.About{Name: name})
		if err == nil {
			_, err = f.Write([]byte("no recording at all"))
		}
		if err == nil {
			err = f.Close()
		}
		if err == nil {
			err = sessions.Update(id, func(a *store.About) { a.Stage, a.Measured = store.Closed, time.Now() })
		}
		if err == nil && doc != nil {
			err = sessions.KeepResults(id, shell.Program+", metric", nil, doc)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	h := open(t, files, quiet, &outlet{})
	h.touch("Results")
	h.touch("Season")
	h.await("What each part costs")
	said := h.words()
	// 0.06 m² of 0.5525 m² are 10.9 %, and a little less since the days differ.
	for _, words := range []string{"panniers: 10.8 % more drag", "tall screen, against short screen: 8.2 % more drag", "Season, Blue", "Launch, 0–100 km/h after 1 ft", "Left out", "Lost: "} {
		if !strings.Contains(said, words) {
			t.Errorf("it does not say %q but\n%s", words, said)
		}
	}
	for _, out := range []string{"The rides", "Season"} { // from the ride to the season, from there to the list
		if out == "The rides" {
			h.touch("June")
			h.await("could not be read", "cannot be read")
		}
		h.mu.Lock()
		went := h.app.Back()
		h.mu.Unlock()
		if !went {
			t.Fatal("no way back")
		}
		h.await(out)
	}
	if strings.Contains(h.words(), "What each part costs") {
		t.Error("back from the season does not lead to the list of rides")
	}
}
