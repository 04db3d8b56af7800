package fusion

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/internal/motion"
	"stillair/fusion/mount"
)

const (
	swingBefore = 0.3 // s before the end of the last certain standstill from which a start is examined
	swingAfter  = 2.5 // s after it
	swingLook   = 0.6 // s after it in which a swing must be visible
	swingUntil  = 1.5 // s after it up to which the swing is removed
	swingFade   = 0.3 // s over which the correction fades out
	swingRest   = 1.5 // s of standstill before, in which the swing is removed as well
	swingLeast  = 1.5 // m/s³ of jerk across the road and upwards, rms, from which it is corrected
	swingReach  = 0.1 // s: faster vibration is smoothed out before a swing is searched for
	swingApart  = 0.12
)

// references is the number of reference signals for a swing: the forces to the
// left and upwards, and the second differences of both over swingApart to
// either side. The latter allow different shares for lines of different
// frequency.
const references = 4

// start is the end of a standstill with the beginning of the ride after it; its
// slices begin at sample from.
type start struct {
	s       *motion.Series
	leaves  float64 // end of the certain standstill, s
	from    int
	forward []float64             // force along the road, m/s²
	ref     [references][]float64 // minus their values at standstill, m/s²
	mount   mount.Mount
}

// takeSwings removes aliased engine vibration along the road at starts, by
// adaptive noise cancelling (Widrow et al., Proc. IEEE 63 (1975) 1692). An
// engine held at 5 940 a minute while the clutch slips turns 99 times a second,
// which a sensor read 100 times a second shows as a swing of 1 Hz: it hides the
// standstill and distorts the start. The same swing appears across the road and
// upwards, where there is no other slow motion. A vibrating frame is a linear
// system: at one engine speed, the ratio of a line's components in the three
// directions is constant. The ratios are estimated where the bike still stands
// (fit), and the swing predicted from the other two directions is subtracted
// from the force along the road.
//
// It returns the standstills, which become longer without the swing, and
// modifies the force and the density of its noise near zero frequency.
func takeSwings(s *motion.Series, found mount.Found, fixes []fix, pr *projection, rest []Span, density []float64) []Span {
	var starts []start
	var swings []swing
	for _, r := range rest {
		st, ok := newStart(s, found.Mounts, pr.force, r)
		if !ok || st.swings() < swingLeast {
			continue
		}
		if sw, ok := st.fit(); ok {
			starts, swings = append(starts, st), append(swings, sw)
		}
	}
	if len(swings) == 0 {
		return rest
	}
	off := map[int]r3.Vec{}
	for i, sw := range pooled(swings) {
		starts[i].take(sw, pr.force, density, off)
	}
	return findRest(s, func(i int) r3.Vec { return r3.Sub(s.Force(i), off[i]) }, fixes, found.Lag)
}

// newStart extracts the start after a standstill.
func newStart(s *motion.Series, mounts []mount.Mount, force []float64, rest Span) (start, bool) {
	st := start{s: s, leaves: rest.To, from: s.Index(rest.To - 2*swingRest)}
	to := s.Index(rest.To + swingAfter + swingRest)
	if s.T[to] < rest.To+swingAfter || s.T[st.from] > rest.To-swingRest || slices.Contains(s.Missing[st.from:to], true) {
		return st, false
	}
	m := slices.IndexFunc(mounts, func(m mount.Mount) bool { return rest.To < m.To })
	st.mount = mounts[max(m, 0)]
	if m < 0 {
		st.mount = mounts[len(mounts)-1]
	}
	st.forward = force[st.from:to]
	for k, axis := range [2]r3.Vec{st.mount.Left(), st.mount.Up} {
		f := make([]float64, to-st.from)
		for i := range f {
			f[i] = r3.Dot(s.Force(st.from+i), axis)
		}
		at := st.at(math.Max(rest.From, rest.To-swingRest))
		mean := average(f[at : st.at(rest.To)+1])
		for i := range f {
			f[i] -= mean
		}
		st.ref[k], st.ref[2+k] = f, secondDifference(f, s.Half(swingApart))
	}
	return st, true
}

// at is the index of a time in the slices of a start.
func (st *start) at(t float64) int { return st.s.Index(t) - st.from }

func secondDifference(f []float64, apart int) []float64 {
	out := make([]float64, len(f))
	for i := apart; i+apart < len(f); i++ {
		out[i] = f[i-apart] + f[i+apart] - 2*f[i]
	}
	return out
}

func average(f []float64) float64 {
	var sum float64
	for _, x := range f {
		sum += x / float64(len(f))
	}
	return sum
}

// jerk is the time derivative of a force after low-pass filtering.
func (st *start) jerk(f []float64) []float64 {
	const reach = 0.03 // s
	calm, half := st.s.Smooth(f, swingReach), max(1, st.s.Half(reach))
	out := make([]float64, len(f))
	for i := range out {
		out[i] = slope(st.s.T[st.from:], calm, half, i)
	}
	return out
}

// swings is the strength of the swing around the start, across the road and
// upwards, as an rms jerk, m/s³.
func (st *start) swings() float64 {
	from, to := st.at(st.leaves-swingBefore), st.at(st.leaves+swingLook)
	var sum float64
	for _, f := range st.ref[:2] {
		for _, j := range st.jerk(f)[from:to] {
			sum += j * j
		}
	}
	return math.Sqrt(sum / float64(max(to-from, 1)))
}

// take removes a swing from the force along the road. The uncertainty of the
// shares becomes noise, as does the noise of the references. The whole swing is
// stored in off, so that the standstill can be found without it.
func (st *start) take(sw swing, force, density []float64, off map[int]r3.Vec) {
	var slow [references][]float64
	for k, f := range st.ref {
		slow[k] = st.s.Smooth(f, swingReach)
	}
	left, up := st.s.Density(st.ref[0]), st.s.Density(st.ref[1])
	for k := st.at(st.leaves - swingRest); k < st.at(st.leaves+swingUntil+swingFade); k++ {
		i := st.from + k
		w := math.Max(0, math.Min(1, (st.leaves+swingUntil+swingFade-st.s.T[i])/swingFade))
		var along, unknown float64
		for a := range references {
			along += sw.share[a] * st.ref[a][k]
			for b := range references {
				unknown += sw.cov[a][b] * slow[a][k] * slow[b][k]
			}
		}
		force[i] -= w * along
		off[i] = r3.Add(r3.Scale(along, st.mount.Forward), r3.Add(r3.Scale(st.ref[0][k], st.mount.Left()), r3.Scale(st.ref[1][k], st.mount.Up)))
		noise := sw.share[0]*sw.share[0]*left[k] + sw.share[1]*sw.share[1]*up[k]
		density[i] += w * (unknown*swingPeriod + noise - density[i])
	}
}
