package sim

import (
	"math"
	"sort"
	"strconv"

	"stillair/sensors"
)

// setups is what was on the bike, as the rider told.
type setups []sensors.Setup

// fit puts a setup on the bike.
func (p *player) fit(s Setup) {
	b := p.sc.Bike
	told := math.NaN()
	if s.CdA > 0 {
		b.CdA = s.CdA
	}
	if s.Crr > 0 {
		b.Crr = s.Crr
	}
	if s.Mass > 0 {
		b.Mass = s.Mass
		told = s.Mass + p.sc.Told.MassError
	}
	p.bike, p.setup = b, s.Name
	p.setups = append(p.setups, sensors.Setup{From: p.clock(p.time()), Name: s.Name, Mass: told})
}

// finish gathers log and truth.
func (p *player) finish() *Ride {
	p.truth.Moments = p.moments.Take()
	sort.SliceStable(p.truth.Deeds, func(i, j int) bool { return p.truth.Deeds[i].Start < p.truth.Deeds[j].Start })
	return &Ride{
		Log: &sensors.Log{
			Motion: p.phone.log.Take(), Fixes: p.receiver.log, Pressure: p.baro.log.Take(), Sound: p.mic.all(), Ride: p.told(),
		},
		Truth: p.truth,
	}
}

// told is what the rider told of the ride.
func (p *player) told() sensors.Ride {
	r := sensors.UnknownRide()
	r.Setups = p.setups
	r.Axes = "specific force up"
	if p.sc.Told.Nothing {
		return r
	}
	b := p.sc.Bike
	r.Bike, r.RotatingMass = b.Name, b.RotatingMass
	r.Mass, r.MassSD = b.Mass+p.sc.Told.MassError, p.sc.Told.MassSD
	r.WindSD, r.Cylinders = p.sc.Wind.SD, b.Cylinders
	r.Air = sensors.Air{Temperature: p.sc.Air.Temperature, TemperatureEnd: math.NaN(), Pressure: p.sc.Air.Pressure, Humidity: p.sc.Air.Humidity}
	if p.sc.Told.NoGears {
		return r
	}
	for i, ratio := range b.Gears {
		r.Gears = append(r.Gears, sensors.Gear{Name: strconv.Itoa(i + 1), RPMPerMPS: ratio})
	}
	return r
}
