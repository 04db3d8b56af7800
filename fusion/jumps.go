package fusion

import "math"

const (
	hardestLeap = 12.0 // m/s²; no motorcycle gains or loses speed as fast (grip and front wheel allow about 10; common practice)
	leapSlack   = 2.0  // m/s of error of a good fix
	leapSpan    = 0.2  // s between two fixes, below which clock jitter is comparable
	mostLeapt   = 5    // maximum number of fixes between a jump and the jump back
)

// withoutJumps removes up to a few consecutive fixes that no motorcycle can
// have reached from the one before, provided that a reachable one follows: the
// receiver froze, or its solution jumped. Several consecutive outliers support
// each other, so that leave-one-out residuals do not show them. It also returns
// how many it removed.
func withoutJumps(fixes []fix) ([]fix, int) {
	out := make([]fix, 0, len(fixes))
	for i := 0; i < len(fixes); i++ {
		if n := len(out); n > 0 && jumps(out[n-1], fixes[i]) {
			if back := backFrom(out[n-1], fixes, i); back > i {
				i = back
			}
		}
		out = append(out, fixes[i])
	}
	return out, len(fixes) - len(out)
}

// backFrom is the first of the next few fixes after i that can follow a, or i
// if there is none.
func backFrom(a fix, fixes []fix, i int) int {
	for j := i + 1; j < min(i+1+mostLeapt, len(fixes)); j++ {
		if !jumps(a, fixes[j]) {
			return j
		}
	}
	return i
}

// jumps reports whether b cannot follow a.
func jumps(a, b fix) bool {
	return math.Abs(b.speed-a.speed) > hardestLeap*math.Max(b.t-a.t, leapSpan)+leapSlack
}
