package web

import (
	"encoding/binary"
	"math"

	"stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/finding"
)

var microphoneReasons = []finding.Code{
	0: "",
	1: "browser.no_microphone_leave",
	2: "browser.no_microphone",
	3: "browser.microphone_stopped",
	4: "browser.asks_microphone",
	5: "browser.microphone_taken",
	6: "browser.microphone_not_secure",
}

// hearing converts the rows of listening.js to stretches of sound.
type hearing struct {
	clock   device.SoundClock
	rate    float64 // of the microphone, 1/s
	latency float64 // known to the browser, s
	factor  int
}

// read adds the rows in p to b. A row it does not know is counted as lost.
func (h *hearing) read(p []byte, b *device.Batch) {
	at := func(i int) float64 { return math.Float64frombits(binary.LittleEndian.Uint64(p[8*i:])) }
	for len(p) >= 8 {
		n := at(0)
		if !(n >= 3 && n < 1e5) || len(p) < 8*(int(n)+1) {
			b.Lost++
			return
		}
		switch first := at(1); {
		case first < 0:
			h.report(at(2), at(3), b)
		case n < 4: // it ends before the values
			b.Lost++
		default:
			h.stretch(first/1000, at(2), at(3), at(4), int(n)-4, func(i int) float64 { return at(5 + i) }, b)
		}
		p = p[8*(int(n)+1):]
	}
}

func (h *hearing) report(condition, why float64, b *device.Batch) {
	c, okC := pick(rowConditions, condition)
	w, okW := pick(microphoneReasons, why)
	if !okC || !okW {
		b.Lost++
		return
	}
	b.Reports = append(b.Reports, device.Report{Sensor: sensors.SensorSound, Condition: c, Detail: finding.New(w)})
}

// stretch makes a stretch of n values, whose first is at frame first of the
// microphone and that was delivered at frame now.
func (h *hearing) stretch(handed, first, now, clipped float64, n int, value func(int) float64, b *device.Batch) {
	if n <= 0 || !(h.rate > 0) {
		b.Lost++
		return
	}
	end := h.clock.At(now/h.rate, handed)
	s := sensors.Sound{T: end - (now-first)/h.rate - h.latency, Rate: h.rate / float64(h.factor), Clipped: int(clipped), Level: make([]int16, n)}
	for i := range s.Level {
		s.Level[i] = device.Level(value(i) * sensors.FullScale)
	}
	b.Sound = append(b.Sound, s)
}
