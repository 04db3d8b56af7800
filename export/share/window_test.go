package share

import (
	"math"
	"testing"

	"stillair/fusion"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// TestFindingsAreCut checks that a finding, including nested ones, contains no
// time from before the cut, and none on the original clock.
func TestFindingsAreCut(t *testing.T) {
	w := Window{From: 100, To: 700, Zero: 100, Date: Dated}
	at := func(x float64) finding.Finding { return finding.New("a.at", finding.Moment("at", x)) }
	within := func(f finding.Finding) finding.Finding { return finding.New("a.of", finding.Of("why", f)) }
	free := finding.New("a.free", finding.Text("why", "open /home/rider/0900: no such file"))
	empty := Window{From: math.Inf(1), To: math.Inf(-1), Date: Dated}
	all := Window{From: math.Inf(-1), To: math.Inf(1), Date: Dated}
	undated := all
	undated.Date = Undated
	tests := []struct {
		name    string
		window  Window
		f, want finding.Finding
	}{
		{"shifted", w, at(160), at(60)},
		{"shifted within", w, within(at(160)), within(at(60))},
		{"shifted two deep", w, within(within(at(160))), within(within(at(60)))},
		{"before the cut", w, within(at(12)), within(at(0))},
		{"after the end", w, within(at(900)), within(at(600))},
		{"nothing left", empty, within(at(12)), within(at(0))},
		{"nothing cut", all, within(at(12)), within(at(12))},
		{"span within", w, within(at(160).Within(12, 160)), within(at(60).Within(0, 60))},
		{"words of the system", w, free, finding.Finding{}},
		{"words of the system within", w, within(within(free)), finding.Finding{}},
		{"words of a whole ride", all, within(free), within(free)},
		{"words of a ride without its date", undated, within(free), finding.Finding{}},
		{"a setup's name", w, finding.New("a.setup", finding.Text("setup", "bare")), finding.New("a.setup", finding.Text("setup", "bare"))},
	}
	for _, tt := range tests {
		got := tt.window.finding(tt.f)
		if got.String() != tt.want.String() {
			t.Errorf("%s: %s, want %s", tt.name, got, tt.want)
		}
		if a, ok := got.Arg("why"); ok && a.Finding != nil {
			want, _ := tt.want.Arg("why")
			if a.Finding.From != want.Finding.From || a.Finding.To != want.Finding.To {
				t.Errorf("%s: a span of %v to %v s", tt.name, a.Finding.From, a.Finding.To)
			}
		}
	}
	if f := within(at(160)); w.finding(f).String() == f.String() || f.Args[0].Finding.Args[0].X != 160 {
		t.Error("the finding itself was changed")
	}
}

// TestNothingTellsOfTheCut searches all findings and spans of a log and a
// result for a time from before the cut.
func TestNothingTellsOfTheCut(t *testing.T) {
	const early, late = 4.0, 150.0
	log := outAndBack()
	deep := finding.New("a.of", finding.Of("why", finding.New("a.at", finding.Moment("at", late)).Within(early, late)))
	log.Notes = []sensors.Note{{Line: 4711, What: deep}}
	log.States = append(log.States, sensors.State{T: late, Detail: deep}, sensors.Hole{From: early, To: late}.State(sensors.SensorMotion))
	w := WindowOf(log, Default())
	if w.Zero <= early {
		t.Fatalf("the cut is at %v s", w.Zero)
	}
	check := func(where string, f finding.Finding) {
		t.Helper()
		if f.IsZero() {
			t.Errorf("%s: the finding is gone", where)
		}
		for f := &f; f != nil; {
			if f.From < 0 || f.To > late-w.Zero {
				t.Errorf("%s: a span of %v to %v s", where, f.From, f.To)
			}
			var inner *finding.Finding
			for _, a := range f.Args {
				if a.Quantity == finding.OfMoment && a.X != late-w.Zero || a.Quantity == finding.OfTime && a.X > late-w.Zero {
					t.Errorf("%s: %s", where, a)
				}
				if a.Finding != nil {
					inner = a.Finding
				}
			}
			f = inner
		}
	}
	got := Apply(log, Default())
	check("note", got.Notes[0].What)
	if got.Notes[0].Line != 0 {
		t.Errorf("the note tells of line %d", got.Notes[0].Line)
	}
	n := len(got.States)
	check("state", got.States[n-2].Detail)
	check("hole", got.States[n-1].Detail)
	if holes := got.Holes(); len(holes) != 1 || holes[0].From < 0 || holes[0].To != late-w.Zero {
		t.Errorf("holes %+v", holes)
	}

	span := fusion.Span{From: early, To: late}
	res := Result(&runs.Result{Warnings: []finding.Finding{deep}, Notes: log.Notes,
		Runs:  []runs.Run{{Start: early, End: late, Reasons: []finding.Finding{deep}, Cautions: []finding.Finding{deep}}},
		Track: &fusion.Track{Notes: []finding.Finding{deep}, Mounts: []fusion.Mount{{Span: span}}, GNSSOnly: []fusion.GNSSOnly{{Span: span, Why: deep}}}}, log, Default())
	check("warning", res.Warnings[0])
	check("note of the result", res.Notes[0].What)
	check("reason", res.Runs[0].Reasons[0])
	check("caution", res.Runs[0].Cautions[0])
	check("note of the track", res.Track.Notes[0])
	check("reason for satellites alone", res.Track.GNSSOnly[0].Why)
	if m := res.Track.Mounts[0]; m.From != 0 || m.To != late-w.Zero {
		t.Errorf("a mount from %v to %v s", m.From, m.To)
	}
}
