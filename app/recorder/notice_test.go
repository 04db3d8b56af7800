package recorder

import (
	"math"
	"testing"

	"stillair/runs"
)

// TestNoticesALaunchThoughTheFilterIsLate simulates a live filter with one fix
// a second in a start at 7 m/s²: it still reports a standstill when the bike
// does 5 m/s, and shows the push only then.
func TestNoticesALaunchThoughTheFilterIsLate(t *testing.T) {
	for _, c := range []struct {
		name string
		from float64 // m/s when the push is noticed
		rest float64 // s between the standstill and the push
		want runs.Kind
	}{
		{"from a standstill", 0, 0, runs.Launch},
		{"from a standstill, heard of late", 6, 0.3, runs.Launch},
		{"rolling on from walking pace", 6, 5, runs.RollOn},
	} {
		t.Run(c.name, func(t *testing.T) {
			var n noticer
			at := 0.0
			ride := func(seconds, from, accel float64) {
				for i := range int(seconds * 50) {
					at += 0.02
					n.at(at, Estimate{Speed: math.Max(from+accel*float64(i)/50, 0), Accel: accel})
				}
			}
			ride(5, 0, 0)
			ride(c.rest, c.from, 0)
			ride(4, c.from, 7)
			ride(3, c.from+28, 0)
			if len(n.list) != 1 || n.list[0].Kind != c.want {
				t.Fatalf("noticed %+v, want a %s", n.list, c.want)
			}
		})
	}
}
