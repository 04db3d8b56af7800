package session

import (
	"encoding/json"
	"math"

	"stillair/sensors"
)

// rideJSON is ride.json of the plain log, version 1. Absent numbers are nil.
type rideJSON struct {
	Version      int         `json:"version"`
	Bike         string      `json:"bike,omitempty"`
	Mass         *float64    `json:"mass_kg,omitempty"`
	MassSD       *float64    `json:"mass_sd_kg,omitempty"`
	RotatingMass *float64    `json:"rotating_mass_kg,omitempty"`
	Air          *airJSON    `json:"air,omitempty"`
	WindSD       *float64    `json:"wind_sd_mps,omitempty"`
	Gears        []gearJSON  `json:"gears,omitempty"`
	Axes         string      `json:"axes,omitempty"`
	Setups       []setupJSON `json:"setups,omitempty"`
}

type airJSON struct {
	Temperature *float64 `json:"temperature_c,omitempty"`
	Pressure    *float64 `json:"pressure_hpa,omitempty"`
	Humidity    *float64 `json:"humidity_pct,omitempty"`
}

type gearJSON struct {
	Name      string   `json:"name"`
	RPMPerMPS *float64 `json:"rpm_per_mps,omitempty"`
}

type setupJSON struct {
	From *float64 `json:"from_s,omitempty"`
	Name string   `json:"name"`
	Mass *float64 `json:"mass_kg,omitempty"`
}

// MarshalRide returns ride as the plain log's ride.json, on one line.
func MarshalRide(ride sensors.Ride) []byte {
	j := rideJSON{Version: 1, Bike: ride.Bike, Axes: ride.Axes,
		Mass: told(ride.Mass, 1), MassSD: told(ride.MassSD, 1), RotatingMass: told(ride.RotatingMass, 1),
		WindSD: told(ride.WindSD, 1)}
	air := airJSON{Temperature: told(ride.Air.Temperature, 1), Pressure: told(ride.Air.Pressure, 0.01),
		Humidity: told(ride.Air.Humidity, 100)}
	if air != (airJSON{}) {
		j.Air = &air
	}
	for _, g := range ride.Gears {
		j.Gears = append(j.Gears, gearJSON{Name: g.Name, RPMPerMPS: told(g.RPMPerMPS, 1)})
	}
	for _, s := range ride.Setups {
		j.Setups = append(j.Setups, setupJSON{From: told(s.From, 1), Name: s.Name, Mass: told(s.Mass, 1)})
	}
	out, err := json.Marshal(j)
	if err != nil {
		panic("session: a ride of strings and finite numbers did not marshal: " + err.Error())
	}
	return out
}

// unmarshalRide reads what MarshalRide wrote.
func unmarshalRide(text string) (sensors.Ride, error) {
	var j rideJSON
	if err := json.Unmarshal([]byte(text), &j); err != nil {
		return sensors.UnknownRide(), err
	}
	ride := sensors.Ride{Bike: j.Bike, Axes: j.Axes, Mass: orNaN(j.Mass, 1), MassSD: orNaN(j.MassSD, 1),
		RotatingMass: orNaN(j.RotatingMass, 1), WindSD: orNaN(j.WindSD, 1), Air: sensors.UnknownRide().Air}
	if j.Air != nil {
		ride.Air = sensors.Air{Temperature: orNaN(j.Air.Temperature, 1), Pressure: orNaN(j.Air.Pressure, 100),
			Humidity: orNaN(j.Air.Humidity, 0.01)}
	}
	for _, g := range j.Gears {
		ride.Gears = append(ride.Gears, sensors.Gear{Name: g.Name, RPMPerMPS: orNaN(g.RPMPerMPS, 1)})
	}
	for _, s := range j.Setups {
		from := orNaN(s.From, 1)
		if s.From == nil {
			from = math.Inf(-1)
		}
		ride.Setups = append(ride.Setups, sensors.Setup{From: from, Name: s.Name, Mass: orNaN(s.Mass, 1)})
	}
	return ride, nil
}

// told returns x in the file's unit, nil where it is no finite number. Twelve
// digits hide what the conversion of a unit adds in the last place.
func told(x, scale float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	y := x * scale
	if scale != 1 {
		y = math.Round(y*1e9) / 1e9
	}
	return &y
}

func orNaN(x *float64, scale float64) float64 {
	if x == nil {
		return math.NaN()
	}
	return *x * scale
}
