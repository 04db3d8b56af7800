package device

import (
	"math"

	"stillair/sensors"
)

// Lowpass is the decimation filter for sound: every Factor-th value of the
// sound through Taps, which is symmetric (linear phase), so that the output is
// delayed by half its length.
type Lowpass struct {
	Factor int
	Taps   []float64
}

// soundStop is the attenuation of frequencies that would alias into the band, dB.
const soundStop = 80.0

// NewLowpass designs the filter for a microphone's rate by Kaiser's window
// (Oppenheim and Schafer, Discrete-Time Signal Processing, section 7.5.3; from
// memory): the pass band reaches to sensors.SoundBand, and what would alias
// into it is removed.
func NewLowpass(rate float64) Lowpass {
	factor := max(1, int(math.Round(rate/sensors.SoundRate)))
	if factor == 1 {
		return Lowpass{Factor: 1, Taps: []float64{1}}
	}
	stop := rate/float64(factor) - sensors.SoundBand
	width := 2 * math.Pi * (stop - sensors.SoundBand) / rate
	half := int(math.Ceil((soundStop-7.95)/(2.285*width)) / 2)
	beta := 0.1102 * (soundStop - 8.7)
	cut := (stop + sensors.SoundBand) / 2 / rate // cycles per reading
	taps := make([]float64, 2*half+1)
	sum := 0.0
	for i := range taps {
		n := float64(i - half)
		taps[i] = sinc(2*cut*n) * bessel0(beta*math.Sqrt(max(0, 1-n*n/float64(half*half))))
		sum += taps[i]
	}
	for i := range taps {
		taps[i] /= sum
	}
	return Lowpass{Factor: factor, Taps: taps}
}

func sinc(x float64) float64 {
	if x == 0 {
		return 1
	}
	return math.Sin(math.Pi*x) / (math.Pi * x)
}

// bessel0 is the modified Bessel function of order zero, by its series.
func bessel0(x float64) float64 {
	sum, term := 1.0, 1.0
	for k := 1.0; term > 1e-14*sum; k++ {
		term *= x * x / (4 * k * k)
		sum += term
	}
	return sum
}
