package detect

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"stillair/fusion"
	"stillair/runs/marks"
	"stillair/sensors/finding"
)

// describeAll writes candidates as "kind" or "kind: first reason".
func describeAll(found []Found) []string {
	var out []string
	for _, f := range found {
		text := string(f.Kind)
		if len(f.Reasons) > 0 {
			text += ": " + codesOf(f.Reasons[0])
		}
		if len(f.Cautions) > 0 {
			text += " (" + codesOf(f.Cautions[0]) + ")"
		}
		out = append(out, text)
	}
	return out
}

func find(r *ridden) []Found {
	return Find(Ride{Track: r.track, Mass: 290, RollOns: marks.DefaultPairs()})
}

// TestFind checks rides made from closed formulas: one event each, and the
// expected candidates and reasons. Every wanted text must be part of the
// result.
func TestFind(t *testing.T) {
	cruise := func(v float64) *ridden { return newRide().stand(5).steady(1.5, v).hold(10) }
	tests := []struct {
		name string
		ride *ridden
		want []string
	}{
		{"a launch", newRide().stand(5).power(150, 40).hold(5), []string{"launch"}},
		{"a launch on a small bike", newRide().stand(5).power(45, 25).hold(5), []string{"launch"}},
		{"a start in traffic", newRide().stand(5).steady(2.2, 15).hold(5), nil},
		{"a brisk start in traffic", newRide().stand(5).steady(2.8, 14).hold(5), nil},
		{"a launch that ends early", newRide().stand(5).power(150, 15).hold(5), []string{"launch: launch.too_short"}},
		{"the second launch is half-hearted", newRide().stand(5).power(200, 30).hold(3).steady(-2, 0).stand(5).steady(3.2, 25).hold(5),
			[]string{"launch", "launch: launch.part_throttle"}},
		{"a coast-down", cruise(31).coast(8, 0).hold(5), []string{"coast-down"}},
		{"a coast-down that is short", cruise(25).coast(15, 0).hold(5), []string{"coast-down: coast.too_short"}},
		{"engine braking in a high gear", cruise(31).coast(8, 0.5).hold(5), []string{"coast-down: coast.too_hard"}},
		{"braking", cruise(31).steady(-2.5, 5).hold(5), nil},
		{"closing the throttle in town", cruise(14).steady(-0.8, 6).steady(-2, 0).stand(3), nil},
		{"a brush of the brake near the end", cruise(31).coast(13, 0).coastFor(1.5, 0.9).coast(6, 0).hold(5),
			[]string{"coast-down (coast.part coast.braked"}},
		{"a brush of the brake in the middle", cruise(31).coast(21, 0).coastFor(1.5, 0.9).coast(10.5, 0).hold(5),
			[]string{"coast-down: coast.braked"}},
		{"a roll-on", cruise(15).power(70, 35).hold(5), []string{"roll-on", "pull"}},
		{"part throttle on a country road", cruise(15).steady(0.7, 30).hold(5), nil},
		{"a hard stop", cruise(28).steady(-7, 0).stand(4), []string{"stop"}},
		{"a stop at a traffic light", cruise(14).steady(-2.5, 0).stand(4), nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := describeAll(find(tt.ride))
			ok := len(got) == len(tt.want)
			for i := range tt.want {
				ok = ok && strings.HasPrefix(got[i], tt.want[i])
			}
			if !ok {
				t.Errorf("found %q, want %q", got, tt.want)
			}
		})
	}
}

// TestCoastDownEnds: the run begins after the clutch is pulled, ends before the
// throttle opens, and loses less than a second at either end.
func TestCoastDownEnds(t *testing.T) {
	r := newRide().stand(5).steady(1.5, 31).hold(10)
	from := r.track.T[len(r.track.T)-1]
	r.coast(8, 0)
	to := r.track.T[len(r.track.T)-1]
	r.steady(1.5, 20)
	f := find(r)[0]
	if f.From < from || f.From > from+1 || f.To > to || f.To < to-1 {
		t.Errorf("rolling from %.2f to %.2f s was found from %.2f to %.2f", from, to, f.From, f.To)
	}
}

// bending turns the track by 0.12 rad/s between two samples.
func bending(from, to int) func(*Ride) {
	return func(r *Ride) {
		for i := from + 1; i < min(to, len(r.Track.Yaw)); i++ {
			r.Track.Yaw[i] = 0.12
		}
	}
}

