package usual

// Slopes of roads, as standard deviations of their tangent about level (common
// practice). They differ by what is known about the road.
const (
	// LevelGrade is of a road chosen for a planned test because it looks level: two
	// metres in a kilometre cannot be seen.
	LevelGrade = 0.002
	// Grade is of a road on which full-throttle runs were ridden, level or not.
	Grade = 0.005
	// RideGrade is of all roads of a ride that is searched for coast-downs, and
	// PlaceGrade how much the place of one run differs from them.
	RideGrade, PlaceGrade = 0.006, 0.004
	// SlowingGrade is of both together, rounded up from their 0.0072: what a single
	// slowing is compared with.
	SlowingGrade = 0.008
	// PairGrade is the prior of the fit of a pair of coast-downs, which
	// determine their slope themselves: wide enough not to bias it.
	PairGrade = 0.01
)

// Wind is the standard deviation of the mean wind along the road from pair to
// pair on an ordinary day, m/s (common practice).
const Wind = 1.5

// Air of a standard day (ISO 2533 at sea level; its humidity is none, half is
// common practice).
const (
	Celsius  = 15.0
	Pascals  = 101325.0
	Humidity = 0.5
)
