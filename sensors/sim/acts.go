package sim

// Act is one manoeuvre of the rider. Only this package defines acts; speeds are
// in m/s, times in s, lengths in m.
type Act interface {
	play(p *player)
}

// Stand waits at a standstill, after stopping if the bike rolls.
type Stand struct{ Seconds float64 }

// Launch starts from standstill with a slipping clutch and then full throttle
// through the gears until ToSpeed and ToDist (from first movement) are both
// reached; zero means no limit. With Creep (m/s) the rider first creeps up to
// the line for two seconds and then stands for CreepRest; if that is 0 the
// launch is a rolling one.
type Launch struct {
	ToSpeed, ToDist  float64
	Creep, CreepRest float64
	Antics           []Antic
}

// RollOn holds a speed a little below From in a gear and opens the throttle
// fully until To is passed. Gear 0 is the highest.
type RollOn struct {
	Gear     int
	From, To float64
}

// Pull is full throttle in one gear over its range of engine speed. From may be
// 0: a quarter of ShiftRPM. To may be 0: ShiftRPM, or the speed at which the
// bike hardly accelerates. Gear 0 is the second highest.
type Pull struct {
	Gear     int
	From, To float64
}

// CoastDown pulls the clutch at From and rolls until To, the engine idling.
type CoastDown struct {
	From, To float64
	Spoils   []Spoil
}

// CoastPair is two coast-downs on the same stretch, out and back, in one mean
// wind drawn for the pair. Both begin at the outer ends of the stretch that
// starts at the road position X and is as long as a coast-down in still air, or
// Farther beyond these ends in their direction.
type CoastPair struct {
	X, From, To float64
	Farther     float64    // m
	Spoils      [2][]Spoil // out, back
}

// Spoil disturbs a coast-down once its speed has fallen to AtSpeed.
type Spoil struct {
	Kind    SpoilKind
	AtSpeed float64
	Seconds float64
	Size    float64 // Brush: brake force, N; Truck: peak of the wind, m/s; GearIn: not used; Posture: share of CdA
}

// SpoilKind is what goes wrong in a coast-down.
type SpoilKind string

// Kinds of spoil.
const (
	Brush   SpoilKind = "brush"
	Truck   SpoilKind = "truck" // one period of wind: first in the face, then from behind
	GearIn  SpoilKind = "gear"
	Posture SpoilKind = "posture"
)

// Brake slows to a speed; 0 is a stop. If Decel is 0, the rider's value is used.
type Brake struct{ To, Decel float64 }

// EngineBrake closes the throttle in a gear until To is reached. Gear 0 is the
// current one.
type EngineBrake struct {
	Gear int
	To   float64
}

// Reach rides to a speed at part throttle or on the brake.
type Reach struct{ Speed float64 }

// Hold rides at a constant speed for a time.
type Hold struct{ Speed, Seconds float64 }

// TurnRound slows down, turns by 180° to the left and heads exactly the other way.
type TurnRound struct{}

// Bend rides a bend at the current speed: Angle in rad, left positive.
type Bend struct{ Angle, Radius float64 }

// Push drives with an ideal force or power, without gearbox and engine inertia,
// until ToSpeed and ToDist are both reached. The smaller of Force (N) and Power
// (W) acts; zero means no limit.
type Push struct{ Force, Power, ToSpeed, ToDist float64 }

// NewWind draws another mean wind, which settles within some seconds.
type NewWind struct{}

// Change stops and changes the setup of the bike.
type Change struct {
	Setup   Setup
	Seconds float64 // standing while it is done
}

// Setup is a change of the bike. Zero fields leave the Scenario's bike unchanged.
type Setup struct {
	Name           string
	CdA, Mass, Crr float64
}

// Jolt is a pothole or a kerb: half a sine in the accelerometer, without effect
// on the speed.
type Jolt struct{ Up, Along, Seconds float64 } // m/s², m/s², s

// Town is everyday riding with stops, part-throttle starts, turns, braking,
// lights, potholes and speed bumps, and nothing in it that counts as a run.
// It ends at a standstill, heading out.
type Town struct{ Minutes float64 }
