package opendrive

import (
	"math/rand/v2"

	"stillair/sensors"
)

// Retimed is the same motion with another sampling rate or other time stamps.
type Retimed struct {
	Name  string
	Spoil func(*sensors.Log)
}

// Retimings are the sampling rates and time stamps of phones, from 5 Hz up.
func Retimings() []Retimed {
	out := []Retimed{{"whole", func(*sensors.Log) {}}}
	for _, r := range []struct {
		name string
		hz   float64
	}{{"5 Hz", 5}, {"8 Hz", 8}, {"10 Hz", 10}, {"12.5 Hz", 12.5}, {"16 Hz", 16}, {"20 Hz", 20}, {"25 Hz", 25}, {"30 Hz", 30}, {"40 Hz", 40}} {
		out = append(out, Retimed{r.name, func(l *sensors.Log) { l.Motion = Thinned(l.Motion, r.hz) }})
	}
	return append(out,
		Retimed{"jittered", func(l *sensors.Log) { jitter(l.Motion) }},
		Retimed{"bursts-of-8", func(l *sensors.Log) { bursts(l.Motion) }})
}

// Thinned keeps the first reading after each tick of a clock of that rate.
func Thinned(all []sensors.Motion, hz float64) []sensors.Motion {
	var out []sensors.Motion
	next := all[0].T
	for _, m := range all {
		if m.T >= next-1e-6 {
			out = append(out, m)
			next += 1 / hz
		}
	}
	return out
}

// jitter shifts each time stamp by up to 4 ms, never out of order.
func jitter(all []sensors.Motion) {
	rng := rand.New(rand.NewPCG(7, 8))
	for i := range all {
		all[i].T += 0.004 * (2*rng.Float64() - 1)
	}
}

// bursts gives each group of eight readings time stamps within a millisecond of
// the last.
func bursts(all []sensors.Motion) {
	for i := 0; i < len(all); i += 8 {
		end := min(i+8, len(all))
		last := all[end-1].T
		for k := i; k < end; k++ {
			all[k].T = last + 1e-4*float64(k-end+1)
		}
	}
}
