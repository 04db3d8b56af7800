package sensors

import "math"

// Ride holds the rider's entries about a ride: the bike, the air, the setups.
// Numbers that were not entered are NaN; package runs uses defaults instead and
// lists them.
type Ride struct {
	Bike         string
	Mass         float64 // bike, rider, fuel and luggage as ridden, kg
	MassSD       float64 // standard deviation of Mass, kg
	RotatingMass float64 // equivalent mass of the rotating wheels, kg
	Air          Air
	WindSD       float64 // standard deviation of the wind along the road between pairs, m/s
	Station      Wind    // measured by a weather station nearby
	Gears        []Gear
	LimitRPM     float64 // highest engine speed, 1/min
	Cylinders    int     // of the engine; 0: not entered
	Drive        Drive   // connection between engine and wheel
	Axes         string  // "specific force up", "specific force down" or "" (inferred from the log)
	Setups       []Setup
}

// Air is the state of the air; NaN if not entered.
type Air struct {
	Temperature    float64 // °C
	TemperatureEnd float64 // °C at the end of the ride, if Temperature is that of its start; NaN: constant
	Pressure       float64 // Pa
	Humidity       float64 // relative, 0 to 1
}

// Wind is a steady wind; NaN if not entered.
type Wind struct {
	Speed   float64 // m/s
	FromDeg float64 // where it comes from, degrees clockwise from north
}

// Gear is one gear of the bike.
type Gear struct {
	Name      string
	RPMPerMPS float64 // engine speed in 1/min per m/s of road speed
}

// Setup is the configuration of the bike from a time of the log on, until the next.
type Setup struct {
	From float64 // s on the log's clock
	Name string
	Mass float64 // kg as ridden with this setup; NaN: the ride's
	// Tyres is the rider's note about tyres and pressures. Setups with the same
	// note, or none, are assumed to have the same rolling resistance.
	Tyres string
	Notes string // the rider's other notes
}

// UnknownRide returns a ride about which nothing was entered.
func UnknownRide() Ride {
	nan := math.NaN()
	return Ride{Mass: nan, MassSD: nan, RotatingMass: nan, WindSD: nan, LimitRPM: nan,
		Air: Air{Temperature: nan, TemperatureEnd: nan, Pressure: nan, Humidity: nan}, Station: Wind{Speed: nan, FromDeg: nan}}
}

// SetupAt returns the setup at t: the last whose From is not after t. Before
// the first, or if there are none, it is a setup without a name.
func (r Ride) SetupAt(t float64) Setup {
	at := Setup{From: math.Inf(-1), Mass: math.NaN()}
	for _, s := range r.Setups {
		if s.From <= t && s.From >= at.From {
			at = s
		}
	}
	return at
}
