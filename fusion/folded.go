package fusion

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/internal/motion"
	"stillair/fusion/mount"
)

const (
	foldedNear = 0.32 // s, reach of the narrower window of the band
	foldedFar  = 1.28 // s, of the wider one: about 0.3 to 2 Hz
	foldedOver = 8.0  // times the noise next to it that a line must exceed
)

// folded is the density that aliased engine orders add near zero frequency,
// m²/s³. An engine held close to a multiple of the sampling rate, as while the
// clutch slips, causes a slow swing that cannot be distinguished from motion
// along the road. Across the road and upwards it can, since a bike that rides
// straight ahead hardly moves there. The direction of the swing is not known,
// so the density along the road is taken as the sum of the other two.
func folded(s *motion.Series, mounts []mount.Mount, yaw []float64) []float64 {
	out := s.Sheet()
	reach := max(s.DensityReach(), s.BandReach(foldedFar), s.Half(calmTurn))
	motion.Local(out, reach, func(p *motion.Paper, lo, hi int) []float64 {
		sum := p.Sheet(hi - lo)
		clear(sum)
		for _, axis := range [2]func(mount.Mount) r3.Vec{mount.Mount.Left, func(m mount.Mount) r3.Vec { return m.Up }} {
			f := p.Sheet(hi - lo)
			along(f, s, mounts, lo, axis)
			addSlow(sum, s, p, f)
		}
		if yaw != nil {
			for i, w := range p.Mean(yaw[lo:hi], s.Half(calmTurn)) {
				if math.Abs(w) > straight {
					sum[i] = 0
				}
			}
		}
		return sum
	})
	return out
}

// addSlow adds the excess of a force's density at low frequency over that of
// the band next to it.
func addSlow(sum []float64, s *motion.Series, p *motion.Paper, f []float64) {
	beside, band := s.DensityOf(p, f), s.BandOf(p, f, foldedNear, foldedFar)
	for i := range sum {
		sum[i] += math.Max(0, band[i]-foldedOver*beside[i])
	}
}

// alongAxis is the force along an axis of the bike.
func alongAxis(s *motion.Series, mounts []mount.Mount, axis func(mount.Mount) r3.Vec) []float64 {
	out := s.Sheet()
	motion.Blocks(len(out), func(from, to int) { along(out[from:to], s, mounts, from, axis) })
	return out
}

// along writes the force along an axis of the bike into dst, from a sample on.
func along(dst []float64, s *motion.Series, mounts []mount.Mount, from int, axis func(mount.Mount) r3.Vec) {
	m := 0
	direction := axis(mounts[m])
	for k := range dst {
		for m+1 < len(mounts) && s.T[from+k] >= mounts[m].To {
			m++
			direction = axis(mounts[m])
		}
		dst[k] = r3.Dot(s.Force(from+k), direction)
	}
}
