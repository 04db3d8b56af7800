package sim

import (
	"math"
	"sort"
	"strconv"

	"stillair/sensors"
)

// setups are the setups as the rider entered them.
type setups []sensors.Setup

// fit applies a setup to the bike.
func (p *player) fit(s Setup) {
	b := p.sc.Bike
	entered := math.NaN()
	if s.CdA > 0 {
		b.CdA = s.CdA
	}
	if s.Crr > 0 {
		b.Crr = s.Crr
	}
	if s.Mass > 0 {
		b.Mass = s.Mass
		entered = s.Mass + p.sc.Entered.MassError
	}
	p.bike, p.setup = b, s.Name
	p.setups = append(p.setups, sensors.Setup{From: p.clock(p.time()), Name: s.Name, Mass: entered})
}

// finish assembles log and truth.
func (p *player) finish() *Ride {
	p.truth.Moments = p.moments.Take()
	sort.SliceStable(p.truth.Events, func(i, j int) bool { return p.truth.Events[i].Start < p.truth.Events[j].Start })
	return &Ride{
		Log: &sensors.Log{
			Motion: p.phone.log.Take(), Fixes: p.receiver.log, Pressure: p.baro.log.Take(), Sound: p.mic.all(), Ride: p.entered(),
		},
		Truth: p.truth,
	}
}

// entered is what the rider entered about the ride.
func (p *player) entered() sensors.Ride {
	r := sensors.UnknownRide()
	r.Setups = p.setups
	r.Axes = "specific force up"
	if p.sc.Entered.Nothing {
		return r
	}
	b := p.sc.Bike
	r.Bike, r.RotatingMass = b.Name, b.RotatingMass
	r.Mass, r.MassSD = b.Mass+p.sc.Entered.MassError, p.sc.Entered.MassSD
	r.WindSD, r.Cylinders = p.sc.Wind.SD, b.Cylinders
	r.Air = sensors.Air{Temperature: p.sc.Air.Temperature, TemperatureEnd: math.NaN(), Pressure: p.sc.Air.Pressure, Humidity: p.sc.Air.Humidity}
	if p.sc.Entered.NoGears {
		return r
	}
	for i, ratio := range b.Gears {
		r.Gears = append(r.Gears, sensors.Gear{Name: strconv.Itoa(i + 1), RPMPerMPS: ratio})
	}
	return r
}
