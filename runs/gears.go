package runs

import (
	"math"
	"sort"

	"stillair/fusion"
	"stillair/runs/engine"
	"stillair/sensors"
)

// gearOf finds in which of the bike's gears a pull was ridden: the only one
// that was told, or the one whose engine orders are in the vibration. Where no
// gear was told but the engine's limit, the ratio itself is searched. The name
// is empty and the ratio NaN where that cannot be told.
func gearOf(log *sensors.Log, track *fusion.Track, r Run, ride sensors.Ride) (name string, rpmPerMPS float64) {
	gears := ride.Gears
	switch len(gears) {
	case 0:
		return "", ratioOf(log, track, r, ride.LimitRPM)
	case 1:
		return gears[0].Name, gears[0].RPMPerMPS
	}
	ratios := make([]float64, len(gears))
	for i, g := range gears {
		ratios[i] = g.RPMPerMPS
	}
	which, err := engine.Pick(vibration(log, track, r), ratios)
	if err != nil {
		return "", math.NaN()
	}
	return gears[which].Name, gears[which].RPMPerMPS
}

// lowestOfLimit is how far below its limit an engine pulls at full throttle, as
// a part of the limit (common practice).
const lowestOfLimit = 0.25

// ratioOf searches the ratio of engine speed to road speed in the vibration of
// a pull; NaN where there is no lock or the engine's limit is not known.
func ratioOf(log *sensors.Log, track *fusion.Track, r Run, limitRPM float64) float64 {
	if !(limitRPM > 0) {
		return math.NaN()
	}
	found, err := engine.Find(vibration(log, track, r), engine.Search{Lowest: lowestOfLimit * limitRPM, Highest: limitRPM})
	if err != nil {
		return math.NaN()
	}
	return found.RPMPerMPS.X
}

// vibration is the phone's axis that shakes most during a run, over distance.
func vibration(log *sensors.Log, track *fusion.Track, r Run) engine.Signal {
	i := sort.Search(len(log.Motion), func(i int) bool { return log.Motion[i].T >= r.Start })
	j := sort.Search(len(log.Motion), func(i int) bool { return log.Motion[i].T > r.End })
	samples := log.Motion[i:max(i, j)]
	axes := []func(sensors.Motion) float64{
		func(m sensors.Motion) float64 { return m.Force.X },
		func(m sensors.Motion) float64 { return m.Force.Y },
		func(m sensors.Motion) float64 { return m.Force.Z },
	}
	best, most := axes[0], -1.0
	for _, axis := range axes {
		if s := shaking(samples, axis); s > most {
			best, most = axis, s
		}
	}
	sig := engine.Signal{}
	gone := 0.0
	for _, m := range samples {
		gone = math.Max(gone, track.At(m.T).S)
		sig.T, sig.X, sig.S = append(sig.T, m.T), append(sig.X, best(m)), append(sig.S, gone)
	}
	return sig
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
