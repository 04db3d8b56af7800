package device

import (
	"math"

	"stillair/sensors"
)

// Microphone is the driver of a microphone. Its methods are called like those of a
// Port.
type Microphone interface {
	// Start requests the microphone without waiting for the answer. A missing
	// microphone or permission is reported with the samples.
	Start()
	// Drain adds the sound that came since the last call to b.
	Drain(b *Batch)
	Stop()
}

// Hearing returns a port with the sound of a microphone added.
func Hearing(port Port, microphone Microphone) Port { return hearing{port, microphone} }

type hearing struct {
	Port
	microphone Microphone
}

func (h hearing) Start() error {
	if err := h.Port.Start(); err != nil {
		return err
	}
	h.microphone.Start()
	return nil
}

func (h hearing) Drain(b *Batch) {
	h.Port.Drain(b)
	h.microphone.Drain(b)
}

func (h hearing) Stop() {
	h.microphone.Stop()
	h.Port.Stop()
}

// SoundClock converts the clock of a microphone, which counts its own readings,
// to that of the samples. Arrival removes the delays of delivery; the remaining
// difference adjusts the clock slowly, so that the phase of the sound stays
// continuous, or at once if so much is missing that there was a gap.
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
// clock, handed the time of its delivery, both in seconds.
func (c *SoundClock) At(own, handed float64) float64 {
	offset := c.arrival.At(own, handed) - own
	if d := offset - c.offset; !c.running || d > soundCut || d < -soundCut {
		c.offset, c.running = offset, true
	} else {
		c.offset += soundSlew * d
	}
	return own + c.offset
}

// StretchValues is the number of values in a driver's stretch of sound: a tenth
// of a second.
const StretchValues = int(sensors.SoundRate) / 10

// Level is x, relative to sensors.FullScale, as stored in a stretch of sound.
func Level(x float64) int16 {
	return int16(max(-sensors.FullScale, min(math.Round(x), sensors.FullScale-1)))
}
