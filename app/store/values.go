package store

import (
	"maps"
	"math"
	"slices"

	"stillair/sensors"
)

// Values are values that a rider changed after a ride, to have it computed
// again. They are kept beside the recording, which keeps its own; what is nil
// here is taken from it.
type Values struct {
	Mass         *float64            `json:"mass_kg,omitempty"`
	MassSD       *float64            `json:"mass_sd_kg,omitempty"`
	RotatingMass *float64            `json:"rotating_mass_kg,omitempty"`
	Air          Air                 `json:"air"`
	WindSD       *float64            `json:"wind_sd_mps,omitempty"`
	Station      Station             `json:"station_wind,omitzero"`
	SetupMass    map[string]*float64 `json:"setup_mass_kg,omitempty"` // by name
	Gears        map[string]*float64 `json:"rpm_per_mps,omitempty"`   // by name
	LimitRPM     *float64            `json:"limit_rpm,omitempty"`
	Setups       []RideSetup         `json:"setups,omitempty"` // instead of the recorded ones; none: as recorded
}

// RideSetup is a setup of a ride as it was entered afterwards.
type RideSetup struct {
	From  float64  `json:"from_s"` // on the recording's clock
	Name  string   `json:"name"`
	Mass  *float64 `json:"mass_kg,omitempty"`
	Tyres string   `json:"tyres,omitempty"`
	Notes string   `json:"notes,omitempty"`
}

// SetSetups replaces the recorded setups, their weights
// with them.
func (v *Values) SetSetups(setups []sensors.Setup) {
	v.Setups, v.SetupMass = nil, nil
	for _, s := range setups {
		x := RideSetup{From: s.From, Name: s.Name, Tyres: s.Tyres, Notes: s.Notes}
		if !math.IsNaN(s.Mass) {
			x.Mass = &s.Mass
		}
		v.Setups = append(v.Setups, x)
	}
}

// Apply gives a ride with the values in place of those recorded. The
// ride that is given is left as it is.
func (v *Values) Apply(recorded sensors.Ride) sensors.Ride {
	r := recorded
	r.Setups = append([]sensors.Setup(nil), recorded.Setups...)
	if v == nil {
		return r
	}
	if len(v.Setups) > 0 {
		r.Setups = nil
		for _, s := range v.Setups {
			r.Setups = append(r.Setups, sensors.Setup{From: s.From, Name: s.Name, Mass: value(s.Mass), Tyres: s.Tyres, Notes: s.Notes})
		}
	}
	put := func(to *float64, p *float64) {
		if p != nil {
			*to = *p
		}
	}
	put(&r.Mass, v.Mass)
	put(&r.MassSD, v.MassSD)
	put(&r.RotatingMass, v.RotatingMass)
	put(&r.WindSD, v.WindSD)
	put(&r.Air.Temperature, v.Air.Temperature)
	put(&r.Air.TemperatureEnd, v.Air.TemperatureEnd)
	put(&r.Station.Speed, v.Station.Speed)
	put(&r.Station.FromDeg, v.Station.From)
	si := v.Air.SI()
	if v.Air.Pressure != nil {
		r.Air.Pressure = si.Pressure
	}
	if v.Air.Humidity != nil {
		r.Air.Humidity = si.Humidity
	}
	for i, s := range r.Setups {
		put(&r.Setups[i].Mass, v.SetupMass[s.Name])
	}
	put(&r.LimitRPM, v.LimitRPM)
	r.Gears = v.gears(recorded.Gears)
	return r
}

// gears are the recorded ones with the changed ones in their place, and then
// those that were added, in order of name.
func (v *Values) gears(recorded []sensors.Gear) []sensors.Gear {
	out := append([]sensors.Gear(nil), recorded...)
	known := map[string]bool{}
	for i, g := range out {
		known[g.Name] = true
		if p := v.Gears[g.Name]; p != nil {
			out[i].RPMPerMPS = *p
		}
	}
	for _, name := range slices.Sorted(maps.Keys(v.Gears)) {
		if p := v.Gears[name]; p != nil && !known[name] {
			out = append(out, sensors.Gear{Name: name, RPMPerMPS: *p})
		}
	}
	return out
}

// OfBike are the values that a bike has now for a ride recorded with others; what
// the bike does not give stays as recorded.
func OfBike(b Bike, recorded sensors.Ride) Values {
	v := Values{SetupMass: map[string]*float64{}, Gears: map[string]*float64{}}
	differs := func(now, then float64) *float64 {
		if math.IsNaN(now) || now == then {
			return nil
		}
		return &now
	}
	r := b.Ride("", sensors.UnknownRide().Air)
	v.Mass, v.MassSD = differs(r.Mass, recorded.Mass), differs(r.MassSD, recorded.MassSD)
	v.RotatingMass, v.LimitRPM = differs(r.RotatingMass, recorded.RotatingMass), differs(r.LimitRPM, recorded.LimitRPM)
	for _, s := range recorded.Setups {
		v.SetupMass[s.Name] = differs(b.RideSetup(s.Name, 0).Mass, s.Mass)
	}
	then := map[string]float64{}
	for _, g := range recorded.Gears {
		then[g.Name] = g.RPMPerMPS
	}
	for _, g := range r.Gears {
		v.Gears[g.Name] = differs(g.RPMPerMPS, then[g.Name])
	}
	return v
}

// Empty reports whether nothing was changed.
func (v Values) Empty() bool {
	for _, named := range []map[string]*float64{v.SetupMass, v.Gears} {
		for p := range maps.Values(named) {
			if p != nil {
				return false
			}
		}
	}
	return len(v.Setups) == 0 && v.LimitRPM == nil && v.Mass == nil && v.MassSD == nil && v.RotatingMass == nil && v.WindSD == nil && v.Air == (Air{}) && v.Station == (Station{})
}
