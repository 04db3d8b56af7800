package trial

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/app/recorder"
	"stillair/sensors"
)

// What is expected. Rates: the driver asks for 200 or 400 readings a second,
// and vibration folds in more below 90; satellites give one fix a second or
// more on phones (common practice). A pause counts from what a recording counts
// as a gap.
const (
	fullRate    = 90.0 // 1/s
	leastRate   = 30.0
	fullFixes   = 0.8
	motionPause = 0.25 // s
	fixPause    = 2.5
	lateSpread  = 1.0 // s: a tenth of a second between two hand-overs, and what a busy phone adds
	beside      = 3.0 // s: phones' fixes come up to two seconds late
	fewFixes    = 3
	gravity     = 9.81
	gravityOff  = 0.3 // m/s²: bias and scale of a phone's accelerometer (common practice)
	stillSD     = 0.3 // m/s²: more is a phone in the hand
)

// sensed judges one sensor by how it delivered while nothing disturbed it.
func sensed(topic Topic, x recorder.Sense, full, least, pause float64) Line {
	l := Line{Topic: topic, Verdict: Works}
	if x.Count < 2 || math.IsNaN(x.Rate) {
		l.Verdict = Untried
		return l
	}
	l.Numbers = map[string]float64{Rate: x.Rate, Longest: x.Longest}
	switch {
	case x.Rate < least:
		l.Verdict = Fails
	case x.Rate < full || x.Longest > pause:
		l.Verdict = Differs
	}
	return l
}

func of(senses []recorder.Sense, s sensors.Sensor) recorder.Sense {
	for _, x := range senses {
		if x.Sensor == s {
			return x
		}
	}
	return recorder.Sense{}
}

// lying judges what a phone on its back delivered.
func lying(h *heard) []Line {
	log := h.Log()
	senses := recorder.Sensed(log)
	fixes := sensed(Fixes, of(senses, sensors.SensorFix), fullFixes, 0, fixPause)
	motion := sensed(Motion, of(senses, sensors.SensorMotion), fullRate, leastRate, motionPause)
	if motion.Verdict == Untried { // every phone has an accelerometer
		motion.Verdict = Fails
	}
	return []Line{motion, sensed(Turn, of(senses, sensors.SensorTurn), fullRate, leastRate, motionPause), fixes,
		air(log.Pressure), clocks(h), axes(log.Motion)}
}

// air judges the barometer by what the weather can be: 870 to 1085 hPa at sea
// level are the records, and 500 hPa is 5.5 km up.
func air(all []sensors.Pressure) Line {
	l := Line{Topic: Pressure, Verdict: Works}
	if len(all) == 0 {
		l.Verdict = Untried
		return l
	}
	hPa := all[len(all)-1].Pa / 100
	l.Numbers = map[string]float64{Hectopascal: hPa}
	if !(hPa > 500 && hPa < 1085) {
		l.Verdict = Fails
	}
	return l
}

// clocks judges whether motion is handed over evenly and fixes are stamped on
// the same clock.
func clocks(h *heard) Line {
	l := Line{Topic: Clocks, Verdict: Works, Numbers: map[string]float64{}}
	if math.IsInf(h.motion.least, 0) {
		return Line{Topic: Clocks, Verdict: Untried}
	}
	l.Numbers[LateSpread] = h.motion.most - h.motion.least
	if l.Numbers[LateSpread] > lateSpread {
		l.Verdict = Differs
	}
	if len(h.Log().Fixes) >= fewFixes { // a single one may be the last known position
		l.Numbers[FixBeside] = h.fix.least - h.motion.least
		if math.Abs(l.Numbers[FixBeside]) > beside {
			l.Verdict = Fails
		}
	}
	return l
}

// axes judges the specific force of a phone on its back: gravity, upwards out
// of the screen (the W3C's and Android's axes).
func axes(all []sensors.Motion) Line {
	all = all[len(all)/2:] // after the hand has let go
	if len(all) < 2 {
		return Line{Topic: Axes, Verdict: Untried}
	}
	var mean r3.Vec
	for _, m := range all {
		mean = r3.Add(mean, r3.Scale(1/float64(len(all)), m.Force))
	}
	spread := 0.0
	for _, m := range all {
		spread += r3.Norm2(r3.Sub(m.Force, mean)) / float64(len(all))
	}
	l := Line{Topic: Axes, Verdict: Works, Numbers: map[string]float64{X: mean.X, Y: mean.Y, Z: mean.Z}}
	const level = 2.0 // m/s²: a table that leans by 12° at most, or a camera that stands out
	switch {
	case math.Sqrt(spread) > stillSD:
		l.Verdict = Untried
	case math.Abs(r3.Norm(mean)-gravity) > gravityOff:
		l.Verdict = Fails
	case mean.Z < 0 || math.Hypot(mean.X, mean.Y) > level:
		l.Verdict = Differs
	}
	return l
}

// darkEnough is for how long the screen must be off to say something, s.
const darkEnough = 20.0

// inTheDark judges what arrived while the screen was off for so many seconds;
// had: fixes arrived before.
func inTheDark(h *heard, dark float64, had bool) Line {
	senses := recorder.Sensed(h.Log())
	motion, fix := of(senses, sensors.SensorMotion), of(senses, sensors.SensorFix)
	l := Line{Topic: Dark, Verdict: Works, Numbers: map[string]float64{Seconds: dark, Longest: motion.Longest}}
	if fix.Count > 1 {
		l.Numbers[FixLongest] = fix.Longest
	}
	switch {
	case dark < darkEnough:
		l.Verdict = Untried
	case motion.Longest > motionPause || motion.Count < 2, had && (fix.Count < 2 || fix.Longest > 2*fixPause):
		l.Verdict = Fails
	}
	return l
}
