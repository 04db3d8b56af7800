package pairing

import "math"

// Together holds the places of two rides on one road, in m along the direction
// of the first.
type Together struct {
	A, B     []float64 // the places of their fixes
	Opposite bool
}

// Lay finds whether two rides used the same road, by the rule for coast-downs of a pair,
// and where on it their fixes lie. It needs the positions of all fixes, and two of each
// ride; otherwise ok is false.
func Lay(a, b Coast) (together Together, ok bool) {
	rides := survey([]Coast{a, b})
	for _, r := range rides {
		if len(r.points) < 2 || len(r.points) < len(r.Fixes) {
			return Together{}, false
		}
	}
	if math.IsNaN(rides[0].bearing) || !sameRoad(rides[0], rides[1]) {
		return Together{}, false
	}
	placed := make([]Placed, 2)
	rides[0].road, rides[1].road = 0, 0
	place(rides, []int{0, 1}, 0, placed)
	return Together{A: placed[0].Pos, B: placed[1].Pos, Opposite: placed[0].Dir != placed[1].Dir}, true
}
