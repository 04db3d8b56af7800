package share

import (
	"testing"

	"stillair/export/exporttest"
	"stillair/runs"
)

// TestResultIsCutAsTheLog checks that the track in a result keeps no more of the
// ride than the log beside it, and that the result itself is left alone.
func TestResultIsCutAsTheLog(t *testing.T) {
	log, res := exporttest.Log(), exporttest.Result()
	choice := Choice{Places: Kept, EndsCut: 200}
	got, cut := Apply(log, choice), Result(res, log, choice)
	if n := len(cut.Track.T); n == 0 || n >= len(res.Track.T) {
		t.Fatalf("%d of %d entries are left", n, len(res.Track.T))
	}
	first, last := cut.Track.T[0], cut.Track.T[len(cut.Track.T)-1]
	if first < got.Fixes[0].T || last > got.Fixes[len(got.Fixes)-1].T {
		t.Errorf("the track goes from %v to %v s, the log from %v to %v s", first, last, got.Fixes[0].T, got.Fixes[len(got.Fixes)-1].T)
	}
	if len(cut.Track.V) != len(cut.Track.T) || len(cut.Track.Shake) != 0 || cut.Track.S[0] != 0 {
		t.Errorf("the columns no longer belong together: %d speeds, first distance %v", len(cut.Track.V), cut.Track.S[0])
	}
	if len(cut.Runs) != len(res.Runs) || cut.RoadLoads[0].CdA != res.RoadLoads[0].CdA || len(res.Track.T) != 601 {
		t.Error("figures were lost, or the result itself was changed")
	}
	if all := Result(res, log, Choice{Places: Kept}); len(all.Track.T) != 601 {
		t.Errorf("with nothing to cut off %d entries are left", len(all.Track.T))
	}
	if empty := Result(res, log, Choice{EndsCut: 1e6}); len(empty.Track.T) != 0 {
		t.Errorf("of a ride shorter than its ends %d entries are left", len(empty.Track.T))
	}
	if none := Result(&runs.Result{}, log, choice); none.Track != nil {
		t.Error("a track came from nowhere")
	}
}
