package runs

import (
	"math"

	"stillair/runs/air"
	"stillair/runs/measure"
	"stillair/runs/usual"
	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// Defaults where the rider entered nothing. Mass is the one default that
// matters: drag area is proportional to it, so a bike of unknown mass gets an
// average one with a wide uncertainty and a warning.
const (
	weighedSD     = 0.015 // relative, for a mass entered without an uncertainty
	plausibleLoad = 10.0  // kg, standard deviation of the weight of a change of setup that was not entered: half of two packed cases, two thirds of a full tank (common practice)
	heavy         = 500.0 // kg; the weight of a large tourer with two riders and luggage (common practice); in pounds most bikes with a rider have a larger number
)

// conditions are the ride's entries with defaults filled in.
type conditions struct {
	ride     sensors.Ride
	air      air.State
	entered  bool            // the air pressure was entered and is used
	warmer   float64         // K, air at the end of the ride relative to its start
	weighed  map[string]bool // setups whose mass was entered
	defaults []string
	warnings []finding.Finding
	scaleSE  float64 // of all speeds, relative, if they had to be corrected
}

// settle fills in defaults for what the rider did not enter.
func settle(log *sensors.Log) conditions {
	c := conditions{ride: log.Ride, weighed: map[string]bool{}}
	for _, s := range log.Ride.Setups {
		c.weighed[s.Name] = c.weighed[s.Name] || !math.IsNaN(s.Mass)
	}
	c.ride.Setups = append([]sensors.Setup(nil), log.Ride.Setups...)
	c.settleMass()
	c.settleAir(log)
	if c.missing("wind_sd_mps", c.ride.WindSD) {
		c.ride.WindSD = usual.Wind
	}
	return c
}

// missing reports whether a value was not entered, and records the use of its
// default.
func (c *conditions) missing(name string, entered float64) bool {
	if math.IsNaN(entered) {
		c.defaults = append(c.defaults, name)
	}
	return math.IsNaN(entered)
}

func (c *conditions) settleMass() {
	r := &c.ride
	massEntered := true
	c.warnOfPounds()
	if c.missing("mass_kg", r.Mass) {
		massEntered = false
		r.Mass = usual.Mass
		c.warnings = append(c.warnings, finding.New(codeUsualMass, finding.Mass("mass", usual.Mass).With(usual.MassSD)))
	}
	if c.missing("mass_sd_kg", r.MassSD) {
		r.MassSD = weighedSD * r.Mass
		if !massEntered {
			r.MassSD = usual.MassSD
		}
	}
	if c.missing("rotating_mass_kg", r.RotatingMass) {
		r.RotatingMass = usual.RotatingShare * r.Mass
	}
	for i := range r.Setups {
		if math.IsNaN(r.Setups[i].Mass) {
			r.Setups[i].Mass = r.Mass
		}
	}
}

// doubtMass warns if the largest mass entered is probably in pounds.
func (c *conditions) warnOfPounds() {
	most := c.ride.Mass
	for _, s := range c.ride.Setups {
		if s.Mass > most || math.IsNaN(most) {
			most = s.Mass
		}
	}
	if most > heavy {
		c.warnings = append(c.warnings, finding.New(codeMaybePounds, finding.Mass("entered", most), finding.Mass("pounds", most*units.Pound)))
	}
}

func (c *conditions) settleAir(log *sensors.Log) {
	a := &c.ride.Air
	if math.IsNaN(a.Temperature) {
		a.Temperature = a.TemperatureEnd // used for the whole ride if only one is known
	}
	if warmer := a.TemperatureEnd - a.Temperature; !math.IsNaN(warmer) {
		c.warmer = warmer
	}
	c.air.Temperature = measure.Value{X: a.Temperature + c.warmer/2, SE: 1.5}
	if c.missing("air.temperature_c", a.Temperature) {
		a.Temperature = usual.Celsius
		c.air.Temperature = measure.Value{X: usual.Celsius, SE: 8}
	}
	c.settlePressure(log)
	c.air.Humidity = measure.Value{X: a.Humidity, SE: 0.1}
	if c.missing("air.humidity_pct", a.Humidity) {
		a.Humidity = usual.Humidity
		c.air.Humidity = measure.Value{X: usual.Humidity, SE: 0.25}
	}
}

// altitude is the mean altitude of the fixes, m; 0 if they have none.
func altitude(log *sensors.Log) float64 {
	sum, n := 0.0, 0
	for _, f := range log.Fixes {
		if !math.IsNaN(f.Alt) {
			sum, n = sum+f.Alt, n+1
		}
	}
	if n == 0 {
		return 0
	}
	return sum / float64(n)
}

// gravityAt is the acceleration of gravity where the ride was, m/s².
func gravityAt(log *sensors.Log) float64 {
	for _, f := range log.Fixes {
		if f.HasPosition() {
			return air.Gravity(f.LatDeg, altitude(log))
		}
	}
	return air.Gravity(45, altitude(log))
}
