package runs

import (
	"math"
	"testing"

	"stillair/sensors/finding"
)

// driven is a push of constant power in a gear, by the textbook energy balance
// rather than the simulator's engine.
func driven(watts, from, to, ratio float64) drive {
	bike := ordinary()
	t, v := pushed(watts, from, to, 0, bike.Load, bike.RotatingMass)
	return drive{from: t[0], to: t[len(t)-1], t: t, v: v, ratio: ratio, mass: bike.Load.Mass, way: 1}
}

// launched is driven as part of a launch.
func launched(watts, from, to, ratio float64) drive {
	d := driven(watts, from, to, ratio)
	d.start = true
	return d
}

// lined is driven in a gear of which only the engine's line is known.
func lined(watts, from, to, line float64) drive {
	d := driven(watts, from, to, math.NaN())
	d.lines = gearLine{line}
	return d
}

// shaken is driven with vibration so strong that the thrust is uncertain by a
// third.
func shaken() drive {
	d := driven(4e4, 15, 30, 146)
	d.doubt = 1
	return d
}

// towards is driven along a different road, at an angle in degrees to the others'.
func towards(bearing float64) drive {
	d := driven(4e4, 15, 35, 146)
	d.bearing = bearing
	return d
}

// TestThrottle: what the ride shows about each push. At constant power the torque
// at one engine speed is the same in every gear.
func TestThrottle(t *testing.T) {
	nan := math.NaN()
	const fourth, sixth = 193.0, 146.0
	full, below, unproven := finding.Code(""), codeBelowBike, codeUnproven
	tests := []struct {
		name   string
		drives []drive
		want   []finding.Code
	}{
		{"one alone", []drive{driven(4e4, 15, 35, sixth)}, []finding.Code{unproven}},
		{"two alike", []drive{driven(4e4, 15, 35, sixth), driven(4e4, 15, 35, sixth)}, []finding.Code{full, full}},
		{"two alike, gear not known", []drive{driven(9e3, 10, 20, nan), driven(9e3, 10, 20, nan)}, []finding.Code{full, full}},
		{"two alike, too narrow to be meant", []drive{driven(4e4, 15, 25, sixth), driven(4e4, 15, 25, sixth)}, []finding.Code{unproven, unproven}},
		{"two that differ", []drive{driven(4e4, 15, 35, nan), driven(3e4, 15, 35, nan)}, []finding.Code{unproven, unproven}},
		{"part throttle beside full", []drive{driven(4e4, 15, 35, sixth), driven(4e4, 15, 35, sixth), driven(4e4, 15, 35, sixth), driven(4e4, 15, 35, sixth), driven(2.8e4, 15, 35, sixth)},
			[]finding.Code{full, full, full, full, below}},
		{"part throttle in a lower gear", []drive{driven(4e4, 15, 35, sixth), driven(4e4, 15, 35, sixth), launched(4e4, 13, 26, fourth), driven(3e4, 15, 35, fourth)},
			[]finding.Code{full, full, full, below}},
		{"as hard as a launch", []drive{launched(4e4, 12, 30, nan), driven(4e4, 15, 28, nan)}, []finding.Code{unproven, full}},
		{"two that agree because anything would", []drive{shaken(), shaken()}, []finding.Code{unproven, unproven}},
		{"six that agree all the same", []drive{shaken(), shaken(), shaken(), shaken(), shaken(), shaken()}, []finding.Code{full, full, full, full, full, full}},
		{"two alike on one road", []drive{towards(0), towards(170)}, []finding.Code{full, full}},
		{"two alike on two roads", []drive{towards(0), towards(70)}, []finding.Code{unproven, unproven}},
		{"one more in another gear", []drive{driven(4e4, 15, 35, sixth), driven(4e4, 15, 35, sixth), driven(4e4, 15, 35, sixth), driven(4e4, 15, 35, sixth), driven(4e4, 12, 26, fourth)}, []finding.Code{full, full, full, full, full}},
		{"part throttle in another gear", []drive{driven(4e4, 15, 35, sixth), driven(4e4, 15, 35, sixth), driven(4e4, 15, 35, sixth), driven(4e4, 15, 35, sixth), driven(3e4, 12, 26, fourth)}, []finding.Code{full, full, full, full, below}},
		{"part throttle in a gear known by its line", []drive{lined(4e4, 15, 35, 3.6), lined(4e4, 15, 35, 3.6), lined(4e4, 15, 35, 3.6), lined(4e4, 15, 35, 3.6), lined(3e4, 12, 26, 4.6)},
			[]finding.Code{full, full, full, full, below}},
		{"from walking speed through all that a gear reaches", []drive{driven(2e4, 5.5, 31, nan), driven(2e4, 5.5, 31, nan), driven(2e4, 5.5, 31, nan), driven(2e4, 5.5, 31, nan)},
			[]finding.Code{full, full, full, full}},
		{"from walking speed through gears, and harder ones", []drive{driven(2e4, 5.5, 31, nan), driven(2e4, 5.5, 31, nan), driven(2e4, 5.5, 31, nan), driven(2e4, 5.5, 31, nan), driven(4e4, 13, 31, nan), driven(4e4, 13, 31, nan), driven(4e4, 13, 31, nan), driven(4e4, 13, 31, nan)},
			[]finding.Code{unproven, unproven, unproven, unproven, full, full, full, full}},
		{"riding off out of turns", []drive{driven(2e4, 4, 20, nan), driven(2e4, 4, 20, nan), driven(2e4, 4, 20, nan), driven(2e4, 4, 20, nan)},
			[]finding.Code{unproven, unproven, unproven, unproven}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			o := throttles{drives: tt.drives}
			for _, d := range tt.drives {
				o.meant = o.meant || d.start
			}
			o.find()
			all := o.all()
			for i, want := range tt.want {
				if got := all[i]; got != want && !tt.drives[i].start {
					t.Errorf("push %d: %q, want %q; %+v", i+1, got, want, o.with[i])
				}
			}
		})
	}
}

// TestOutdone: a launch that is exceeded by a push in one gear was at part throttle.
func TestOutdone(t *testing.T) {
	nan := math.NaN()
	tests := []struct {
		name string
		push drive
		low  float64 // factor by which it accelerates harder
		high float64
	}{
		{"half as hard", driven(2e4, 12, 30, nan), 1, 1},
		{"as hard", driven(4e4, 12, 30, nan), 1, 1},
		{"twice as hard", driven(8e4, 12, 30, nan), 1.7, 2.1},
		{"at other speeds", driven(8e4, 31, 50, nan), 1, 1},
	}
	for _, tt := range tests {
		o := throttles{drives: []drive{launched(4e4, 12, 30, nan), tt.push}}
		if got := o.outdone(0, 0); got < tt.low || got > tt.high {
			t.Errorf("%s: %.2f times, want %v to %v", tt.name, got, tt.low, tt.high)
		}
	}
}
