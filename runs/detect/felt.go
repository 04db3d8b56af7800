package detect

import (
	"math"
	"sort"

	"stillair/fusion"
)

// An acceleration or a stop is real only if the accelerometer confirms it. The
// integral of the force may differ from the gain of speed by its integrated
// noise and by squat, slope and the sensor's scale.
const (
	feltShare = 0.35 // of the gain
	feltNoise = 4.0  // standard deviations
	feltLeast = 5.0  // m/s
	feltOver  = 2.0  // s of a part of the run, since a step of the speed is not visible in the whole
)

// unconfirmed compares the gain of speed over a run, and over every part of it,
// with the integrated force, and reports whether they contradict each other.
// For a coast-down the test has no power.
func unconfirmed(track *fusion.Track, f Found) (gained, felt float64, contradict bool) {
	if f.Kind == CoastDown || track.Noise == nil {
		return 0, 0, false
	}
	from, to := f.From-feltOver/2, f.To
	if gained, felt, contradict = contradicts(track, from, to); contradict {
		return gained, felt, true
	}
	for t := from; t+feltOver <= to; t += feltOver / 4 {
		if gained, felt, contradict = contradicts(track, t, t+feltOver); contradict {
			return gained, felt, true
		}
	}
	return 0, 0, false
}

// contradicts is unfelt over one stretch.
func contradicts(track *fusion.Track, from, to float64) (gained, felt float64, contradict bool) {
	i, j := sort.SearchFloat64s(track.T, from), sort.SearchFloat64s(track.T, to)
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
