package store

import (
	"maps"

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
	SetupMass    map[string]*float64 `json:"setup_mass_kg,omitempty"` // by name
}

// Apply gives a ride with the values in the place of those it was told. The
// ride that is given is left as it is.
func (v *Values) Apply(told sensors.Ride) sensors.Ride {
	r := told
	r.Setups = append([]sensors.Setup(nil), told.Setups...)
	if v == nil {
		return r
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
	return r
}

// Empty reports whether nothing was changed.
func (v Values) Empty() bool {
	for p := range maps.Values(v.SetupMass) {
		if p != nil {
			return false
		}
	}
	return v.Mass == nil && v.MassSD == nil && v.RotatingMass == nil && v.WindSD == nil && v.Air == (Air{})
}
