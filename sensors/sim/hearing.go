package sim

// Microphone is the phone's microphone, already downsampled to the rate of a
// recording. Sizes are root mean squares relative to the microphone's range,
// before its gain.
type Microphone struct {
	Rate    float64 // values a second; 0: no sound is recorded
	Stretch float64 // length of the stretches in which it is delivered, s
	Latency float64 // how much later than heard it is stamped, s

	Engine EngineSound
	Wind   WindNoise
	Tread  TreadTone
	Floor  float64 // white noise of the microphone
	Gain   AutoGain

	GapsPerHour float64 // stretches of sound that are lost, on average
	GapMean     float64 // their mean length, s
}

// EngineSound is the sound of exhaust and intake: lines that go with the crank.
type EngineSound struct {
	Size     float64 // of all lines at full throttle at RefRPM
	RefRPM   float64
	Orders   []Order // Direction is not used
	IdleLoad float64 // size without load, as a fraction of that at full throttle
	Unsteady float64 // sd of each line's relative size and of its phase in rad: no two firings are alike
	Tau      float64 // their time constant, s
}

// WindNoise is the noise of the air at the microphone.
type WindNoise struct {
	Size     float64 // at RefSpeed of air
	RefSpeed float64 // m/s
	Hz       float64 // corner frequency of its low-pass spectrum
}

// TreadTone is the tone of the blocks of a tyre's tread: lines proportional to
// the speed of the wheel, like those of an engine in one gear, but independent
// of throttle and clutch.
type TreadTone struct {
	Size     float64 // at RefSpeed
	RefSpeed float64 // m/s
	PerMetre float64 // blocks per metre of road
	Second   float64 // size of the second harmonic, as a fraction of the first
}

// AutoGain is automatic gain control: fast down when it is loud, slowly up when
// it is quiet.
type AutoGain struct {
	Target  float64 // target size; 0: the gain is one
	Attack  float64 // time constant downwards, s
	Release float64 // upwards, s
	Most    float64 // the highest gain
}

// DefaultMicrophone picks up the engine as loud as the wind at 25 m/s and a
// little of the tyre, with automatic gain. That wind noise grows with the
// dynamic pressure and falls towards high frequencies, and the time constants
// of a phone's gain, are from memory.
func DefaultMicrophone() Microphone {
	return Microphone{
		Rate: 1200, Stretch: 0.25, Latency: 0.04,
		Engine: EngineSound{Size: 0.05, RefRPM: 6000, IdleLoad: 0.3, Unsteady: 0.2, Tau: 0.1,
			Orders: []Order{{Multiple: 0.5, Weight: 0.5}, {Multiple: 1, Weight: 1}, {Multiple: 1.5, Weight: 0.4},
				{Multiple: 2, Weight: 0.9}, {Multiple: 3, Weight: 0.4}}},
		Wind:  WindNoise{Size: 0.05, RefSpeed: 25, Hz: 150},
		Tread: TreadTone{Size: 0.01, RefSpeed: 25, PerMetre: 11, Second: 0.4},
		Floor: 0.0005,
		Gain:  AutoGain{Target: 0.12, Attack: 0.02, Release: 1, Most: 10},
	}
}
