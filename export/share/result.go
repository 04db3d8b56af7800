package share

import (
	"sort"

	"stillair/runs"
	"stillair/sensors"
)

// Result returns a copy of what was computed from log, with no more of the ride
// itself in it than the choice allows: its track is cut as Apply cuts the
// log, since speed and turn rate would let anyone walk the path back. Runs and
// figures stay, also those from within the cut ends: they hold no places.
func Result(res *runs.Result, log *sensors.Log, c Choice) *runs.Result {
	out := *res
	if res.Track == nil {
		return &out
	}
	from, to := ends(log.Fixes, c.EndsCut)
	track := *res.Track
	first := sort.SearchFloat64s(track.T, from)
	last := max(first, sort.Search(len(track.T), func(i int) bool { return track.T[i] > to }))
	for _, s := range []*[]float64{&track.T, &track.V, &track.A, &track.S, &track.VSD, &track.ASD,
		&track.Force, &track.Noise, &track.Yaw, &track.Shake} {
		*s = (*s)[min(first, len(*s)):min(last, len(*s))]
	}
	out.Track = &track
	return &out
}
