package marks

import (
	"math"
	"sort"

	"stillair/fusion"
)

// A rider may roll up to the line and accelerate without having stopped. Then
// it is undefined where the first foot begins: at the beginning of the
// acceleration, or where the bike first rolled. Such a gentle movement, with a
// third of a metre a second in every second, changes the force no more than a
// rider who leans forward, and the smoother takes it for standstill. So the
// integral of the acceleration before the launch is used, whatever the
// smoothed speed.
const (
	creepBefore = 0.25 // s before first movement, when the push has certainly not begun
	creepLooked = 6.0  // s searched
	creepPause  = 0.6  // s without such an acceleration, including creepBefore, beyond which nothing earlier counts
	creepPull   = 0.1  // m/s² above which a standing bike may have begun to roll: 0.6° of pitch
	creepSpeed  = 0.2  // m/s from which it counts: half a second for a foot
	creepSure   = 2.0  // standard deviations that the speed must also exceed: widening a time without need is better than a wrong one
)

// creeping is the speed at which the bike may already have rolled when the
// launch began, m/s, and since when; 0 if it stood.
func creeping(track *fusion.Track, first float64) (speed, since float64) {
	var now, variance, sure float64
	end := sort.SearchFloat64s(track.T, first-creepBefore)
	since = first
	for i := min(end, len(track.A)-1, len(track.Noise)-1); i > 0 && first-track.T[i-1] < creepLooked && since-track.T[i-1] < creepPause; i-- {
		h := track.T[i] - track.T[i-1]
		now += track.A[i] * h
		variance += track.Noise[i] * h
		if track.A[i] > creepPull {
			since, speed, sure = track.T[i-1], now, creepSure*math.Sqrt(variance)
		}
	}
	if speed < math.Max(creepSpeed, sure) {
		return 0, first
	}
	return speed, since
}

// rolledBefore is the time at which a bike that gained that speed at constant
// acceleration since then had rolled a distance, or would have at that speed.
func rolledBefore(distance, speed, since, until float64) float64 {
	took := math.Sqrt(2 * distance * (until - since) / speed)
	if since+took > until {
		return until + (distance-speed*(until-since)/2)/speed
	}
	return since + took
}

// wider is a time with a standard uncertainty of at least half its distance
// from an alternative definition.
func (f form) wider(other float64) form {
	if apart := (f.x - other) / 2; !math.IsNaN(apart) {
		f.own += apart * apart
	}
	return f
}
