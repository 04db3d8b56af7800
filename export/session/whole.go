package session

import (
	"math"

	"stillair/sensors"
)

// Write writes a whole log as a closed session.
func Write(store Store, log *sensors.Log, header Header) error {
	w, err := NewWriter(store, header, log.Ride)
	if err != nil {
		return err
	}
	deliver(log, w)
	return w.Close()
}

// WriteRecording writes a whole recording as a closed session: its log, what it
// is called, and what was remarked.
func WriteRecording(store Store, rec *Recording) error {
	w, err := NewWriter(store, rec.Header, rec.Log.Ride)
	if err != nil {
		return err
	}
	if rec.Name != "" {
		w.SetName(rec.Name)
	}
	deliver(rec.Log, w)
	for _, r := range rec.Remarks {
		w.Remark(r)
	}
	return w.Close()
}

// deliver gives sink every sample of the log in order of time.
func deliver(log *sensors.Log, sink sensors.Sink) {
	var m, f, p, s, h int
	for {
		tm := timeAt(log.Motion, m, func(x sensors.Motion) float64 { return x.T })
		tf := timeAt(log.Fixes, f, func(x sensors.Fix) float64 { return x.T })
		tp := timeAt(log.Pressure, p, func(x sensors.Pressure) float64 { return x.T })
		ts := timeAt(log.States, s, func(x sensors.State) float64 { return x.T })
		th := timeAt(log.Sound, h, func(x sensors.Sound) float64 { return x.T })
		switch first := min(tm, tf, tp, ts, th); {
		case math.IsInf(first, 1):
			return
		case tm == first:
			sink.Motion(log.Motion[m])
			m++
		case tf == first:
			sink.Fix(log.Fixes[f])
			f++
		case tp == first:
			sink.Pressure(log.Pressure[p])
			p++
		case th == first:
			sink.Sound(log.Sound[h])
			h++
		default:
			sink.State(log.States[s])
			s++
		}
	}
}

// timeAt returns the time of sample i, +∞ behind the last. One without a time is
// first.
func timeAt[S any](s []S, i int, at func(S) float64) float64 {
	if i >= len(s) {
		return math.Inf(1)
	}
	t := at(s[i])
	if math.IsNaN(t) {
		return math.Inf(-1)
	}
	return t
}
