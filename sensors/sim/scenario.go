package sim

import (
	"time"

	"gonum.org/v1/gonum/spatial/r3"
)

// Scenario is everything that determines a ride except the seed. Start from one
// of the Default functions and change fields.
type Scenario struct {
	Bike     Bike
	Rider    Rider
	Road     Road
	Air      Air
	Wind     Wind
	Phone    Phone
	Receiver Receiver
	Baro     Barometer
	Entered  Entered
	Plan     []Act

	Microphone Microphone // zero: no sound is recorded

	Start     time.Time // UTC of the first instant
	ClockZero float64   // reading of the log's clock at the first instant, s
	TruthRate float64   // moments of Truth a second, at most 100; the nearest whole divisor of 100 is used
}

// Bike is a motorcycle with its rider as ridden.
type Bike struct {
	Name         string
	Mass         float64 // bike, rider, fuel and luggage, kg
	RotatingMass float64 // equivalent mass of the rotating wheels, kg
	CdA          float64 // drag area, m²
	Crr          float64 // rolling resistance at standstill
	CrrSlope     float64 // k of Crr·(1+k·v), s/m
	Engine       Engine
	Cylinders    int       // as the rider entered it; 0: not entered
	Gears        []float64 // engine speed in 1/min per m/s of road speed, first gear first
	LiftAccel    float64   // drive force is limited to Mass·LiftAccel: front wheel or grip, m/s²
	Pitch        Pitch
	NoClutch     bool    // a belt or a motor that always turns with the wheel
	OilDrag      float64 // drag of clutch and gearbox while the bike rolls, N
	Cornering    float64 // sideways force per slip angle of both tyres, N/rad; 0: bends cost nothing
}

// Engine is an invented engine.
type Engine struct {
	Torque     []TorquePoint // full throttle at the crank, rising in RPM; straight lines between
	Efficiency float64       // crank to road
	Inertia    float64       // crank and clutch, kg·m²
	DragTorque float64       // closed throttle, at the highest RPM; half of it at standstill, Nm
	IdleRPM    float64
	ShiftRPM   float64 // full throttle gear change
}

// TorquePoint is one point of a torque curve.
type TorquePoint struct{ RPM, Nm float64 }

// Pitch is the squat and dive of the chassis: a damped spring driven by the
// forward acceleration.
type Pitch struct {
	PerAccel float64 // nose-up angle for a steady forward acceleration, rad/(m/s²)
	Hz       float64 // natural frequency
	Damping  float64 // fraction of critical
}

// Rider is how the plan is ridden.
type Rider struct {
	Waits       float64 // at rest before the plan begins, while recording, s
	LaunchRPM   float64 // engine speed held while the clutch slips
	ClutchTime  float64 // from first bite to full clutch force, s
	TakeUp      TakeUp  // how the clutch engages in that time
	ClutchSD    float64 // spread of ClutchTime between launches, as a fraction of it
	ShiftTime   float64 // torque interruption of a full-throttle gear change, s
	OpenTime    float64 // opening the throttle from closed to full, s
	SpeedWander float64 // sd of the speed about the one being held, m/s
	LeanWander  float64 // sd of the lean while riding straight, rad
	Pace        float64 // acceleration at part throttle between acts, m/s²
	PaceVaries  float64 // spread of Pace, and of the most throttle used, from one acceleration to the next, as a fraction
	BrakeDecel  float64 // braking between acts, m/s²
	TurnRadius  float64 // of a U-turn, m
}

// Road is the road of the ride: straight, with a position x in metres along
// it. Heading out, x grows.
type Road struct {
	LatDeg, LonDeg float64 // where x is 0
	Altitude       float64 // where x is 0, m
	BearingDeg     float64 // of the way out, degrees clockwise from north
	Grade          float64 // mean sine of the slope on the way out
	RoughSD        float64 // sd of the slope about the mean (0.002: 0.2 %)
	RoughLength    float64 // correlation length of the slope, m
	Gravity        float64 // m/s²
	Bends          []Curve // in order of X
	Seed           uint64  // of the profile, for several rides on one road; 0: the seed of the ride
}

// Curve is a bend of the road: it tightens and opens linearly over its length.
type Curve struct{ X, Length, Angle float64 } // m, m, rad; left positive on the way out

// Air is the state of the air.
type Air struct {
	Density     float64 // kg/m³
	Temperature float64 // °C
	Pressure    float64 // Pa, at the road's Altitude
	Humidity    float64 // relative, 0 to 1
}

