package android

import (
	"math"
	"strconv"

	"stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/finding"
)

// heard is a block of readings of the microphone as delivered by microphone.c.
// Readings are numbered from the opening on.
type heard struct {
	first   int64 // number of the first
	n, t    int64 // number of a reading, and its time in ns since the phone was started
	stamped bool  // t is from the system; else it is the time of delivery
	level   []int16
}

// loudest is the level from which a reading counts as clipped: clipped sound
// does not always reach the very last number.
const loudest = 0.999 * sensors.FullScale

// hearing downsamples the sound to the recorded rate.
type hearing struct {
	clock   device.SoundClock
	stamped bool  // the system has provided a time stamp
	n, t    int64 // as in heard, from the newest accepted time stamp
	filter  device.Lowpass
	rate    float64 // of the microphone, 1/s
	past    []int16 // readings that the filter still needs
	from    int64   // number of past[0]
	out     []int16 // values of the current stretch
	at      float64 // number of the reading at out[0]
	clipped int
}

func newHearing(rate float64) hearing {
	return hearing{rate: rate, filter: device.NewLowpass(rate)}
}

// add takes the next readings and appends complete stretches to b.
func (h *hearing) add(x heard, b *device.Batch) {
	if x.first != h.from+int64(len(h.past)) {
		h.past, h.out, h.from, h.clipped = h.past[:0], nil, x.first, 0 // some were lost
		h.stamped = false
	}
	h.anchor(x)
	for _, level := range x.level {
		if math.Abs(float64(level)) >= loudest {
			h.clipped++
		}
	}
	h.past = append(h.past, x.level...)
	done := 0
	for ; len(h.past)-done >= len(h.filter.Taps); done += h.filter.Factor {
		if len(h.out) == 0 {
			h.at = float64(h.from+int64(done)) + float64(len(h.filter.Taps)-1)/2
		}
		h.out = append(h.out, h.value(h.past[done:]))
		if len(h.out) == device.StretchValues {
			h.send(b)
		}
	}
	h.past = append(h.past[:0], h.past[done:]...)
	h.from += int64(done)
}

// value is the output of the filter at the first of the readings.
func (h *hearing) value(past []int16) int16 {
	sum := 0.0
	for i, tap := range h.filter.Taps {
		sum += tap * float64(past[i])
	}
	return device.Level(sum)
}

// anchor takes the time of x, unless the system has provided better ones. The
// two kinds differ by some hundredths of a second.
func (h *hearing) anchor(x heard) {
	if h.stamped && !x.stamped {
		return
	}
	if x.stamped && !h.stamped {
		h.clock = device.SoundClock{}
	}
	h.stamped, h.n, h.t = x.stamped, x.n, x.t
}

func (h *hearing) send(b *device.Batch) {
	t := h.clock.At(float64(h.n)/h.rate, seconds(h.t))
	b.Sound = append(b.Sound, sensors.Sound{
		T:    t + (h.at-float64(h.n))/h.rate,
		Rate: h.rate / float64(h.filter.Factor), Level: h.out, Clipped: h.clipped,
	})
	h.out, h.clipped = nil, 0
}

// The states of the microphone; microphone.h has the same numbers.
const (
	microphoneOpening = iota
	microphoneNone
	microphoneRefused
	microphoneListening
	microphoneCut
)

// microphoneReport converts the state of the microphone to a report; code is AAudio's.
func microphoneReport(state, code int) (device.Report, bool) {
	say := func(c sensors.Condition, code finding.Code, args ...finding.Arg) (device.Report, bool) {
		return device.Report{Sensor: sensors.SensorSound, Condition: c, Detail: finding.New(code, args...)}, true
	}
	why := finding.Text("error", strconv.Itoa(code))
	switch state {
	case microphoneNone:
		return say(sensors.Missing, "android.microphone_too_old")
	case microphoneRefused:
		return say(sensors.Silent, "android.microphone_not_opened", why)
	case microphoneListening:
		return device.Report{Sensor: sensors.SensorSound, Condition: sensors.Available}, true
	case microphoneCut:
		return say(sensors.Silent, "android.microphone_taken", why)
	}
	return device.Report{}, false
}
