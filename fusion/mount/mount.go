// Package mount estimates how a phone is mounted on a bike, from the ride
// itself.
//
// # What tells it
//
// Averaged over a second, the specific force that a phone measures on a bike is
//
//	F = g·up + a·forward + noise,
//
// where a is the change of the satellite speed over the same second. A
// regression of the three components of F on a gives both directions: the
// intercept points up, the slope forward. Noise in the satellite speed shortens
// the slope (attenuation by errors in the regressor) but does not rotate it,
// and only its direction is used. Turns are left out: in a car they cause a
// lateral force; a bike leans into them, so that in its own axes only g appears
// stronger.
//
// The same regression gives the receiver's lag: the residual is smallest when
// each second of force is compared with the speeds of that same second. The lag
// with the smallest residual is the first estimate, which package fusion
// refines.
//
// # When the phone slips
//
// Slips are change points. The regression over a stretch of time needs only
// running sums, so that every split of the ride in two can be tried; one that
// lowers the residual significantly, and turns either axis by more than a steep
// road could, is taken as a slip, and both parts are searched again
// (change-point detection by binary segmentation; Scott and Knott, Biometrics
// 30 (1974) 507).
package mount

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/internal/motion"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Mount is the phone's orientation on the bike during a stretch of time.
type Mount struct {
	From, To float64 // s on the log's clock
	Forward  r3.Vec  // unit vector, phone axes, perpendicular to Up
	Up       r3.Vec  // unit vector, phone axes
	SE       float64 // standard uncertainty of Forward's angle to Up, rad
	Borrowed bool    // too few changes of speed: Forward was carried over
}

// Left is the direction to the rider's left hand, phone axes.
func (m Mount) Left() r3.Vec { return r3.Cross(m.Up, m.Forward) }

// Codes of Find's findings; export/words holds the texts.
const (
	codeNoDirection finding.Code = "mount.no_direction"
)

// Found is the result of the regression for a ride.
type Found struct {
	Mounts []Mount
	Lag    float64 // first estimate of the receiver's lag, s
	LagSet bool    // whether the ride had enough changes of speed to estimate it
	Left   float64 // mean square residual of the force at that lag, (m/s²)²
}

// Find estimates the mounts of a ride. It returns a *finding.Error if there is
// no change of speed from which to find the direction of travel.
func Find(s *motion.Series, fixes []sensors.Fix) (Found, error) {
	g := newGauge(s, fixes)
	defer g.done()
	obs := g.observe(make([]observation, 0, len(fixes)), assumedLag)
	cuts := g.cuts(obs)
	found := Found{Lag: assumedLag}
	if lag, ok := g.bestLag(cuts); ok {
		found.Lag, found.LagSet = lag, true
		obs = g.observe(obs[:0], lag)
		cuts = g.cuts(obs)
	}
	mounts := make([]Mount, 0, len(cuts))
	fits := make([]fit, 0, len(cuts))
	for _, c := range cuts {
		f := robustFit(obs[c.from:c.to])
		fits = append(fits, f)
		mounts = append(mounts, Mount{From: obs[c.from].from, To: obs[c.to-1].to, Up: f.up(), Forward: f.forward(), SE: f.se()})
	}
	if !borrow(mounts, fits) {
		return found, finding.Fail(codeNoDirection)
	}
	stretch(mounts, s)
	found.Mounts = mounts
	found.Left = g.misfit(obs[:0], cuts, found.Lag).rss
	return found, nil
}

// borrow gives mounts without a change of speed the forward axis of a
// neighbour, rotated by the smallest rotation that takes the neighbour's up to
// theirs. It reports whether any mount had a forward axis.
func borrow(mounts []Mount, fits []fit) bool {
	for i := range mounts {
		if fits[i].sure() {
			continue
		}
		mounts[i].Borrowed = true
		lender := -1
		for d := 1; d < len(mounts) && lender < 0; d++ {
			for _, j := range [2]int{i + d, i - d} {
				if j >= 0 && j < len(mounts) && fits[j].sure() {
					lender = j
					break
				}
			}
		}
		if lender < 0 {
			return false
		}
		mounts[i].Forward = carry(mounts[lender].Forward, mounts[lender].Up, mounts[i].Up)
		mounts[i].SE = math.Pi / 6
	}
	return len(mounts) > 0
}

// carry rotates v by the smallest rotation that takes from to to.
func carry(v, from, to r3.Vec) r3.Vec {
	axis := r3.Cross(from, to)
	sin, cos := r3.Norm(axis), r3.Dot(from, to)
	if sin < 1e-9 {
		return v
	}
	w := r3.NewRotation(math.Atan2(sin, cos), axis).Rotate(v)
	return r3.Unit(r3.Sub(w, r3.Scale(r3.Dot(w, to), to)))
}

// stretch extends the mounts to cover the series without gaps, with each slip
// at the time that the samples show.
func stretch(mounts []Mount, s *motion.Series) {
	n := len(mounts)
	mounts[0].From = s.T[0]
	mounts[n-1].To = s.T[len(s.T)-1]
	for i := 1; i < n; i++ {
		at := slipTime(s, mounts[i-1], mounts[i])
		mounts[i-1].To, mounts[i].From = at, at
	}
}
