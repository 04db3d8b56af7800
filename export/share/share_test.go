package share

import (
	"math"
	"testing"
	"time"

	"stillair/sensors"
)

// outAndBack is an invented ride: 2 km north at 20 m/s from a place called
// home, then back to it, with samples of every kind.
func outAndBack() *sensors.Log {
	log := &sensors.Log{Ride: sensors.UnknownRide()}
	for i := range 201 {
		t := float64(i)
		d := 20 * math.Min(t, 200-t)
		f := sensors.NewFix(t, 20)
		f.LatDeg, f.LonDeg, f.Alt = 51+d/earthRadius*180/math.Pi, 9, 100+d/100
		f.BearingDeg = 0
		f.UTC = time.Date(2026, 5, 1, 9, 0, i, 0, time.UTC)
		log.Fixes = append(log.Fixes, f)
		log.Motion = append(log.Motion, sensors.Motion{T: t + 0.5})
		log.Pressure = append(log.Pressure, sensors.Pressure{T: t, Pa: 101325})
		log.Sound = append(log.Sound, sensors.Sound{T: t, Rate: 1200, Level: make([]int16, 1200)})
		log.States = append(log.States, sensors.State{T: t})
	}
	return log
}

func TestEndsAreCut(t *testing.T) {
	log := outAndBack()
	got := Apply(log, Default())
	if len(got.Fixes) == 0 {
		t.Fatal("nothing is left")
	}
	home := log.Fixes[0]
	for _, f := range got.Fixes {
		if f.HasPosition() && distance(home, f) < 199.9 {
			t.Errorf("a place %.0f m from home at %v s was given away", distance(home, f), f.T)
		}
		if f.T < 0 || f.T > 180 { // what is left begins 10 s later
			t.Errorf("a fix at %v s, within 200 m of an end, was given away", f.T)
		}
	}
	for _, m := range got.Motion {
		if m.T < 0 || m.T > 180 {
			t.Errorf("motion at %v s, within 200 m of an end, was given away", m.T)
		}
	}
	if first := got.Pressure[0].T; first < 0 {
		t.Errorf("pressure at %v s was given away", first)
	}
	if len(log.Fixes) != 201 || len(log.Motion) != 201 {
		t.Error("the log itself was changed")
	}
}

// TestPassingHome checks that a ride that passes its start halfway shows no
// place near it.
func TestPassingHome(t *testing.T) {
	log := outAndBack()
	again := outAndBack()
	for i := range again.Fixes {
		again.Fixes[i].T += 201
	}
	log.Fixes = append(log.Fixes, again.Fixes...)
	got := Apply(log, Default())
	hidden := 0
	for _, f := range got.Fixes {
		if !f.HasPosition() {
			hidden++
			if !math.IsNaN(f.Alt) {
				t.Error("the altitude stayed")
			}
		} else if distance(log.Fixes[0], f) < 199.9 {
			t.Errorf("at %v s the ride is %.0f m from home", f.T, distance(log.Fixes[0], f))
		}
	}
	if hidden < 15 {
		t.Errorf("only %d places were hidden while passing", hidden)
	}
}

func TestMovedKeepsShape(t *testing.T) {
	log := outAndBack()
	got := Apply(log, Choice{Places: Moved})
	for i, f := range got.Fixes {
		if math.Abs(f.LatDeg) > 0.1 || math.Abs(f.LonDeg) > 0.1 {
			t.Fatalf("fix %d is at %v, %v", i, f.LatDeg, f.LonDeg)
		}
		if i > 0 && math.Abs(distance(got.Fixes[i-1], f)-distance(log.Fixes[i-1], log.Fixes[i])) > 1e-3 {
			t.Fatalf("fix %d moved against its neighbour", i)
		}
		if !f.UTC.IsZero() {
			t.Fatal("the date stayed")
		}
	}
}

func TestWithoutLeavesNoPlace(t *testing.T) {
	for _, f := range Apply(outAndBack(), Choice{Places: Without, Date: Dated}).Fixes {
		if f.HasPosition() || !math.IsNaN(f.Alt) {
			t.Fatal("a place is left")
		}
		if f.UTC.IsZero() {
			t.Fatal("the date is gone, though it was to be kept")
		}
	}
}

// TestSoundStaysBehind checks that sound is shared only if chosen, and then
// without the ends.
func TestSoundStaysBehind(t *testing.T) {
	log := outAndBack()
	if n := len(Apply(log, Default()).Sound); n != 0 {
		t.Errorf("%d stretches of sound were given away unasked", n)
	}
	choice := Default()
	choice.Sound = true
	kept := Apply(log, choice).Sound
	if n := len(kept); n < 170 || kept[0].T < 0 || kept[n-1].End() > 181 {
		t.Errorf("%d stretches of sound, from %v to %v s", n, kept[0].T, kept[n-1].End())
	}
	if len(log.Sound) != 201 {
		t.Error("the log itself was changed")
	}
}

func TestShortRideGivesNothing(t *testing.T) {
	log := outAndBack()
	log.Fixes = log.Fixes[:8]
	got := Apply(log, Default())
	if len(got.Fixes) != 0 || len(got.Motion) != 0 {
		t.Errorf("a ride of 140 m left %d fixes and %d motion samples", len(got.Fixes), len(got.Motion))
	}
}

// TestMovedDoesNotPointHome checks that a ride moved without its ends cannot be
// matched to a map by its shape to find where it began: the origin is the first
// place that is left, not the one that was cut off.
func TestMovedDoesNotPointHome(t *testing.T) {
	choice := Default()
	choice.Places = Moved
	got := Apply(outAndBack(), choice)
	first := got.Fixes[0]
	if first.LatDeg != 0 || first.LonDeg != 0 || first.Alt != 0 {
		t.Errorf("the first place left is %v, %v, %v m, which tells how far home is from it", first.LatDeg, first.LonDeg, first.Alt)
	}
}
