package fusion

import (
	"errors"
	"math"

	"stillair/fusion/internal/kalman"
	"stillair/fusion/internal/motion"
	"stillair/fusion/mount"
	"stillair/sensors"
	"stillair/sensors/finding"
)

const (
	fewestFixes   = 5
	fewestMotion  = 100
	assumedLag    = 0.2  // s, if it cannot be estimated
	slowestMotion = 0.21 // s between readings; five a second are enough to follow a rider's actions
	fineGrid      = 0.1  // s between the nodes of the final pass
	coarseGrid    = 2.0  // s between those that only learn the noise, in addition to the fixes
	antiShake     = 0.05 // s: half width of the window that removes most of the vibration from the force
)

// slipLasts is the time before and after a slip during which the force is not
// used, s.
const slipLasts = 0.3

// AReach is how far the window of Track.A reaches to either side, s.
const AReach = 0.2

// Smooth estimates the motion of a whole ride by fixed-interval smoothing. With
// too few fixes it returns a *sensors.InputError. Where the accelerometer
// cannot be used, or does not improve the prediction of left-out fixes, the
// track uses the satellite speeds alone: see Track.GNSSOnly.
func Smooth(log *sensors.Log, opt Options) (*Track, error) {
	all, prior := usable(log.Fixes)
	fixes, leapt := withoutJumps(all)
	if len(fixes) < fewestFixes {
		return nil, fewFixes(len(fixes))
	}
	tr, err := smooth(log, fixes, prior, opt)
	if err == nil {
		tr.Receiver.Rejected += leapt
		tr.noteRejected(len(fixes) + leapt)
	}
	return tr, err
}

// smooth is Smooth for the fixes without implausible ones.
func smooth(log *sensors.Log, fixes []fix, prior noise, opt Options) (*Track, error) {
	r, mounts, err := prepare(log, fixes, prior, opt)
	var unusable *finding.Error
	switch {
	case errors.As(err, &unusable):
		r = newAlone(fixes, prior, Lag{Seconds: assumedLag, SE: lagSD})
		r.learnAlone(opt.between(0.2, 0.7))
		return r.trackAlone(unusable.Finding)
	case err != nil:
		return nil, err
	}
	opt.progress(0.2)
	r.learn(opt)
	if err := r.checkNoise(); err != nil {
		return nil, err
	}
	alone := newAlone(r.fixes, prior, r.lagSoFar())
	alone.learnAlone(opt.between(0.65, 0.7))
	if why, lost := r.compareWithAlone(alone); lost {
		return alone.trackAlone(why)
	}
	return r.finish(mounts, opt)
}

// finish computes the final track with the learned parameters.
func (r *ride) finish(mounts []mount.Mount, opt Options) (*Track, error) {
	opt.progress(0.7)
	if err := r.checkNoise(); err != nil {
		return nil, err
	}
	nodes := r.nodes(r.places(fineGrid, fineGrid))
	x, p := r.first(0)
	r.forgetSteps()
	opt.progress(0.75)
	smoothed := kalman.Smooth(nodes, x, p)
	opt.progress(0.9)
	for i := range smoothed.X {
		if err := stageFilter.finite([]float64{r.s.T[nodes[i].Index]}, smoothed.X[i][:]); err != nil {
			return nil, err
		}
	}
	tr := r.track(nodes, smoothed)
	if err := stageTrack.finite(tr.T, tr.V, tr.S, tr.A, tr.VSD, tr.ASD); err != nil {
		return nil, err
	}
	opt.progress(0.95)
	tr.Shake = r.s.Shake()
	for _, m := range mounts {
		tr.Mounts = append(tr.Mounts, Mount{Span: Span{m.From, m.To}, Forward: m.Forward, Up: m.Up, SE: m.SE})
	}
	tr.GNSSOnly = r.withoutAccel
	tr.Notes = r.notes(tr)
	opt.progress(1)
	return tr, nil
}

// checkNoise returns an error if a learned parameter is not finite.
func (r *ride) checkNoise() error {
	n := r.n.log()
	if err := stageNoise.finite(r.s.T[:1], n[:], []float64{r.lag, r.shape}); err != nil {
		return err
	}
	return stageNoise.finite(r.s.T, r.noisy)
}

