package android

import (
	"math"
	"strconv"

	"stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/finding"
)

// heard is what the microphone gave at once, as microphone.c hands it over. Readings
// are numbered from the opening on.
type heard struct {
	first   int64 // number of the first
	n, t    int64 // a reading's number, and when it was heard, in ns since the phone was started
	stamped bool  // the system says so; else t is when it was handed over
	level   []int16
}

// loudest is from where on a reading is taken to stand at the end of the range:
// what is cut off does not always end at the very last number.
const loudest = 0.999 * sensors.FullScale

// hearing brings what was heard down to the rate that is recorded.
type hearing struct {
	clock   device.SoundClock
	stamped bool  // the system has said when it heard
	n, t    int64 // as in heard, the newest that is trusted
	filter  device.Lowpass
	rate    float64 // of the microphone, 1/s
	past    []int16 // readings that the filter still needs
	from    int64   // number of past[0]
	out     []int16 // values of the stretch that is being made
	at      float64 // number of the reading that out[0] stands for
	clipped int
}

func newHearing(rate float64) hearing {
	return hearing{rate: rate, filter: device.NewLowpass(rate)}
}

// add takes what came next and appends to b the stretches that are whole.
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

// value is what the filter makes of the first of the readings.
func (h *hearing) value(past []int16) int16 {
	sum := 0.0
	for i, tap := range h.filter.Taps {
		sum += tap * float64(past[i])
	}
	return device.Level(sum)
}

// anchor takes the time of x, unless the system has given better ones. The two
// kinds are some hundredths of a second apart.
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

// How the microphone is; microphone.h has the same numbers.
const (
	microphoneOpening = iota
	microphoneNone
	microphoneRefused
	microphoneListening
	microphoneCut
)

// microphoneReport puts the state of the microphone into words; code is AAudio's.
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
