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

// axes are all accelerometer axes during a run, over distance.
func axes(log *sensors.Log, track *fusion.Track, r Run) []engine.Signal {
	return felt(readings(log, r), track, forces[:]...)
}

// felt is the given axes of readings, over distance.
func felt(samples []sensors.Motion, track *fusion.Track, axes ...func(sensors.Motion) float64) []engine.Signal {
	way := newAlong(track, len(axes))
	for _, m := range samples {
		if !way.step(m.T) {
			continue
		}
		for k, force := range axes {
			way.x[k] = append(way.x[k], force(m))
		}
	}
	return way.signals()
}

// vibration is the axis with the strongest vibration during a run, over
// distance.
func vibration(log *sensors.Log, track *fusion.Track, r Run) engine.Signal {
	samples := readings(log, r)
	best, most := forces[0], -1.0
	for _, force := range forces {
		if s := shaking(samples, force); s > most {
			best, most = force, s
		}
	}
	return felt(samples, track, best)[0]
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

// heard is the sound of a run over distance, given its latency, s.
func heard(log *sensors.Log, track *fusion.Track, r Run, late float64) engine.Signal {
	from, to := r.Start+late, r.End+late
	first := sort.Search(len(log.Sound), func(i int) bool { return log.Sound[i].End() > from })
	way := newAlong(track, 1)
	for _, s := range log.Sound[first:] {
		if s.T > to {
			break
		}
		for i, level := range s.Level {
			if t := s.T + float64(i)/s.Rate; t >= from && t <= to && way.step(t-late) {
				way.x[0] = append(way.x[0], float64(level))
			}
		}
	}
	return way.signals()[0]
}

// along resamples signals with common times over the distance of a track.
type along struct {
	track *fusion.Track
	t, s  []float64
	x     [][]float64
	gone  float64
}

func newAlong(track *fusion.Track, signals int) *along {
	return &along{track: track, x: make([][]float64, signals)}
}

// step advances to a time, unless it is not later than the last.
func (a *along) step(t float64) bool {
	if n := len(a.t); n > 0 && t <= a.t[n-1] {
		return false
	}
	a.gone = math.Max(a.gone, a.track.At(t).S)
	a.t, a.s = append(a.t, t), append(a.s, a.gone)
	return true
}

func (a *along) signals() []engine.Signal {
	out := make([]engine.Signal, len(a.x))
	for k, x := range a.x {
		out[k] = engine.Signal{T: a.t, X: x, S: a.s}
	}
	return out
}
