package plain

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"

	"stillair/sensors"
	"stillair/sensors/internal/jsontext"
	"stillair/sensors/internal/repair"
)

// EncodeRide writes the rider's entries in the format of ride.json; DecodeRide
// returns the same values to the last bit.
func EncodeRide(r sensors.Ride) []byte {
	var o object
	o.raw("version", "1")
	o.text("bike", r.Bike)
	o.number("mass_kg", r.Mass, 0)
	o.number("mass_sd_kg", r.MassSD, 0)
	o.number("rotating_mass_kg", r.RotatingMass, 0)
	var air object
	air.number("temperature_c", r.Air.Temperature, 0)
	air.number("temperature_end_c", r.Air.TemperatureEnd, 0)
	air.number("pressure_hpa", r.Air.Pressure, -2)
	air.number("humidity_pct", r.Air.Humidity, 2)
	if len(air.members) > 0 {
		o.raw("air", air.line())
	}
	o.number("wind_sd_mps", r.WindSD, 0)
	var station object
	station.number("speed_mps", r.Station.Speed, 0)
	station.number("from_deg", r.Station.FromDeg, 0)
	if len(station.members) > 0 {
		o.raw("station_wind", station.line())
	}
	var gears, setups []string
	for _, g := range r.Gears {
		var e object
		e.text("name", g.Name)
		e.number("rpm_per_mps", g.RPMPerMPS, 0)
		gears = append(gears, e.line())
	}
	o.list("gears", gears)
	o.number("limit_rpm", r.LimitRPM, 0)
	if r.Cylinders > 0 {
		o.raw("cylinders", strconv.Itoa(r.Cylinders))
	}
	o.text("drive", string(r.Drive))
	axes := r.Axes
	if axes != "" {
		axes = repair.AxesUp // in memory the force points up, whatever its file had
	}
	o.text("axes", axes)
	for _, s := range r.Setups {
		var e object
		e.number("from_s", s.From, 0)
		e.text("name", s.Name)
		e.number("mass_kg", s.Mass, 0)
		e.text("tyres", s.Tyres)
		e.text("notes", s.Notes)
		setups = append(setups, e.line())
	}
	o.list("setups", setups)
	return []byte("{\n  " + strings.Join(o.members, ",\n  ") + "\n}\n")
}

// object is a JSON object being written; absent values are left out.
type object struct{ members []string }

func (o *object) line() string { return "{" + strings.Join(o.members, ", ") + "}" }

func (o *object) raw(name, value string) {
	o.members = append(o.members, `"`+name+`": `+value)
}

func (o *object) text(name, value string) {
	if value == "" {
		return
	}
	b, _ := json.Marshal(value) // a string always marshals
	o.raw(name, string(b))
}

// number writes v·10^places.
func (o *object) number(name string, v float64, places int) {
	if !math.IsNaN(v) && !math.IsInf(v, 0) {
		o.raw(name, jsontext.Shifted(v, places))
	}
}

func (o *object) list(name string, entries []string) {
	if len(entries) > 0 {
		o.raw(name, "[\n    "+strings.Join(entries, ",\n    ")+"\n  ]")
	}
}
