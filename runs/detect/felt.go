package detect

import (
	"math"
	"sort"

	"stillair/fusion"
)

// A push or a stop is real only if the accelerometer felt it. What it felt may
// differ from the gain of speed by what its noise adds up to and by what squat,
// slope and the sensor's scale leave of it.
const (
	feltShare = 0.35 // of the gain
	feltNoise = 4.0  // standard deviations
	feltLeast = 2.0  // m/s
)

// unfelt compares the gain of speed over a run with what the accelerometer felt,
// and reports whether the two contradict. A coast-down is too slow to tell.
func unfelt(track *fusion.Track, f Found) (gained, felt float64, contradict bool) {
	if f.Kind == CoastDown || track.Noise == nil {
		return 0, 0, false
	}
	i, j := sort.SearchFloat64s(track.T, f.From), sort.SearchFloat64s(track.T, f.To)
	j = min(j, len(track.T)-1)
	if i >= j {
		return 0, 0, false
	}
	var noise float64
	for k := i + 1; k <= j; k++ {
		h := track.T[k] - track.T[k-1]
		felt += h * (track.A[k-1] + track.A[k]) / 2
		noise += h * track.Noise[k]
	}
	gained = track.V[j] - track.V[i]
	limit := math.Max(feltLeast, math.Max(feltShare*math.Abs(gained), feltNoise*math.Sqrt(noise)))
	return gained, felt, math.Abs(gained-felt) > limit
}
