package usual

// Drag area of bike and rider, m². Published values reach from 0.18, a rider lying
// behind a full fairing, to 0.7 (Cossalter, Motorcycle Dynamics). A uniform
// distribution over that range has a standard deviation of 0.52/√12 = 0.15. Its
// middle is 0.44; the mean here is somewhat higher, since few riders lie down
// (common practice).
const (
	CdA   = 0.5
	CdASD = 0.15
	// LadenCdASD is the spread with panniers and passengers included, which
	// reach 0.9: 0.72/√12 = 0.2. It is for the joint classification of all
	// decelerations of a ride, which must not mistake a laden bike for one with
	// engine braking.
	LadenCdASD = 0.2
	// LeastCdA and MostCdA are the ends of that range. What is outside cannot be
	// a motorcycle that rolls freely.
	LeastCdA, MostCdA = 0.18, 0.9
)

// Mass of bike and rider, kg.
const (
	Mass = 280.0
	// MassSD is the spread over the bikes whose riders enter no mass: most weigh 160
	// to 260 kg ready to ride, with a rider of 60 to 110 kg (common practice).
	MassSD = 60.0
	// AnyMassSD is wider, relative to Mass: from a 125 to a loaded tourer with
	// a passenger. It is for detecting runs, where a bike that is lighter or
	// heavier than most must not be rejected.
	AnyMassSD = 0.3
)

// RotatingShare is the equivalent mass of the rotating wheels as a fraction of
// the mass (UN motorcycle test cycle, GTR 2: 4 %; common practice is 3 to 5 %).
const RotatingShare = 0.04

// Power is the most power at the road of an average bike, W (common practice).
const Power = 50e3
