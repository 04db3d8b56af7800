package share

import (
	"math"
	"testing"

	"stillair/export/exporttest"
	"stillair/fusion"
	"stillair/runs"
	"stillair/runs/pass"
)

// TestResultIsCutAsTheLog checks that the track in a result keeps no more of the
// ride than the log next to it, and that the original result is unchanged.
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

// TestPassesAreCut checks that a leg that reaches into a cut end keeps only its speeds.
func TestPassesAreCut(t *testing.T) {
	log, res := exporttest.Log(), exporttest.Result()
	leg := func(from, to float64) pass.Leg { return pass.Leg{Start: from, End: to, BearingDeg: 17, Length: 400} }
	span := func(from, to float64) fusion.Span { return fusion.Span{From: from, To: to} }
	res.Passes = []runs.Pass{{There: leg(1, 25), Back: leg(30, 40),
		Figures: []pass.Figure{{Name: "200 m", Distance: 200, Mean: runs.Value{X: 25, SE: 0.1}, Times: [2]fusion.Span{span(2, 10), span(31, 39)}}}}}
	cut := Result(res, log, Choice{Places: Kept, EndsCut: 200})
	p, f := cut.Passes[0], cut.Passes[0].Figures[0]
	if !math.IsNaN(p.There.BearingDeg) || !math.IsNaN(p.There.Length) || p.There.Start != cut.Track.T[0] {
		t.Errorf("of the leg within the end are left %+v", p.There)
	}
	if p.Back.BearingDeg != 17 || p.Back.End-p.Back.Start != 10 || p.Back.Start >= 30 {
		t.Errorf("the other leg became %+v", p.Back)
	}
	if f.Mean.X != 25 || f.Times[0].From < cut.Track.T[0] || f.Times[1].To-f.Times[1].From != 8 || res.Passes[0].Figures[0].Times[0].From != 2 {
		t.Errorf("figures became %+v, or those of the result were changed", f)
	}
}
