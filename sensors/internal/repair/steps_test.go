package repair

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// TestClock gives a file of a minute, 50 readings and a fix a second, with wrong
// stamps or rows: the result is in the order and at the pace at which it was
// measured, fixes aligned with the motion, and what is left out is noted.
func TestClock(t *testing.T) {
	anHourAhead := func(i int, at float64) float64 {
		if i == 1000 {
			return at + 3600
		}
		return at
	}
	back := func(from, by float64) func(int, float64) float64 {
		return func(_ int, at float64) float64 {
			if at >= from {
				return at - by
			}
			return at
		}
	}
	for _, tt := range []struct {
		name   string
		stamp  func(i int, at float64) float64
		motion func([]sensors.Motion) []sensors.Motion // change of the rows
		fixes  func([]sensors.Fix) []sensors.Fix
		lost   int      // readings
		notes  []string // one of each kind
	}{
		{name: "nothing wrong"},
		{name: "an hour ahead, once", stamp: anHourAhead, lost: 1, notes: []string{"sensor.lost samples=1"}},
		{name: "an hour back, once", stamp: func(i int, at float64) float64 { return at - (anHourAhead(i, at) - at) }, lost: 1, notes: []string{"sensor.lost samples=1"}},
		{name: "set back by 20 s", stamp: back(40, 20), notes: []string{"sensor.clock_step by=-20"}},
		{name: "set back by 3 s", stamp: back(40, 3), notes: []string{"sensor.clock_step by=-3"}},
		{name: "set back by 20 s, twice", stamp: func(i int, at float64) float64 { return back(50, 20)(i, back(30, 20)(i, at)) },
			notes: []string{"sensor.clock_step by=-20"}},
		{name: "rows swapped", motion: swapped[sensors.Motion], fixes: swapped[sensors.Fix], notes: []string{"input.sorted"}},
		{name: "halves swapped", motion: halves[sensors.Motion], fixes: halves[sensors.Fix], notes: []string{"input.sorted"}},
		{name: "newest first", motion: reversed[sensors.Motion], fixes: reversed[sensors.Fix], notes: []string{"input.sorted"}},
		{name: "a stretch twice", motion: func(all []sensors.Motion) []sensors.Motion {
			return slices.Insert(slices.Clone(all), 2000, all[1500:2000]...)
		}, notes: []string{"input.sorted", "input.doubled"}},
	} {
		if tt.stamp == nil {
			tt.stamp = func(_ int, at float64) float64 { return at }
		}
		var motion []sensors.Motion
		var fixes []sensors.Fix
		for i := range 3000 {
			at := float64(i) / 50
			motion = append(motion, sensors.Motion{T: tt.stamp(i, at), Force: r3.Vec{X: at}})
			if i%50 == 25 {
				fixes = append(fixes, sensors.NewFix(tt.stamp(-1, at), at))
			}
		}
		if tt.motion != nil {
			motion = tt.motion(motion)
		}
		if tt.fixes != nil {
			fixes = tt.fixes(fixes)
		}
		c := NewClock("input.sample")
		motion, fixes = c.Motion(motion), c.Fixes(fixes)
		notes := c.Notes("a file")
		if len(motion) != 3000-tt.lost || len(fixes) != 60 {
			t.Errorf("%s: %d readings, %d fixes, notes %v", tt.name, len(motion), len(fixes), notes)
			continue
		}
		shift := motion[0].T - motion[0].Force.X
		for _, m := range motion {
			if off := m.T - m.Force.X - shift; math.Abs(off) > 0.03 {
				t.Errorf("%s: the reading of %.2f s is at %.2f s", tt.name, m.Force.X, m.T)
				break
			}
		}
		var said []string
		for _, n := range notes {
			if w := n.What.String(); len(said) == 0 || said[len(said)-1] != w {
				said = append(said, w)
			}
		}
		if len(said) != len(tt.notes) || len(said) > 0 && !strings.HasPrefix(said[len(said)-1], tt.notes[len(said)-1]) {
			t.Errorf("%s: notes %q, want %q", tt.name, said, tt.notes)
		}
		for _, f := range fixes {
			if off := f.T - f.Speed - shift; math.Abs(off) > 0.03 {
				t.Errorf("%s: the fix of %.2f s is at %.2f s", tt.name, f.Speed, f.T)
				break
			}
		}
	}
}

// TestTwoRecordings puts two recordings that both begin at zero into one file: the
// longer one is kept, and the other is noted.
func TestTwoRecordings(t *testing.T) {
	var motion []sensors.Motion
	var fixes []sensors.Fix
	for k, n := range []int{1000, 3000} {
		for i := range n {
			at := float64(i) / 50
			motion = append(motion, sensors.Motion{T: at, Force: r3.Vec{X: float64(k), Y: at}})
			if i%50 == 25 {
				fixes = append(fixes, sensors.NewFix(at, float64(k)))
			}
		}
	}
	c := NewClock("input.sample")
	motion, fixes = c.Motion(motion), c.Fixes(fixes)
	if notes := c.Notes("a file"); len(motion) != 3000 || len(fixes) != 60 || motion[0].Force.X != 1 || fixes[0].Speed != 1 ||
		len(notes) != 2 || notes[0].What.Code != codeOtherRecording {
		t.Errorf("%d readings, %d fixes, notes %v", len(motion), len(fixes), notes)
	}
}

func swapped[S any](all []S) []S {
	out := slices.Clone(all)
	for i := 10; i+1 < len(out); i += 37 {
		out[i], out[i+1] = out[i+1], out[i]
	}
	return out
}

func halves[S any](all []S) []S { n := len(all) / 2; return slices.Concat(all[n:], all[:n]) }

func reversed[S any](all []S) []S {
	out := slices.Clone(all)
	slices.Reverse(out)
	return out
}
