package runs

import (
	"math"
	"sort"

	"stillair/fusion"
	"stillair/runs/engine"
	"stillair/sensors"
)

// forces are the three axes of a reading.
var forces = [...]func(sensors.Motion) float64{
	func(m sensors.Motion) float64 { return m.Force.X },
	func(m sensors.Motion) float64 { return m.Force.Y },
	func(m sensors.Motion) float64 { return m.Force.Z },
}

// readings are the motion readings of a run.
func readings(log *sensors.Log, r Run) []sensors.Motion {
	i := sort.Search(len(log.Motion), func(i int) bool { return log.Motion[i].T >= r.Start })
	j := sort.Search(len(log.Motion), func(i int) bool { return log.Motion[i].T > r.End })
	return log.Motion[i:max(i, j)]
}

// axes are all that the phone felt during a run, over distance.
func axes(log *sensors.Log, track *fusion.Track, r Run) []engine.Signal {
	samples := readings(log, r)
	out := make([]engine.Signal, len(forces))
	for k, force := range forces {
		out[k] = felt(samples, track, force)
	}
	return out
}

// felt is one axis of readings, over distance.
func felt(samples []sensors.Motion, track *fusion.Track, force func(sensors.Motion) float64) engine.Signal {
	way := along{track: track}
	for _, m := range samples {
		way.add(m.T, force(m))
	}
	return way.sig
}

// vibration is the phone's axis that shakes most during a run, over distance.
func vibration(log *sensors.Log, track *fusion.Track, r Run) engine.Signal {
	samples := readings(log, r)
	best, most := forces[0], -1.0
	for _, force := range forces {
		if s := shaking(samples, force); s > most {
			best, most = force, s
		}
	}
	return felt(samples, track, best)
}

// shaking is the mean square of the change from sample to sample.
func shaking(samples []sensors.Motion, axis func(sensors.Motion) float64) float64 {
	var sum float64
	for i := 1; i < len(samples); i++ {
		d := axis(samples[i]) - axis(samples[i-1])
		sum += d * d
	}
	return sum / float64(max(1, len(samples)))
}

// heard is the sound of a run over distance, where it is stamped so late, s.
func heard(log *sensors.Log, track *fusion.Track, r Run, late float64) engine.Signal {
	from, to := r.Start+late, r.End+late
	first := sort.Search(len(log.Sound), func(i int) bool { return log.Sound[i].End() > from })
	way := along{track: track}
	for _, s := range log.Sound[first:] {
		if s.T > to {
			break
		}
		for i, level := range s.Level {
			if t := s.T + float64(i)/s.Rate; t >= from && t <= to {
				way.add(t-late, float64(level))
			}
		}
	}
	return way.sig
}

// along gathers a signal over the distance of a track.
type along struct {
	track *fusion.Track
	sig   engine.Signal
	gone  float64
}

// add takes a value, unless it is not later than the one before.
func (a *along) add(t, x float64) {
	if n := len(a.sig.T); n > 0 && t <= a.sig.T[n-1] {
		return
	}
	a.gone = math.Max(a.gone, a.track.At(t).S)
	a.sig.T, a.sig.X, a.sig.S = append(a.sig.T, t), append(a.sig.X, x), append(a.sig.S, a.gone)
}
