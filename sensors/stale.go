package sensors

import (
	"math"
	"slices"

	"stillair/sensors/finding"
)

// What a receiver may give before it knows: the place and the speed of the last
// time it was asked, once to thrice, in recordings begun while driving.
const (
	mostStale  = 5    // fixes at the beginning of a log that may be old ones
	hardest    = 12.0 // m/s²; no motorcycle gains speed as fast (grip and front wheel allow about 10; common practice)
	leastSpan  = 0.2  // s between two fixes, below which clocks jitter as much
	placeSlack = 30.0 // m by which a sound place may jump
)

const codeStale finding.Code = "log.stale_fixes"

// WithoutStale gives the log without old fixes at its beginning: those before
// the first step of speed or place that no motorcycle can make. The first fix
// that is sound has a note if any were left out; log itself is not changed.
func WithoutStale(log *Log) *Log {
	first := 0
	for i := 1; i < min(len(log.Fixes), mostStale+1); i++ {
		if impossible(log.Fixes[i-1], log.Fixes[i]) {
			first = i
		}
	}
	if first == 0 {
		return log
	}
	out := *log
	out.Fixes = log.Fixes[first:]
	out.Notes = append(slices.Clone(log.Notes), Note{Count: first, What: finding.New(codeStale)})
	return &out
}

// impossible reports whether b cannot follow a.
func impossible(a, b Fix) bool {
	dt := math.Max(b.T-a.T, leastSpan)
	if math.Abs(b.Speed-a.Speed) > hardest*dt {
		return true
	}
	if !a.HasPosition() || !b.HasPosition() {
		return false
	}
	east, north := between(a, b)
	return math.Hypot(north, east) > 2*math.Max(a.Speed, b.Speed)*dt+placeSlack
}
