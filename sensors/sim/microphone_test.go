package sim

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/dsp/fourier"

	"stillair/sensors"
	"stillair/sensors/sourcetest"
)

// heard is a silent microphone without gain control.
func heard() Microphone {
	return Microphone{Rate: 1200, Stretch: 0.25, Engine: EngineSound{RefRPM: 6000}, Wind: WindNoise{RefSpeed: 25, Hz: 150}, Tread: TreadTone{RefSpeed: 25}}
}

// steady is a ride that holds a speed in still air.
func steady(mic Microphone, speed, seconds float64) Scenario {
	sc := withPlan(Naked(), Hold{Speed: speed, Seconds: seconds})
	sc.Wind, sc.Rider.SpeedWander, sc.Microphone = Wind{GustTau: 8}, 0, mic
	return sc
}

// last returns the last seconds of sound and the time at which they begin.
func last(t *testing.T, log *sensors.Log, seconds float64) (x []float64, from float64) {
	t.Helper()
	all := log.Sound
	for _, s := range all[len(all)-int(seconds/0.25)-1 : len(all)-1] {
		if from == 0 {
			from = s.T
		}
		for _, v := range s.Level {
			x = append(x, float64(v)/sensors.FullScale)
		}
	}
	return x, from
}

func rms(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v * v
	}
	return math.Sqrt(sum / float64(len(x)))
}

// TestSoundHasItsLines checks that the engine sounds at the multiples of its
// speed and the tread at its block rate, with the specified sizes.
func TestSoundHasItsLines(t *testing.T) {
	mic := heard()
	mic.Engine.Size, mic.Engine.IdleLoad = 0.1, 1
	mic.Engine.Orders = []Order{{Multiple: 1, Weight: 1}, {Multiple: 2, Weight: 1}}
	mic.Tread.Size, mic.Tread.PerMetre = 0.05, 14
	r := mustRun(t, steady(mic, 25, 30), 1)
	x, from := last(t, r.Log, 10)
	now := r.Truth.Moments[r.Truth.at(from+5)]
	power := fourier.NewFFT(len(x)).Coefficients(nil, x)
	at := func(hz float64) (size float64) { // within a few lines, since the speed wanders a little
		for k := int((hz - 2) * 10); k <= int((hz+2)*10); k++ {
			re, im := real(power[k]), imag(power[k])
			size += 2 * (re*re + im*im)
		}
		return math.Sqrt(size) / float64(len(x))
	}
	each := 0.1 / math.Sqrt2 * now.RPM / 6000
	near(t, "order 1", at(now.RPM/60), each, 0.05*each)
	near(t, "order 2", at(now.RPM/30), each, 0.05*each)
	near(t, "tread", at(14*now.V), 0.05*now.V/25, 0.003)
	near(t, "all", rms(x), math.Sqrt(2*each*each+0.0025*now.V*now.V/625), 0.003)
}

// TestWindNoiseGrowsWithTheDynamicPressure: twice the speed gives four times
// the noise, with more at low frequencies than at high ones.
func TestWindNoiseGrowsWithTheDynamicPressure(t *testing.T) {
	mic := heard()
	mic.Wind.Size = 0.02
	size := func(speed float64) float64 {
		x, _ := last(t, mustRun(t, steady(mic, speed, 40), 2).Log, 20)
		return rms(x)
	}
	near(t, "noise at 25 m/s", size(25), 0.02, 0.002)
	near(t, "noise at 12.5 m/s", size(12.5), 0.005, 0.0005)
}

// TestGainSetsItself: quiet and loud sound are recorded equally loud, and a
// sudden loud sound is reported as clipped.
func TestGainSetsItself(t *testing.T) {
	mic := heard()
	mic.Wind.Size, mic.Gain = 0.02, AutoGain{Target: 0.1, Attack: 0.02, Release: 1, Most: 1000}
	for _, speed := range []float64{10, 30} {
		x, _ := last(t, mustRun(t, steady(mic, speed, 40), 3).Log, 20)
		if size := rms(x); size < 0.03 || size > 0.12 {
			t.Errorf("at %g m/s the size is %.3f", speed, size)
		}
	}
	mic.Gain = AutoGain{}
	mic.Wind.Size = 2
	clipped := 0
	for _, s := range mustRun(t, steady(mic, 25, 25), 3).Log.Sound {
		clipped += s.Clipped
	}
	if clipped < 1000 {
		t.Errorf("%d values were reported as clipped", clipped)
	}
}

// TestSoundChangesNothingElse: sound has its own random streams, and is
// delivered as by a real source, late by its latency and with gaps.
func TestSoundChangesNothingElse(t *testing.T) {
	sc := withPlan(Naked(), RollOn{From: 15, To: 30}, Brake{})
	without := mustRun(t, sc, 4)
	sc.Microphone = DefaultMicrophone()
	sc.Microphone.GapsPerHour, sc.Microphone.GapMean = 200, 0.5
	with := mustRun(t, sc, 4)
	if len(without.Log.Sound) != 0 || len(with.Log.Sound) == 0 {
		t.Fatalf("%d and %d stretches of sound", len(without.Log.Sound), len(with.Log.Sound))
	}
	for i, m := range with.Log.Motion {
		if m != without.Log.Motion[i] {
			t.Fatalf("motion %d is another with sound", i)
		}
	}
	gaps := 0
	for i, s := range with.Log.Sound[1:] {
		if s.T-with.Log.Sound[i].End() > 0.001 {
			gaps++
		}
	}
	if gaps == 0 {
		t.Error("no gap in the sound")
	}
	near(t, "first value", with.Log.Sound[0].T, sc.ClockZero+sc.Microphone.Latency, 1e-9)
	sourcetest.Contract(t, func() sensors.Source { return with.Source() })
}
