package sim

import (
	"stillair/sensors"

	"gonum.org/v1/gonum/spatial/r3"
)

// Ride is a simulated ride.
type Ride struct {
	Log   *sensors.Log
	Truth *Truth
}

// Truth is what really happened. All times are on the log's clock.
type Truth struct {
	Moments   []Moment // evenly spaced, except for the last
	Events    []Event  // what the rider did, in order of Start
	Mounts    []Mount  // how the phone was fixed, in order of From
	Lag       float64  // receiver latency, s
	SmoothTau float64  // receiver smoothing, s
	AccelBias r3.Vec   // at the start, m/s², phone axes
	Scale     r3.Vec   // scale errors of the accelerometer's axes
	GyroBias  r3.Vec   // rad/s, phone axes
	Winds     []Spell  // the mean winds drawn, in order of From
}

// Moment is the true state at one instant.
type Moment struct {
	T        float64
	V        float64 // speed, m/s
	A        float64 // dV/dT, m/s²
	S        float64 // distance ridden, m
	X        float64 // position along the road, m
	Y        float64 // left of the way out, m
	Height   float64 // above the road's altitude at x = 0, m
	Heading  float64 // against the way out, left positive, rad
	Slope    float64 // sine of the slope in the direction of travel
	Head     float64 // head wind with gusts, m/s; air speed is V + Head
	Cross    float64 // wind across the path with gusts, m/s
	RPM      float64 // engine speed, 1/min
	Gear     int     // from 1
	Throttle float64 // 0 to 1
	Clutch   float64 // 0 open, 1 closed, in between: slipping
	Drive    float64 // force of the engine at the road, without the part that accelerates the engine itself, N
	Brake    float64 // N
	Yaw      float64 // turn rate about the vertical, left positive, rad/s
	Lean     float64 // left positive, rad
	Pitch    float64 // of the chassis against the road, nose up positive, rad
}

// Mount is the phone's attitude on the bike from a time on.
type Mount struct {
	From              float64
	Forward, Left, Up r3.Vec // the bike's axes in phone axes, unit vectors
}

// Spell is a period of one mean wind.
type Spell struct {
	From  float64
	Along float64 // against the way out, m/s
	Cross float64 // against the left of the way out, m/s
}

// Kind is the kind of an event.
type Kind string

// Kinds of event. The first five are those that a detector should find.
const (
	KindLaunch    Kind = "launch"
	KindRollOn    Kind = "roll-on"
	KindPull      Kind = "pull"
	KindCoastDown Kind = "coast-down"
	KindStop      Kind = "stop"
	KindStand     Kind = "stand"
	KindEngine    Kind = "engine braking"
	KindTurn      Kind = "turn-round"
	KindTown      Kind = "town"
	KindPush      Kind = "push"
	KindPart      Kind = "part throttle"
	KindCountry   Kind = "country"
)

// Event is one act of the rider, with its exact times.
type Event struct {
	Kind       Kind
	Start, End float64 // launch: first movement to throttle closed; coast-down: clutch open to clutch closed or throttle or brake
	From, To   float64 // speed at Start and End, m/s
	Dist       float64 // between Start and End, m
	X          float64 // position along the road at Start, m
	Out        bool    // heading out
	Gear       int     // at Start, from 1
	Setup      string
	Pair       int      // coast-downs: the pair, from 1; 0: none
	Rollout    float64  // launch: 0.3048 m after first movement; else 0
	Spoilt     []string // what went wrong, in words; empty: nothing
}