// prepare checks the log and transforms it to the bike's axes.
func prepare(log *sensors.Log, fixes []fix, prior noise, opt Options) (*ride, []mount.Mount, error) {
	s := motion.New(log.Motion)
	if len(s.T) < fewestMotion {
		return nil, nil, fewMotion(len(s.T))
	}
	if s.Step > slowestMotion {
		return nil, nil, slowMotion(s.Step)
	}
	seen, felt := Span{fixes[0].t, fixes[len(fixes)-1].t}, Span{s.T[0], s.T[len(s.T)-1]}
	if seen.From > felt.To || seen.To < felt.From {
		return nil, nil, apart(seen, felt)
	}
	opt.progress(0.03)
	found, err := mount.Find(s, speeds(fixes))
	if err != nil {
		return nil, nil, err
	}
	fixes, steps, found := straighten(s, fixes, found)
	opt.progress(0.08)
	rest := findRest(s, s.Force, fixes, found.Lag)
	speed := roughSpeed(s, fixes, found.Lag)
	opt.progress(0.1)
	pr := project(s, found.Mounts, speed, rest)
	if pr.pitch != nil && !gyroAgrees(s, fixes, found.Lag, pr.force, pr.pitch) {
		pr.forgetGyro()
	}
	s.Spare(pr.pitch)
	slow := folded(s, found.Mounts, pr.yaw)
	rest = takeSwings(s, found, fixes, &pr, rest, slow)
	opt.progress(0.13)
	r := &ride{s: s, fixes: fixes, rest: rest, stale: silent(s.T, fixes, rest, found.Lag), cuts: pr.at[1:], yaw: pr.yaw, n: prior, prior: prior, lag: found.Lag, before: found.Lag, lagSD: lagSD, steps: steps}
	if err := stageForce.finite(s.T, pr.force, slow, speed); err != nil {
		return nil, nil, err
	}
	r.setForce(pr.force, slow)
	opt.progress(0.18)
	r.setTurned()
	r.ref = newReference(s)
	r.ref.set(s, speed)
	r.s.Spare(speed)
	return r, found.Mounts, nil
}

// setForce stores the forward force and its integrals.
func (r *ride) setForce(force, folded []float64) {
	s := r.s
	r.raw = force
	density := s.DensityInto(s.Sheet(), force)
	for i, d := range folded {
		density[i] += d
	}
	r.density = density
	r.integrate(folded) // reuses its sheet
}

// integrate integrates the force, its noise, and the time without it. spare is
// overwritten.
func (r *ride) integrate(spare []float64) {
	s, n := r.s, len(r.raw)
	calm := s.SmoothInto(spare, r.raw, antiShake)
	r.force = s.Integrate(calm)
	s.Spare(calm)
	slips, density := 0, r.density
	r.noisy, r.blind = s.Sheet(), s.Sheet()
	r.noisy[0], r.blind[0] = 0, 0
	if r.gnssOnly != nil {
		r.gnssOnly[0] = 0
	}
	for i := 1; i < n; i++ {
		h := s.T[i] - s.T[i-1]
		r.noisy[i], r.blind[i] = r.noisy[i-1], r.blind[i-1]
		if r.gnssOnly != nil {
			r.gnssOnly[i] = r.gnssOnly[i-1]
			if r.inGNSSOnly(s.T[i]) {
				r.gnssOnly[i] += h
				continue
			}
		}
		for slips+1 < len(r.cuts) && s.T[i] > s.T[r.cuts[slips]]+slipLasts {
			slips++
		}
		slipping := slips < len(r.cuts) && math.Abs(s.T[i]-s.T[r.cuts[slips]]) < slipLasts
		if slipping || s.Missing[i] || s.Missing[i-1] || h > s.Hole() {
			r.blind[i] += h
			continue
		}
		r.noisy[i] += h * math.Max((density[i]+density[i-1])/2, leastDensity)
	}
}

// setTurned integrates the absolute yaw rate, smoothed so that the gyroscope's
// noise does not add up.
func (r *ride) setTurned() {
	if r.yaw == nil {
		return
	}
	sum := r.s.Calm(r.s.Sheet(), r.yaw, calmTurn)
	sum[0] = 0
	for i := 1; i < len(sum); i++ {
		sum[i] = sum[i-1] + math.Max(math.Abs(sum[i])-leastTurn, 0)*(r.s.T[i]-r.s.T[i-1])
	}
	r.turned = sum
}
