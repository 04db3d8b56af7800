package device

import (
	"math"

	"stillair/sensors"
)

// Ear is the driver of a microphone, beside the Port of the other sensors. Its
// methods are called as those of a Port.
type Ear interface {
	// Start asks for the microphone and does not wait for the answer. That
	// there is none, or no permission for it, is reported with the samples.
	Start()
	// Drain adds the sound that came since the last call to b.
	Drain(b *Batch)
	Stop()
}

// Hearing returns a port that has an ear.
func Hearing(port Port, ear Ear) Port { return hearing{port, ear} }

type hearing struct {
	Port
	ear Ear
}

func (h hearing) Start() error {
	if err := h.Port.Start(); err != nil {
		return err
	}
	h.ear.Start()
	return nil
}

func (h hearing) Drain(b *Batch) {
	h.Port.Drain(b)
	h.ear.Drain(b)
}

func (h hearing) Stop() {
	h.ear.Stop()
	h.Port.Stop()
}

// SoundClock turns the clock of a microphone, which counts its own readings,
// into that of the samples. The stretches are handed over late by waits that
// Arrival takes out; what is left moves the clock slowly, so that the phase of
// the sound stays whole, or at once where so much is missing that it was cut.
type SoundClock struct {
	arrival Arrival
	offset  float64 // samples' clock minus the microphone's, s
	running bool
}

const (
	soundCut  = 0.05 // s
	soundSlew = 0.01 // of the difference, each stretch
)

// At returns when a reading was taken: own is its time on the microphone's
// clock, handed when it was handed over, both in seconds.
func (c *SoundClock) At(own, handed float64) float64 {
	offset := c.arrival.At(own, handed) - own
	if d := offset - c.offset; !c.running || d > soundCut || d < -soundCut {
		c.offset, c.running = offset, true
	} else {
		c.offset += soundSlew * d
	}
	return own + c.offset
}

// StretchValues is how many values a driver puts into a stretch of sound: a
// tenth of a second.
const StretchValues = int(sensors.SoundRate) / 10

// Level is x, in parts of sensors.FullScale, as a stretch of sound holds it.
func Level(x float64) int16 {
	return int16(max(-sensors.FullScale, min(math.Round(x), sensors.FullScale-1)))
}
