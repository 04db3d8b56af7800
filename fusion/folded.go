package fusion

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/internal/motion"
	"stillair/fusion/mount"
)

const (
	foldedNear = 0.32 // s, reach of the narrower window of the band
	foldedFar  = 1.28 // s, of the wider one: about 0.3 to 2 Hz
	foldedOver = 8.0  // times the noise beside it before a line is believed to lie there
)

// folded is the density that lines of the engine add near zero frequency,
// m²/s³. An engine held a little off a multiple of the sampling rate, as while
// the clutch slips, shows as a slow swing that along the road cannot be told
// from motion. Across the road and upwards it can: a bike that rides straight
// on hardly swings there. The line's direction is not known, so along the road
// it is given all that it does in the two others.
func folded(s *motion.Series, mounts []mount.Mount, yaw []float64) []float64 {
	out := make([]float64, len(s.T))
	var excess [2][]float64
	var both sync.WaitGroup
	for a, axis := range [2]func(mount.Mount) r3.Vec{mount.Mount.Left, func(m mount.Mount) r3.Vec { return m.Up }} {
		both.Go(func() { excess[a] = slow(s, alongAxis(s, mounts, axis)) })
	}
	both.Wait()
	for i := range out {
		out[i] = excess[0][i] + excess[1][i]
	}
	if yaw == nil {
		return out
	}
	for i, w := range motion.Mean(yaw, s.Half(calmTurn)) {
		if math.Abs(w) > straight {
			out[i] = 0
		}
	}
	return out
}

// alongAxis is the force along an axis of the bike.
func alongAxis(s *motion.Series, mounts []mount.Mount, axis func(mount.Mount) r3.Vec) []float64 {
	out := make([]float64, len(s.T))
	m := 0
	for i, t := range s.T {
		for m+1 < len(mounts) && t >= mounts[m].To {
			m++
		}
		out[i] = r3.Dot(s.Force[i], axis(mounts[m]))
	}
	return out
}

// slow is by how much a force swings more slowly than the noise beside would
// have it swing, as a density.
func slow(s *motion.Series, f []float64) []float64 {
	beside, out := s.Density(f), s.Band(f, foldedNear, foldedFar)
	for i := range out {
		out[i] = math.Max(0, out[i]-foldedOver*beside[i])
	}
	return out
}
