package fusion

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/internal/motion"
	"stillair/fusion/mount"
	"stillair/sensors/units"
)

const gravity = units.StandardGravity // standard gravity, m/s²; the local value differs by a scale that the smoother learns

// projection is the motion in the bike's own axes.
type projection struct {
	force []float64 // forward specific force, m/s², minus pitch
	pitch []float64 // pitch from the gyroscope, times g, m/s²; nil without one
	yaw   []float64 // turn rate about the vertical, rad/s; nil without a gyroscope
	at    []int     // sample at which each mount begins
}

// pitchMemory is the time constant of the high-pass filter on the pitch
// integrated from the gyroscope, s. Slower changes, hills and the gyroscope's
// drift, are left to the smoother's bias.
const pitchMemory = 300

const (
	calmTurn  = 0.4  // s, half the window over which a turn rate is averaged
	mostLean  = 0.8  // sine of the largest plausible lean
	leastTurn = 0.05 // rad/s under which nothing counts as turning
	straight  = 0.08 // rad/s of turning from which the pitch is not corrected
)

// project rotates the phone's axes into the bike's. speed is a rough speed for
// each sample, from which the lean angle follows.
func project(s *motion.Series, mounts []mount.Mount, speed []float64, rest []Span) projection {
	p := projection{force: alongAxis(s, mounts, func(m mount.Mount) r3.Vec { return m.Forward }), at: []int{0}}
	for _, m := range mounts[:len(mounts)-1] {
		if i, _ := slices.BinarySearch(s.T, m.To); i < len(s.T) {
			p.at = append(p.at, i)
		}
	}
	if s.HasTurn {
		p.turn(s, mounts, speed, rest)
	}
	return p
}

// turn computes yaw and pitch from the gyroscope and removes the pitch from the
// force. A bike leans into a turn of rate Ω at speed v until it is in balance,
// tan φ = v·Ω/g; the rate about its own up axis is then ω_up = Ω·cos φ, so sin
// φ = v·ω_up/g, and Ω·sin φ appears as pitch rate about its left axis. Errors
// of lean and axes both enlarge that part, so in a turn the pitch is held.
func (p *projection) turn(s *motion.Series, mounts []mount.Mount, speed []float64, rest []Span) {
	n := len(s.T)
	p.yaw, p.pitch = s.Sheet(), s.Sheet()
	lean := leanShare(s, mounts, speed)
	var theta float64
	for m := range p.at {
		from, to := p.at[m], n
		if m+1 < len(p.at) {
			to = p.at[m+1]
		}
		drift := gyroDrift(s, from, to, rest)
		up, left := mounts[m].Up, mounts[m].Left()
		for i := from; i < to; i++ {
			p.yaw[i] = r3.Dot(r3.Sub(s.Turn(i), drift), up)
		}
		// The smoothed turn rate temporarily uses the memory of the pitch.
		calm := s.Calm(p.pitch[from:to], p.yaw[from:to], calmTurn)
		for i := from; i < to; i++ {
			sin := lean * speed[i] * calm[i-from] / gravity
			p.yaw[i] /= math.Sqrt(1 - math.Min(sin*sin, mostLean*mostLean))
			if i > 0 && !s.Missing[i] && math.Abs(calm[i-from]) < straight {
				h := s.T[i] - s.T[i-1]
				theta -= h * (r3.Dot(r3.Sub(s.Turn(i), drift), left) + theta/pitchMemory)
			}
			p.pitch[i] = gravity * theta
			p.force[i] -= p.pitch[i]
		}
	}
}

// forgetGyro removes the gyroscope's contribution.
func (p *projection) forgetGyro() {
	for i, g := range p.pitch {
		p.force[i] += g
	}
	p.pitch, p.yaw = nil, nil
}

// leanShare is 1 for a bike, which leans so that there is no lateral force in
// its own axes, and 0 for a car, which has the full lateral force of the turn.
func leanShare(s *motion.Series, mounts []mount.Mount, speed []float64) float64 {
	half := s.Half(0.5)
	var n, a, b, aa, ab float64
	m := 0
	for i := 0; i < len(s.T); i += max(half, 1) {
		for m+1 < len(mounts) && s.T[i] >= mounts[m].To {
			m++
		}
		left, up := mounts[m].Left(), mounts[m].Up
		from, to := max(i-half, 0), min(i+half+1, len(s.T))
		var side, turn float64
		for j := from; j < to; j++ {
			side += r3.Dot(s.Force(j), left)
			turn += speed[j] * r3.Dot(s.Turn(j), up)
		}
		side, turn = side/float64(to-from), turn/float64(to-from)
		n++
		a += turn
		b += side
		aa += turn * turn
		ab += turn * side
	}
	// A weak prior, worth a few seconds in a bend, makes a ride without turns a
	// bike's.
	share := (ab - a*b/n) / (aa - a*a/n + 20)
	return 1 - math.Max(0, math.Min(1, share))
}

// gyroDrift is the gyroscope's bias: its mean over the standstills between two
// samples or, if there are none, over all of it.
func gyroDrift(s *motion.Series, from, to int, rest []Span) r3.Vec {
	var still, all r3.Vec
	var n, k float64
	r := 0
	for i := from; i < to; i++ {
		if s.Missing[i] {
			continue
		}
		all = r3.Add(all, s.Turn(i))
		k++
		for r < len(rest) && rest[r].To < s.T[i] {
			r++
		}
		if r < len(rest) && rest[r].Contains(s.T[i]) {
			still = r3.Add(still, s.Turn(i))
			n++
		}
	}
	switch {
	case n*s.Step > 2:
		return r3.Scale(1/n, still)
	case k*s.Step > 30:
		return r3.Scale(1/k, all)
	}
	return r3.Vec{}
}
