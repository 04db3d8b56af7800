package sim

import "time"

// Gust and receiver strengths that every default scenario uses. They are set
// so that five opposite coast-down pairs of the naked bike from 110 to
// 30 km/h in a wind of 1.5 m/s leave about 1.4 % in the drag area.
const (
	defaultWindSD    = 1.5
	defaultGustRatio = 0.32
	defaultGustTau   = 8.0
	defaultWhiteSD   = 0.06
	defaultCorrSD    = 0.07
	defaultCorrTau   = 4.0
)

// DefaultScenario is a bike on a smooth level road in light wind with a phone
// at 100 Hz and a receiver at 1 Hz; the plan is empty.
func DefaultScenario(b Bike) Scenario {
	return Scenario{
		Bike: b, Rider: DefaultRider(b), Road: DefaultRoad(), Air: DefaultAir(), Wind: DefaultWind(),
		Phone: DefaultPhone(), Receiver: DefaultReceiver(), Baro: DefaultBarometer(),
		Entered:   Entered{MassSD: 3},
		Start:     time.Date(2026, 5, 17, 8, 30, 0, 0, time.UTC),
		ClockZero: 40,
		TruthRate: 100,
	}
}

// DemoScenario is the invented ride with runs of all kinds: two screens on a
// slightly uneven road.
func DemoScenario(b Bike) Scenario {
	sc := DefaultScenario(b)
	sc.Road.Grade, sc.Road.RoughSD = 0.002, 0.001
	sc.Wind.SD, sc.Wind.CrossSD = 1.0, 0.5
	sc.Plan = DemoPlan(b)
	return sc
}

// DefaultRider is a careful rider who does not lift the front wheel.
func DefaultRider(b Bike) Rider {
	return Rider{
		Waits:     6,
		LaunchRPM: 0.45 * b.Engine.ShiftRPM, ClutchTime: 0.35, ClutchSD: 0.1, ShiftTime: 0.2, OpenTime: 0.25,
		SpeedWander: 0.25, LeanWander: 0.012, Pace: 2.0, BrakeDecel: 2.5, TurnRadius: 4.5,
	}
}

// DefaultRoad is level and smooth. It lies in the open Atlantic, so that nobody
// takes it for a real one. Gravity is the normal gravity of WGS 84 there.
func DefaultRoad() Road {
	return Road{LatDeg: 40, LonDeg: -30, Altitude: 120, BearingDeg: 84, RoughLength: 150,
		Gravity: 9.8017}
}

// DefaultAir is a mild day. Density follows from the other three by the
// CIPM-2007 formula, rounded.
func DefaultAir() Air {
	return Air{Density: 1.202, Temperature: 18, Pressure: 100900, Humidity: 0.6}
}

// DefaultWind is a light wind along the road.
func DefaultWind() Wind {
	return Wind{SD: defaultWindSD, GustRatio: defaultGustRatio, GustTau: defaultGustTau}
}

// DefaultPhone is a phone in a holder at any attitude, 100 Hz, with engine
// vibration of 6 m/s².
func DefaultPhone() Phone {
	return Phone{
		Rate:  100,
		Accel: Accelerometer{NoiseSD: 0.02, BiasSD: 0.08, DriftSD: 0.02, DriftTau: 600, ScaleSD: 0.003, Range: 78.4},
		Gyro:  Gyroscope{NoiseSD: 0.002, BiasSD: 0.004},
		Shake: Vibration{
			RMS: 6, EngineShare: 0.7,
			Orders: []Order{{Multiple: 0.5, Weight: 0.3}, {Multiple: 1, Weight: 1}, {Multiple: 2, Weight: 0.6}},
			RefRPM: 6000, RefSpeed: 20, IdleLoad: 0.5, BounceRMS: 0.5, BounceHz: 2, TurnPerAcc: 0.01,
		},
		Stamp: Stamping{JitterSD: 0.0003, MissingProb: 0.0005},
	}
}

// HarshPhone is DefaultPhone with engine vibration of 18 m/s².
func HarshPhone() Phone {
	p := DefaultPhone()
	p.Shake.RMS = 18
	return p
}

// BrowserPhone is DefaultPhone in a browser: 60 Hz, time stamps in whole
// milliseconds, readings lost while the page draws.
func BrowserPhone() Phone {
	p := DefaultPhone()
	p.Rate = 60
	p.Stamp = Stamping{JitterSD: 0.0015, Quantum: 0.001, MissingProb: 0.01, GapsPerHour: 6, GapMean: 0.4}
	return p
}

// DefaultReceiver gives one fix a second, 0.2 s late.
func DefaultReceiver() Receiver {
	return Receiver{
		Rate: 1, Latency: 0.2, ArrivalJitterSD: 0.005,
		WhiteSD: defaultWhiteSD, CorrSD: defaultCorrSD, CorrTau: defaultCorrTau, SpeedQuantum: 0.01,
		PosSD: 2, PosTau: 60, AltSD: 4, SaysSD: true,
	}
}

// DefaultBarometer delivers ten readings a second and senses some of the dynamic
// pressure.
func DefaultBarometer() Barometer {
	return Barometer{Rate: 10, NoiseSD: 2.5, DriftSD: 15, DriftTau: 900, DynamicCoef: 0.15}
}
