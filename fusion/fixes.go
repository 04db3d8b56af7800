package fusion

import (
	"math"
	"slices"

	"stillair/fusion/internal/motion"
	"stillair/sensors"
	"stillair/sensors/median"
)

// fix is a speed that the receiver reported.
type fix struct {
	t      float64 // arrival, with jitter removed if the receiver's own time allows, s
	late   float64 // standard deviation of t's jitter, s
	speed  float64 // m/s
	said   float64 // standard deviation stated by the receiver, relative to its usual one
	halted bool    // one of several consecutive ones without speed, when nothing else shows a standstill
	extra  float64 // additional variance of an outlier, m²/s²
}

// tooFast is a speed that no motorcycle reaches, m/s.
const tooFast = 150

// usable returns the fixes without repetitions, with the best available times,
// and the noise to be expected of them. Receivers repeat the last fix when they
// have no new one: the same satellite time, or exactly the same position, with
// the same speed.
func usable(fixes []sensors.Fix) ([]fix, noise) {
	out := make([]fix, 0, len(fixes))
	kept := make([]sensors.Fix, 0, len(fixes))
	var last sensors.Fix
	for _, f := range fixes {
		if !(f.Speed >= 0 && f.Speed < tooFast) || math.IsNaN(f.T) || math.IsInf(f.T, 0) {
			continue
		}
		if n := len(out); n > 0 {
			if f.T <= out[n-1].t || repeats(last, f) {
				continue
			}
		}
		last = f
		kept = append(kept, f)
		out = append(out, fix{t: f.T, late: arrivalSD, speed: f.Speed, said: 1})
	}
	steady(out, kept)
	return out, expected(state(out, kept))
}

// speeds converts the fixes to the form that package mount needs.
func speeds(fixes []fix) []sensors.Fix {
	out := make([]sensors.Fix, len(fixes))
	for i, f := range fixes {
		out[i] = sensors.NewFix(f.t, f.speed)
	}
	return out
}

const (
	arrivalSD = 0.005 // s of jitter in the phone's delivery of a fix
	stampedSD = 0.001 // s if the receiver's own time, in whole milliseconds, removes it
	offsetFew = 8     // fixes on each side over which the clock offset is averaged
)

// steady retimes the fixes by the receiver's own clock, which has no jitter.
// The offset between the clocks, which may drift, is a running median. A
// receiver's clock that disagrees by more than a fraction of the interval, such
// as one in whole seconds, is not used.
func steady(out []fix, fixes []sensors.Fix) {
	n := len(out)
	if n < 2*offsetFew {
		return
	}
	offset := make([]float64, n)
	for i, f := range fixes {
		if f.UTC.IsZero() {
			return
		}
		offset[i] = out[i].t - f.UTC.Sub(fixes[0].UTC).Seconds()
	}
	smooth, miss := make([]float64, n), make([]float64, n)
	for i := range offset {
		smooth[i] = median.Of(offset[max(i-offsetFew, 0):min(i+offsetFew+1, n)])
		miss[i] = math.Abs(offset[i] - smooth[i])
	}
	interval := (out[n-1].t - out[0].t) / float64(n-1)
	if median.Of(miss) > 0.2*interval {
		return
	}
	for i := range out {
		t := out[i].t - offset[i] + smooth[i]
		if miss[i] < 0.5*interval && (i == 0 || t > out[i-1].t) {
			out[i].t, out[i].late = t, stampedSD
		}
	}
}

func repeats(a, b sensors.Fix) bool {
	if !a.UTC.IsZero() && a.UTC.Equal(b.UTC) {
		return a.Speed == b.Speed
	}
	return a.Speed > restSpeed && a.Speed == b.Speed && a.HasPosition() && a.LatDeg == b.LatDeg && a.LonDeg == b.LonDeg
}

// roughSpeed interpolates the fixes linearly at every sample, corrected for the
// lag.
func roughSpeed(s *motion.Series, fixes []fix, lag float64) []float64 {
	out := s.Sheet()
	k := 0
	for i, t := range s.T {
		for k+1 < len(fixes) && fixes[k+1].t <= t+lag {
			k++
		}
		out[i] = onLine(fixes, k, t+lag)
	}
	return out
}

// roughSpeedAt is roughSpeed at one time.
func roughSpeedAt(t float64, fixes []fix, lag float64) float64 {
	after, _ := slices.BinarySearchFunc(fixes, t+lag, func(f fix, t float64) int {
		if f.t <= t {
			return -1
		}
		return 1
	})
	return onLine(fixes, max(after-1, 0), t+lag)
}

// onLine interpolates the speed between fix k and the next, clamped to the
// first and last fix.
func onLine(fixes []fix, k int, at float64) float64 {
	if at <= fixes[0].t {
		return fixes[0].speed
	}
	if k+1 == len(fixes) {
		return fixes[k].speed
	}
	a, b := fixes[k], fixes[k+1]
	return a.speed + (b.speed-a.speed)*(at-a.t)/(b.t-a.t)
}

// silent marks the times of ts that are more than staleAfter from any fix and
// outside the standstills.
func silent(ts []float64, fixes []fix, rest []Span, lag float64) []bool {
	out := make([]bool, len(ts))
	k, m := 0, 0
	for i, t := range ts {
		for k+1 < len(fixes) && math.Abs(fixes[k+1].t-lag-t) <= math.Abs(fixes[k].t-lag-t) {
			k++
		}
		for m < len(rest) && rest[m].To < t {
			m++
		}
		out[i] = math.Abs(fixes[k].t-lag-t) > staleAfter && !(m < len(rest) && rest[m].Contains(t))
	}
	return out
}

// staleAfter is how long a fix constrains the speed, s.
const staleAfter = 2.5
