package runs

import (
	"stillair/fusion"
	"stillair/runs/detect"
	"stillair/runs/engine"
	"stillair/sensors"
	"stillair/sensors/finding"
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

// judgeClutch rejects the coast-downs in which the vibration shows the engine
// turning with the wheels, and returns the vibration of the others.
func judgeClutch(found []detect.Found, log *sensors.Log, track *fusion.Track) []engine.Spectrum {
	felt := make([]engine.Spectrum, len(found))
	parallel(len(found), func(i int) {
		f := &found[i]
		if f.Kind != detect.CoastDown || len(f.Reasons) > 0 {
			return
		}
		signals := axes(log, track, Run{Start: f.From, End: f.To})
		all := engine.NewSpectrum(signals, fewestTurns, mostTurns)
		if sure(engineLine(signals, all)) {
			f.Reasons = append(f.Reasons, finding.New(codeEngineTurns))
			return
		}
		felt[i] = all
	})
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
