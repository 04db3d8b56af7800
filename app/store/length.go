package store

import (
	"math"

	"stillair/sensors"
)

// Length gives the seconds between the first and the last sample of a log.
func Length(log *sensors.Log) float64 {
	from, to := math.Inf(1), math.Inf(-1)
	span := func(first, last float64) { from, to = min(from, first), max(to, last) }
	if n := len(log.Motion); n > 0 {
		span(log.Motion[0].T, log.Motion[n-1].T)
	}
	if n := len(log.Fixes); n > 0 {
		span(log.Fixes[0].T, log.Fixes[n-1].T)
	}
	return max(0, to-from)
}
