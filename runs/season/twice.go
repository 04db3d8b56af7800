package season

import (
	"fmt"
	"strings"
)

// Twice returns for each ride the index of an earlier one with exactly the same
// figures, or −1. Two rides never agree in every digit: it is one ride from two
// files, and counting it twice would make the intervals too narrow.
func Twice(rides []Ride) []int {
	out := make([]int, len(rides))
	first := map[string]int{}
	for i, r := range rides {
		out[i] = -1
		if len(r.Loads)+len(r.Times)+len(r.Passes) == 0 {
			continue
		}
		k := r.figures()
		if at, there := first[k]; there {
			out[i] = at
			continue
		}
		first[k] = i
	}
	return out
}

// figures are what was measured, as text: road loads and flying passes, or times where
// there are none, since which times are asked for is the reader's choice. Times of the clock
// are not among them: they change where a ride is given away without its ends.
func (r *Ride) figures() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%q", r.Bike)
	for _, l := range r.Loads {
		fmt.Fprintf(&b, " %q %v %v", l.Setup, l.CdA, l.Crr)
	}
	for _, p := range r.Passes {
		fmt.Fprintf(&b, " %q %q %v", p.Over, p.Setup, p.Mean)
	}
	for _, t := range r.Times {
		if len(r.Loads)+len(r.Passes) > 0 {
			break
		}
		fmt.Fprintf(&b, " %q %q %v", t.Mark, t.Setup, t.Time)
	}
	return b.String()
}
