package sensors

import (
	"context"

	"stillair/sensors/finding"
)

// Sensor names one of the phone's sensors.
type Sensor string

// The sensors that a source may have.
const (
	SensorMotion   Sensor = "motion"   // accelerometer, with or without gyroscope
	SensorTurn     Sensor = "turn"     // gyroscope alone
	SensorFix      Sensor = "fix"      // satellite receiver
	SensorPressure Sensor = "pressure" // barometer
	SensorSound    Sensor = "sound"    // microphone; only with the rider's permission, and not reported as missing otherwise
)

// Condition is the condition of a sensor.
type Condition string

// The conditions of a sensor. A sensor without a reported condition counts as
// working once its first sample arrives.
const (
	Working   Condition = "working"   // samples arrive
	Asking    Condition = "asking"    // the rider is being asked for permission
	Denied    Condition = "denied"    // permission was refused
	Missing   Condition = "missing"   // the device has no such sensor
	Silent    Condition = "silent"    // it worked and stopped delivering
	Available Condition = "available" // it exists but does not deliver yet
)

// State reports a change of a sensor's condition.
type State struct {
	T         float64 // s on the log's clock
	Sensor    Sensor
	Condition Condition
	Detail    finding.Finding // message to the rider; may be zero
}

// Sink receives the samples of a source. A source calls it from one goroutine,
// so an implementation needs no locking. The calls must return quickly: a slow
// sink makes a live source lose samples.
type Sink interface {
	Motion(Motion)
	Fix(Fix)
	Pressure(Pressure)
	Sound(Sound)
	State(State)
}

// Source is anything that delivers samples: the sensors of a phone, a recorded
// log, a simulated ride.
//
// Run delivers to sink until the source has no more (nil), ctx ends (ctx.Err())
// or the source as a whole fails (any other error). A single sensor that is
// missing, denied or silent is not a failure: it is reported as a State and the rest
// continues. Samples of one kind come in order of T, never twice with the same T
// (stretches of sound in order and without overlap, except for a part of a value);
// samples of different kinds may be interleaved by up to a second or so, as
// phones deliver them. After Run returns the sink is not called again. Run may be
// called once.
type Source interface {
	Run(ctx context.Context, sink Sink) error
}
