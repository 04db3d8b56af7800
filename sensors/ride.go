package sensors

import "math"

// Ride is what the rider entered about a ride: the bike, the air, the setups.
// Numbers that were not entered are NaN; package runs puts defaults in their
// place and says which.
type Ride struct {
	Bike         string
	Mass         float64 // bike, rider, fuel and luggage as ridden, kg
	MassSD       float64 // standard deviation of Mass, kg
	RotatingMass float64 // what the wheels add to the inertia, kg
	Air          Air
	WindSD       float64 // standard deviation of the wind along the road between pairs, m/s
	Station      Wind    // what a weather station nearby gives
	Gears        []Gear
	LimitRPM     float64 // highest engine speed, 1/min
	Cylinders    int     // of the engine; 0: not entered
	Drive        Drive   // what holds engine and wheel together
	Axes         string  // "specific force up", "specific force down" or "" (find out from the log)
	Setups       []Setup
}

// Air is the state of the air; NaN where it was not entered.
type Air struct {
	Temperature    float64 // °C
	TemperatureEnd float64 // °C at the end of the ride, Temperature being that of its start; NaN: it stayed
	Pressure       float64 // Pa
	Humidity       float64 // relative, 0 to 1
}

// Wind is a steady wind; NaN where it was not entered.
type Wind struct {
	Speed   float64 // m/s
	FromDeg float64 // where it comes from, degrees clockwise from north
}

// Gear is one gear of the bike.
type Gear struct {
	Name      string
	RPMPerMPS float64 // engine speed in 1/min for each m/s of road speed
}

// Setup says what was on the bike from a time of the log on, until the next.
type Setup struct {
	From float64 // s on the log's clock
	Name string
	Mass float64 // kg as ridden with this setup; NaN: the ride's
	// Tyres says which tyres at which pressure, in the rider's words. Setups
	// that say the same, or nothing, are taken to roll alike.
	Tyres string
	Notes string // whatever else the rider wants to remember of it
}

// UnknownRide returns a ride about which nothing was entered.
func UnknownRide() Ride {
	nan := math.NaN()
	return Ride{Mass: nan, MassSD: nan, RotatingMass: nan, WindSD: nan, LimitRPM: nan,
		Air: Air{Temperature: nan, TemperatureEnd: nan, Pressure: nan, Humidity: nan}, Station: Wind{Speed: nan, FromDeg: nan}}
}

// SetupAt returns the setup in force at t: the last whose From is not after
// t. Before the first, and where none is named, it is a setup without a name.
func (r Ride) SetupAt(t float64) Setup {
	at := Setup{From: math.Inf(-1), Mass: math.NaN()}
	for _, s := range r.Setups {
		if s.From <= t && s.From >= at.From {
			at = s
		}
	}
	return at
}
