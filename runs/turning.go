package runs

import (
	"stillair/fusion"
	"stillair/runs/detect"
	"stillair/runs/engine"
	"stillair/sensors"
)

// With the clutch in an engine idles: its vibration does not follow the road
// speed. In gear it turns a fixed number of times in every metre, at any speed,
// and the phone's accelerometer shows it. Wheels and tyres do so too, at one to
// two per four metres with decreasing harmonics, so a deceleration in which
// they are stronger than a possible engine line is inconclusive. So is one
// without any lines: the phone may be in soft padding.
//
// The limits were set on coast-downs and engine braking of the rides from which
// package foreign was developed, where lines of an engine in gear stood out by
// 12 to 36 and without one by 2 to 6; they are validated on the cases of the
// study "riders" and on the spoilt rides of package sim, whose engines and
// phones are others.
const (
	fewestTurns = 1.6 // 1/m: an engine at 100 1/min per m/s, the top gear of a large tourer
	mostTurns   = 11  // 1/m: the second order of one at 330
	wheelFewest = 0.4 // 1/m: a wheel with a circumference of 2.5 m
	wheelMost   = 0.7 // and of 1.4 m

	leastTurning = 7.5 // standard deviations by which the line must exceed the noise
	leastClear   = 1.0 // and its minimum clearness in the mean of its frames; noise has 0.6
)

// ear listens to the vibration of coast-downs, and keeps that of those in which no
// engine turns with the wheels.
type ear struct {
	log   *sensors.Log
	track *fusion.Track
	felt  map[fusion.Span]engine.Spectrum
}

// turning reports for each coast-down whether the engine is felt turning with the wheels.
func (e *ear) turning(spans []fusion.Span) []bool {
	felt, turns := make([]engine.Spectrum, len(spans)), make([]bool, len(spans))
	parallel(len(spans), func(i int) {
		signals := axes(e.log, e.track, Run{Start: spans[i].From, End: spans[i].To})
		felt[i] = engine.NewSpectrum(signals, fewestTurns, mostTurns)
		turns[i] = sure(engineLine(signals, felt[i]))
	})
	e.felt = map[fusion.Span]engine.Spectrum{}
	for i, s := range spans {
		if !turns[i] {
			e.felt[s] = felt[i]
		}
	}
	return turns
}

// rolling is the vibration of the coast-downs that count, one for each candidate.
func (e *ear) rolling(found []detect.Found) []engine.Spectrum {
	felt := make([]engine.Spectrum, len(found))
	for i, f := range found {
		if f.Kind == detect.CoastDown && len(f.Reasons) == 0 {
			felt[i] = e.felt[fusion.Span{From: f.From, To: f.To}]
		}
	}
	return felt
}

// engineLine is the strongest line of the vibration, or the zero Line if those
// of the wheels are as strong.
func engineLine(felt []engine.Signal, all engine.Spectrum) engine.Line {
	l := all.Clearest()
	if l.Clear > engine.NewSpectrum(felt, wheelFewest, wheelMost).Clearest().Clear {
		return l
	}
	return engine.Line{}
}

// sure reports whether a line stands out without doubt.
func sure(l engine.Line) bool { return l.Strength() >= leastTurning && l.Clear >= leastClear }
