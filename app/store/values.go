package store

import (
	"maps"
	"math"
	"slices"

	"stillair/sensors"
)

// Values are values that a rider changed after a ride, to have it computed
// anew. They stand beside the recording, which keeps what it was told; what is
// nil here is taken from it.
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
	Setups       []RideSetup         `json:"setups,omitempty"` // in the place of all that were told; none: as told
}

// RideSetup is a setup of a ride as it was told afterwards.
type RideSetup struct {
	From  float64  `json:"from_s"` // on the recording's clock
	Name  string   `json:"name"`
	Mass  *float64 `json:"mass_kg,omitempty"`
	Tyres string   `json:"tyres,omitempty"`
	Notes string   `json:"notes,omitempty"`
}

// SetSetups puts setups in the place of those that were told, their weights
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

// Apply gives a ride with the values in the place of those it was told. The
// ride that is given is left as it is.
func (v *Values) Apply(told sensors.Ride) sensors.Ride {
	r := told
	r.Setups = append([]sensors.Setup(nil), told.Setups...)
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
	r.Gears = v.gears(told.Gears)
	return r
}

// gears are those that were told with the changed ones in their place, and then
// those that were not told, in order of name.
func (v *Values) gears(told []sensors.Gear) []sensors.Gear {
	out := append([]sensors.Gear(nil), told...)
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

// OfBike are the values that a bike has now for a ride that was told others;
// what the bike does not tell stays as the ride was told.
func OfBike(b Bike, told sensors.Ride) Values {
	v := Values{SetupMass: map[string]*float64{}, Gears: map[string]*float64{}}
	differs := func(now, then float64) *float64 {
		if math.IsNaN(now) || now == then {
			return nil
		}
		return &now
	}
	r := b.Ride("", sensors.UnknownRide().Air)
	v.Mass, v.MassSD = differs(r.Mass, told.Mass), differs(r.MassSD, told.MassSD)
	v.RotatingMass, v.LimitRPM = differs(r.RotatingMass, told.RotatingMass), differs(r.LimitRPM, told.LimitRPM)
	for _, s := range told.Setups {
		v.SetupMass[s.Name] = differs(b.RideSetup(s.Name, 0).Mass, s.Mass)
	}
	then := map[string]float64{}
	for _, g := range told.Gears {
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
