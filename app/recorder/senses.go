package recorder

import (
	"math"
	"slices"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Sense is how one sensor does.
type Sense struct {
	Sensor    sensors.Sensor
	Condition sensors.Condition // empty: not known yet
	Detail    finding.Finding   // reported by the source
	Rate      float64           // samples a second, over the last seconds; NaN: none yet
	Last      float64           // time of the last sample; NaN: none yet
	Count     int
	Gaps      int     // how often it paused for long
	Longest   float64 // the longest pause, s
	HSD       float64 // fixes: horizontal standard deviation of the last, m; NaN: not reported
	SpeedSD   float64 // fixes: the receiver's standard deviation of speed, m/s; NaN: not reported
	Clipped   float64 // sound: share of the last seconds in which it was too loud for the microphone
}

// silentAfter is how long a sensor may pause before it counts as silent, s.
func silentAfter(s sensors.Sensor) float64 {
	if s == sensors.SensorFix {
		return 5
	}
	return 2
}

// gapAfter is the pause that counts as a gap, s.
func gapAfter(s sensors.Sensor) float64 {
	switch s {
	case sensors.SensorFix:
		return 2.5
	case sensors.SensorSound: // comes in stretches
		return 0.6
	}
	return 0.25
}

// pauseAfter is how many usual intervals are a pause: jitter and a lost sample or
// two are less, and a sensor that is always slow has its rate.
const pauseAfter = 4.0

type senses struct {
	of     [5]Sense
	rhythm [5]rhythm // of the same sensors
	seen   float64   // the log's time when watchSilence last saw it advance
	seenAt float64   // the recorder's own time then
}

func newSenses() senses {
	nan := math.NaN()
	s := senses{seen: nan}
	for i, name := range [...]sensors.Sensor{sensors.SensorMotion, sensors.SensorTurn, sensors.SensorFix, sensors.SensorPressure, sensors.SensorSound} {
		s.of[i] = Sense{Sensor: name, Rate: nan, Last: nan, HSD: nan, SpeedSD: nan}
	}
	return s
}

func (s *senses) get(name sensors.Sensor) *Sense {
	if i := s.index(name); i >= 0 {
		return &s.of[i]
	}
	return nil
}

func (s *senses) index(name sensors.Sensor) int {
	return slices.IndexFunc(s.of[:], func(x Sense) bool { return x.Sensor == name })
}

// sample takes note that a sensor delivered.
func (s *senses) sample(name sensors.Sensor, t float64) {
	i := s.index(name)
	x, r := &s.of[i], &s.rhythm[i]
	x.Count++
	x.Condition, x.Detail = sensors.Working, finding.Finding{}
	dt := t - x.Last
	if math.IsNaN(dt) {
		x.Last = t
		r.pause(t)
		return
	}
	if dt <= 0 {
		return
	}
	x.Longest = max(x.Longest, dt)
	x.Last = t
	if dt > gapAfter(name) {
		x.Gaps++
	}
	if dt > gapAfter(name) && dt*x.Rate > pauseAfter {
		x.Rate = math.NaN() // a pause is reported separately, and does not count in the rate
		r.pause(t)
		return
	}
	x.Rate = r.after(t, rateSpan(name))
}

func (s *senses) fix(f sensors.Fix) {
	s.sample(sensors.SensorFix, f.T)
	x := s.get(sensors.SensorFix)
	x.HSD, x.SpeedSD = f.HSD, f.SpeedSD
}

// clipSpan is the time constant over which clipped sound is reported, s.
const clipSpan = 4.0

// sound takes note of a stretch of sound. Its rate is that of the stretches.
func (s *senses) sound(x sensors.Sound) {
	s.sample(sensors.SensorSound, x.T)
	clipped := 0.0
	if x.Clipped > 0 {
		clipped = 1
	}
	of := s.get(sensors.SensorSound)
	of.Clipped += (1 - math.Exp(-(x.End()-x.T)/clipSpan)) * (clipped - of.Clipped)
}

// later is the log's time now, where elapsed is the recorder's own: it continues
// also while no sensor delivers.
func (s *senses) later(now, elapsed float64) float64 {
	if now != s.seen {
		s.seen, s.seenAt = now, elapsed
	}
	return now + elapsed - s.seenAt
}

// state takes the state that the source reports for a sensor.
func (s *senses) state(st sensors.State) {
	if x := s.get(st.Sensor); x != nil {
		x.Condition, x.Detail = st.Condition, st.Detail
	}
}

// fresh reports whether a sensor delivered lately.
func (s *senses) fresh(name sensors.Sensor, now float64) bool {
	x := s.get(name)
	return now-x.Last <= silentAfter(name)
}

// silence gives the sensors that worked and stopped, each once.
func (s *senses) silence(now float64) []sensors.State {
	var out []sensors.State
	for i := range s.of {
		x := &s.of[i]
		if x.Condition == sensors.Working && now-x.Last > silentAfter(x.Sensor) {
			x.Condition = sensors.Silent
			out = append(out, sensors.State{T: now, Sensor: x.Sensor, Condition: sensors.Silent})
		}
	}
	return out
}