// TestTroubles: defects of the recording are reported.
func TestTroubles(t *testing.T) {
	good := func() *ridden { return newRide().stand(5).steady(1.5, 31).hold(10).coast(8, 0).hold(5) }
	tests := []struct {
		name  string
		spoil func(r *Ride)
		want  string
	}{
		{"nothing", func(*Ride) {}, ""},
		{"fixes missing", func(r *Ride) { r.Fixes = good().fixes(45, 53) }, "run.no_fixes"},
		{"a short hole", func(r *Ride) { r.Track.Gaps = []fusion.Span{{From: 50, To: 50.12}, {From: 55, To: 56}} }, ""},
		{"fixes missing elsewhere", func(r *Ride) { r.Fixes = good().fixes(5, 15) }, ""},
		{"a hole", func(r *Ride) { r.Track.Gaps = []fusion.Span{{From: 50, To: 52}} }, "run.hole"},
		{"the phone slips", func(r *Ride) { r.Track.Mounts = []fusion.Mount{{}, {Span: fusion.Span{From: 50, To: 100}}} },
			"run.phone_moved"},
		{"a bend", bending(4500, 5000), ""},
		{"a long bend", bending(4500, 5800), "coast.bends"},
		{"no gyroscope", func(r *Ride) {
			for i := range r.Track.Yaw {
				r.Track.Yaw[i] = math.NaN()
			}
		}, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			ride := Ride{Track: good().track, Mass: 290, RollOns: marks.DefaultPairs()}
			tt.spoil(&ride)
			found := Find(ride)
			if len(found) != 1 {
				t.Fatalf("found %q", describeAll(found))
			}
			if got := join(found[0].Reasons); got != tt.want {
				t.Errorf("reasons %q, want %q", got, tt.want)
			}
		})
	}
}

// TestHoles: a push with a short gap is kept with a caution, and the gap is a
// break; at the start of a launch no gap is short enough.
func TestHoles(t *testing.T) {
	launch := newRide().stand(5).power(150, 40).hold(5)
	tests := []struct {
		name            string
		hole            fusion.Span
		reason, caution string
	}{
		{"none", fusion.Span{From: 1, To: 2}, "", ""},
		{"under way", fusion.Span{From: 8, To: 8.4}, "", "run.hole_bridged"},
		{"under way, long", fusion.Span{From: 7, To: 8.2}, "run.hole", ""},
		{"just before the start", fusion.Span{From: 4.5, To: 4.8}, "run.hole_at_start", ""},
		{"just after the start", fusion.Span{From: 6.1, To: 6.4}, "run.hole_at_start", ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			launch.track.Gaps = []fusion.Span{tt.hole}
			found := find(launch)
			if len(found) != 1 {
				t.Fatalf("found %q", describeAll(found))
			}
			f := found[0]
			if reason, caution := join(f.Reasons), join(f.Cautions); reason != tt.reason || caution != tt.caution {
				t.Errorf("reasons %q, cautions %q, want %q and %q", reason, caution, tt.reason, tt.caution)
			}
			if got := slices.Contains(f.Breaks, tt.hole); got != (tt.caution != "") {
				t.Errorf("the hole is a break: %v", got)
			}
		})
	}
}

// TestAnyMotorcycle: free rolling is recognised over the whole range of drag
// areas and rolling resistances, on slopes of up to 1 % either way.
func TestAnyMotorcycle(t *testing.T) {
	for _, cda := range []float64{0.2, 0.35, 0.55, 0.75} {
		for _, crr := range []float64{0.01, 0.018, 0.024} {
			for _, slope := range []float64{-0.006, 0, 0.01} {
				roll := func(v, _ float64) float64 { return -(0.6*cda*v*v/300 + 9.81*(crr+slope)) / 1.04 }
				r := newRide().stand(5).steady(1.5, 31).hold(10).drive(300, 9, roll).steady(1.5, 15)
				got := fmt.Sprint(describeAll(Find(Ride{Track: r.track, Mass: 300, RollOns: marks.DefaultPairs()})))
				if got != "[coast-down]" {
					t.Errorf("CdA %v, Crr %v, slope %v: found %s", cda, crr, slope, got)
				}
			}
		}
	}
}

// codesOf are the code of a finding and those of the findings within it.
func codesOf(f finding.Finding) string {
	s := string(f.Code)
	for _, a := range f.Args {
		if a.Finding != nil {
			s += " " + codesOf(*a.Finding)
		}
	}
	return s
}

// join writes findings in one line.
func join(all []finding.Finding) string {
	out := make([]string, len(all))
	for i, f := range all {
		out[i] = codesOf(f)
	}
	return strings.Join(out, "; ")
}