// Wind is the distribution of the wind.
type Wind struct {
	SD        float64 // sd of the mean wind along the road, m/s
	CrossSD   float64 // sd of the mean wind across the road, m/s
	GustRatio float64 // sd of the gusts as a fraction of SD (and of CrossSD across)
	GustTau   float64 // time constant of the gusts, s
}

// Phone is the phone's motion sensors and its mount.
type Phone struct {
	Mount *r3.Rotation // takes bike axes (forward, left, up) to phone axes; nil: drawn at random
	Slips []Slip
	Rate  float64 // readings a second; 0: no motion sensors
	Accel Accelerometer
	Gyro  Gyroscope
	Shake Vibration
	Stamp Stamping
}

// Slip is a sudden change of the phone's attitude.
type Slip struct {
	At    float64 // s since the start of the ride
	Axis  r3.Vec  // bike axes
	Angle float64 // rad
}

// Accelerometer holds the errors of the accelerometer. Values that are "drawn"
// are the sds of one draw per ride and axis.
type Accelerometer struct {
	NoiseSD  float64 // white, per reading and axis, m/s²
	BiasSD   float64 // drawn, m/s²
	DriftSD  float64 // sd of the slow change of the bias, m/s²
	DriftTau float64 // its time constant, s
	ScaleSD  float64 // drawn, as a fraction
	Range    float64 // readings are clipped at ± this, m/s²; 0: never
	CutOffHz float64 // anti-alias filter (second-order magnitude); 0: none
}

// Gyroscope holds the errors of the gyroscope.
type Gyroscope struct {
	Absent  bool    // turn rates are NaN
	NoiseSD float64 // white, per reading and axis, rad/s
	BiasSD  float64 // drawn, rad/s
}

// Vibration is the vibration of engine and road at the accelerometer. RMS is the
// size of the whole vector (root of the sum of three axes' mean squares) at full
// throttle at RefRPM and RefSpeed; elsewhere it differs: the orders of the
// engine depend on engine speed and load, road noise on speed.
type Vibration struct {
	RMS         float64 // m/s²
	EngineShare float64 // share of the engine in RMS²
	Orders      []Order // orders of the engine
	RefRPM      float64 // 1/min
	RefSpeed    float64 // m/s
	IdleLoad    float64 // amplitude without load, as a fraction of that at full throttle
	BounceRMS   float64 // vertical bounce on the springs at RefSpeed, m/s²
	BounceHz    float64 // its frequency
	TurnPerAcc  float64 // turn-rate noise per m/s² of road noise, rad/s
}

// Order is one order of the engine's vibration.
type Order struct {
	Multiple  float64 // of the engine speed
	Weight    float64 // amplitude, relative to the other orders
	Direction r3.Vec  // phone axes; zero: drawn at random
}

// Stamping describes the time stamps and losses of readings.
type Stamping struct {
	JitterSD    float64 // of the time stamp relative to the reading, s
	Quantum     float64 // stamps are rounded to a multiple of it, s; 0: not rounded
	MissingProb float64 // each reading is lost with this probability
	GapsPerHour float64 // on average
	GapMean     float64 // mean length of a gap, s
}

// Receiver is the satellite receiver.
type Receiver struct {
	Rate            float64 // fixes a second; 0: no receiver
	Latency         float64 // from the instant that a fix describes to its arrival, s
	ArrivalJitterSD float64 // s
	SmoothTau       float64 // first-order smoothing of the speed, s; 0: none
	WhiteSD         float64 // white error of the velocity, per component, m/s
	CorrSD          float64 // correlated error of the velocity, per component, m/s
	CorrTau         float64 // its time constant, s
	SpeedQuantum    float64 // m/s; 0: none
	HoldBelow       float64 // speeds below this are reported as 0, m/s; 0: never
	PosSD           float64 // correlated position error, per component, m
	PosTau          float64 // its time constant, s
	AltSD           float64 // correlated altitude error, m
	SaysSD          bool    // SpeedSD and HSD are reported
	DropsPerHour    float64 // drop-outs, on average
	DropMean        float64 // mean length of a drop-out, s
}

// Barometer is the pressure sensor.
type Barometer struct {
	Rate        float64 // readings a second; 0: none
	NoiseSD     float64 // white, Pa
	DriftSD     float64 // slow change, Pa
	DriftTau    float64 // its time constant, s
	DynamicCoef float64 // share of the dynamic pressure ½ρu² that is measured
}

// Entered is what the rider entered about the ride; it becomes Log.Ride.
type Entered struct {
	MassError float64 // entered mass minus true mass, kg
	MassSD    float64 // its uncertainty as entered, kg
	Nothing   bool    // nothing was entered except the setups' names
	NoGears   bool    // gear ratios were not entered
}
