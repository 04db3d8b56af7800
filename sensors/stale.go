package sensors

import (
	"math"
	"slices"

	"stillair/sensors/finding"
)

// Before its first real fix, a receiver may repeat the last known position and
// speed one to three times, in recordings begun while driving.
const (
	mostStale  = 5    // maximum number of old fixes at the beginning of a log
	hardest    = 12.0 // m/s²; no motorcycle gains speed as fast (grip and front wheel allow about 10; common practice)
	leastSpan  = 0.2  // s between two fixes, below which clock jitter is comparable
	placeSlack = 30.0 // m by which a correct position may jump
)

const codeStale finding.Code = "log.stale_fixes"

// WithoutStale returns the log without old fixes at its beginning: those before
// the first step of speed or position that no motorcycle can make. A note says
// if any were left out; log itself is not changed.
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
	if tooHard(a, b, 0) {
		return true
	}
	if !a.HasPosition() || !b.HasPosition() {
		return false
	}
	east, north := between(a, b)
	return math.Hypot(north, east) > 2*math.Max(a.Speed, b.Speed)*apart(a, b)+placeSlack
}

// tooHard reports whether the speed changes faster from one fix to the other than any
// motorcycle can, with a margin in m/s.
func tooHard(a, b Fix, spare float64) bool {
	return math.Abs(b.Speed-a.Speed) > hardest*apart(a, b)+spare
}

// apart is the time between two fixes, s.
func apart(a, b Fix) float64 { return math.Max(math.Abs(b.T-a.T), leastSpan) }
