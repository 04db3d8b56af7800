package runs

import (
	"math"
	"sort"

	"stillair/runs/engine"
)

// Sound is stamped with a latency of some hundredths of a second. An error Δ of
// the latency causes a relative error Δ·a/v of the engine speed, at
// acceleration a and speed v: 1 % for 0.1 s in the middle of a pull. The prior
// is a usual value with its standard deviation.
const (
	usualLate, usualLateSD = 0.04, 0.04 // s
	lateStep, lateSteps    = 0.03, 6    // of the coarse search
	latePulls              = 6          // maximum number of pulls used
	lateRounds             = 2
)

// Standard deviations of the reference for engine speed at one of many
// correlated moments a quarter of a second apart: from vibration, relative;
// from road speed, in m/s.
const (
	vibrationSD = 0.004
	roadSD      = 0.3
)

// lateness estimates the latency of the sound of a ride: first as the one at
// which the engine stands out most, over all pulls. Then the engine speeds from
// sound are compared with those from vibration, which has no latency, or with
// the road speed: they differ by −Δ·a/v, and Δ is found by least squares.
func (e *tachometer) lateness(pulls []*Run) (found Value) {
	pulls = pulls[:min(latePulls, len(pulls))]
	found.X = e.clearest(pulls)
	for range lateRounds {
		each := make([]normal, len(pulls))
		parallel(len(pulls), func(i int) { each[i] = e.latencyNormal(*pulls[i], found.X) })
		// The prior counts as one more measurement.
		w := 1 / (usualLateSD * usualLateSD)
		xx, xy := w, w*(usualLate-found.X)
		for _, n := range each {
			xx, xy = xx+n.xx, xy+n.xy
		}
		found.X += xy / xx
		found.SE = 1 / math.Sqrt(xx)
	}
	return found
}

// clearest is the latency of a coarse grid at which the engine stands out most.
func (e *tachometer) clearest(pulls []*Run) float64 {
	each := make([]float64, lateSteps*len(pulls))
	parallel(len(each), func(k int) {
		late := float64(k%lateSteps) * lateStep
		each[k] = engine.Clearness(heard(e.log, e.track, *pulls[k/lateSteps], late), e.search)
	})
	all := make([]float64, lateSteps)
	for k, x := range each {
		all[k%lateSteps] += x
	}
	best := 0
	for i := range all {
		if all[i] > all[best] {
			best = i
		}
	}
	return float64(best) * lateStep
}

// normal is the normal equation of a straight line through the origin.
type normal struct{ xx, xy float64 }

// latencyNormal is the normal equation of one pull for the correction to a latency.
func (e *tachometer) latencyNormal(r Run, late float64) normal {
	sound := heard(e.log, e.track, r, late)
	found, err := engine.Find(sound, e.search)
	if err != nil {
		return normal{}
	}
	speed := engine.Follow(sound, found, e.search)
	shaken := vibration(e.log, e.track, r)
	if felt, err := engine.Find(shaken, e.search); err == nil && math.Abs(felt.RPMPerMPS.X/found.RPMPerMPS.X-1) < sameRatio {
		return e.vibrationNormal(speed, engine.Follow(shaken, felt, e.search))
	}
	return e.roadNormal(speed)
}

// vibrationNormal compares with the engine speed from vibration at the same
// moments.
func (e *tachometer) vibrationNormal(sound, vibration engine.Speed) (n normal) {
	const near = 0.2 // s
	for i, t := range sound.T {
		k := sort.SearchFloat64s(vibration.T, t)
		if k == 0 || k == len(vibration.T) || vibration.T[k]-vibration.T[k-1] > 2*near {
			continue
		}
		u := (t - vibration.T[k-1]) / (vibration.T[k] - vibration.T[k-1])
		rpm := vibration.RPM[k-1] + u*(vibration.RPM[k]-vibration.RPM[k-1])
		x, y := e.growth(t), -math.Log(sound.RPM[i]/rpm)
		n.xx, n.xy = n.xx+x*x/(vibrationSD*vibrationSD), n.xy+x*y/(vibrationSD*vibrationSD)
	}
	return n
}

// roadNormal compares with the road speed, with the mean of both removed
// because the ratio is no better known.
func (e *tachometer) roadNormal(sound engine.Speed) (n normal) {
	var w, wx, wy, wxx, wxy float64
	for i, t := range sound.T {
		v := e.track.At(t).V
		x, y, k := e.growth(t), -math.Log(sound.RPM[i]/v), v*v/(roadSD*roadSD)
		w, wx, wy, wxx, wxy = w+k, wx+k*x, wy+k*y, wxx+k*x*x, wxy+k*x*y
	}
	if w == 0 {
		return n
	}
	return normal{xx: wxx - wx*wx/w, xy: wxy - wx*wy/w}
}

// growth is the relative growth of the speed, 1/s.
func (e *tachometer) growth(t float64) float64 {
	at := e.track.At(t)
	return at.A / at.V
}
