package plain

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/tidwall/gjson"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/jsontext"
	"stillair/sensors/internal/packed"
	"stillair/sensors/internal/repair"
)

// Version of the plain log that this package writes, and the newest it reads.
const Version = 1

// DecodeRide reads the rider's entries from the text of ride.json; name is for
// errors and notes. Absent or null values are NaN or empty.
func DecodeRide(b []byte, name string) (sensors.Ride, []sensors.Note, error) {
	d := &rideReader{name: name, text: b}
	ride := sensors.UnknownRide()
	if err := jsontext.Check(b); err != nil {
		return ride, nil, d.fail(gjson.Result{}, err.Finding, finding.New("json.check"))
	}
	top := gjson.ParseBytes(b)
	if !top.IsObject() {
		return ride, nil, d.fail(gjson.Result{}, finding.New("json.no_object"), finding.New("ride.begins"))
	}
	d.ride(&ride, top)
	if d.err != nil {
		return sensors.UnknownRide(), nil, d.err
	}
	return ride, d.notes, nil
}

// rideReader keeps the first error, so that the code is a list of fields.
type rideReader struct {
	name  string
	text  []byte
	notes []sensors.Note
	err   error
}

func (d *rideReader) fail(at gjson.Result, what, remedy finding.Finding) error {
	err := &sensors.InputError{File: d.name, What: what, Remedy: remedy}
	if at.Index > 0 {
		err.Line = jsontext.Line(d.text, at.Index)
	}
	if d.err == nil {
		d.err = err
	}
	return err
}

// about is a finding about one field.
func about(code finding.Code, field string) finding.Finding {
	return finding.New(code, finding.Text("field", field))
}

func brief(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

// fields are the members of one object by name.
type fields struct {
	d  *rideReader
	of string // path of the object, for errors
	m  map[string]gjson.Result
}

// object parses an object; unknown names are noted, since they may be typing
// errors.
func (d *rideReader) object(of string, r gjson.Result, known ...string) fields {
	f := fields{d: d, of: of, m: map[string]gjson.Result{}}
	if r.Type == gjson.Null {
		return f
	}
	if !r.IsObject() {
		d.fail(r, about("ride.no_object", strings.TrimSuffix(of, ".")), finding.New("ride.braces"))
		return f
	}
	r.ForEach(func(k, v gjson.Result) bool {
		switch {
		case !slices.Contains(known, k.Str):
			if len(d.notes) < 20 {
				d.notes = append(d.notes, sensors.Note{File: d.name, Line: jsontext.Line(d.text, k.Index), Count: 1,
					What: finding.New("ride.unknown_field", packed.Cut("field", of+k.Str, 60))})
			}
		case f.m[k.Str].Exists():
			d.fail(k, about("ride.twice", of+k.Str), finding.New("ride.keep_one"))
		default:
			f.m[k.Str] = v
		}
		return true
	})
	return f
}

// number returns a number times 10^shift in [least, most]; NaN if absent.
func (f fields) number(name string, shift int, least, most float64, remedy finding.Code) float64 {
	r := f.m[name]
	switch r.Type {
	case gjson.Null:
		return nan
	case gjson.Number:
		v := jsontext.Shift(r.Raw, shift)
		if unshifted := r.Num; !(unshifted >= least && unshifted <= most) || math.IsInf(v, 0) {
			f.d.fail(r, finding.New("ride.outside", finding.Text("field", f.of+name), packed.Cut("value", r.Raw, 20), finding.Text("least", brief(least)), finding.Text("most", brief(most))), finding.New(remedy))
		}
		return v
	}
	f.d.fail(r, about("ride.no_number", f.of+name), finding.New("ride.number_form"))
	return nan
}

func (f fields) text(name string) string {
	r := f.m[name]
	switch {
	case r.Type == gjson.Null:
		return ""
	case r.Type == gjson.String && len(r.Str) <= 10_000 && !utf8.ValidString(r.Str):
		f.d.notes = append(f.d.notes, sensors.Note{File: f.d.name, Line: jsontext.Line(f.d.text, r.Index), Count: 1,
			What: about("ride.not_utf8", f.of+name)})
		return strings.ToValidUTF8(r.Str, "�")
	case r.Type == gjson.String && len(r.Str) <= 10_000:
		return r.Str
	case r.Type == gjson.Number: // a gear named 4
		return r.Raw
	}
	f.d.fail(r, about("ride.no_text", f.of+name), finding.New("ride.quote"))
	return ""
}

func (f fields) list(name string) []gjson.Result {
	r := f.m[name]
	if r.Type == gjson.Null {
		return nil
	}
	if !r.IsArray() {
		f.d.fail(r, about("ride.no_list", f.of+name), finding.New("ride.brackets"))
		return nil
	}
	return r.Array()
}

func (d *rideReader) ride(ride *sensors.Ride, top gjson.Result) {
	f := d.object("", top, "version", "bike", "mass_kg", "mass_sd_kg", "rotating_mass_kg", "air", "wind_sd_mps", "station_wind",
		"gears", "limit_rpm", "cylinders", "drive", "axes", "setups")
	if v := f.number("version", 0, 1, math.MaxFloat64, "ride.first_version"); v > Version || v != math.Trunc(v) && !math.IsNaN(v) {
		d.fail(f.m["version"], finding.New("ride.version", packed.Cut("version", f.m["version"].Raw, 20)), finding.New("ride.newer_program", finding.Count("reads", Version)))
	}
	ride.Bike = f.text("bike")
	ride.Mass = f.mass("mass_kg")
	ride.MassSD = f.number("mass_sd_kg", 0, 0, 1000, "ride.give_mass_sd")
	ride.RotatingMass = f.number("rotating_mass_kg", 0, 0, 500, "ride.give_rotating_mass")
	if n := f.number("cylinders", 0, 1, 12, "ride.give_cylinders"); !math.IsNaN(n) {
		ride.Cylinders = int(n)
	}
	ride.LimitRPM = f.number("limit_rpm", 0, 1000, 30_000, "ride.give_limit")
	ride.WindSD = f.number("wind_sd_mps", 0, 0, 30, "ride.give_wind")
	air := d.object("air.", f.m["air"], "temperature_c", "temperature_end_c", "pressure_hpa", "humidity_pct")
	ride.Air = sensors.Air{
		Temperature:    air.number("temperature_c", 0, -60, 60, "ride.give_temperature"),
		TemperatureEnd: air.number("temperature_end_c", 0, -60, 60, "ride.give_temperature"),
		Pressure:       air.number("pressure_hpa", 2, 300, 1100, "ride.give_pressure"),
		Humidity:       air.number("humidity_pct", -2, 0, 100, "ride.give_humidity"),
	}
	station := d.object("station_wind.", f.m["station_wind"], "speed_mps", "from_deg")
	ride.Station = sensors.Wind{
		Speed:   station.number("speed_mps", 0, 0, 60, "ride.give_station"),
		FromDeg: station.number("from_deg", 0, 0, 360, "ride.give_station"),
	}
	for i, r := range f.list("gears") {
		g := d.object("gears["+strconv.Itoa(i)+"].", r, "name", "rpm_per_mps")
		gear := sensors.Gear{Name: g.text("name"),
			RPMPerMPS: g.number("rpm_per_mps", 0, 1, 10_000, "ride.give_ratio")}
		if math.IsNaN(gear.RPMPerMPS) {
			d.fail(r, about("ride.missing", fmt.Sprintf("gears[%d].rpm_per_mps", i)), finding.New("ride.give_ratio"))
		}
		ride.Gears = append(ride.Gears, gear)
	}
	switch ride.Axes = f.text("axes"); ride.Axes {
	case "", repair.AxesUp, repair.AxesDown:
	default:
		d.fail(f.m["axes"], finding.New("axes.unknown_word", packed.Cut("value", ride.Axes, 40)), repair.AxesWords())
	}
	ride.Drive = sensors.Drive(f.text("drive"))
	if ride.Drive != sensors.NoDrive && !slices.Contains(sensors.Drives(), ride.Drive) {
		d.fail(f.m["drive"], finding.New("ride.unknown_drive", packed.Cut("value", string(ride.Drive), 40)), finding.New("ride.give_drive"))
		ride.Drive = sensors.NoDrive
	}
	d.setups(ride, f.list("setups"))
}

// mass reads a weight; zero is refused, since nothing can be calculated with it.
func (f fields) mass(name string) float64 {
	return f.number(name, 0, 20, 5000, "ride.give_mass")
}

func (d *rideReader) setups(ride *sensors.Ride, list []gjson.Result) {
	for i, r := range list {
		of := "setups[" + strconv.Itoa(i) + "]."
		f := d.object(of, r, "from_s", "name", "mass_kg", "tyres", "notes")
		s := sensors.Setup{From: f.number("from_s", 0, -math.MaxFloat64, math.MaxFloat64, "ride.give_start"),
			Name: f.text("name"), Mass: f.mass("mass_kg"), Tyres: f.text("tyres"), Notes: f.text("notes")}
		if math.IsNaN(s.From) {
			d.fail(r, about("ride.missing", of+"from_s"), finding.New("ride.give_start"))
		}
		ride.Setups = append(ride.Setups, s)
	}
	var o repair.Disorder
	ride.Setups, o = repair.Order(ride.Setups, func(s sensors.Setup) float64 { return s.From })
	if o.Doubled > 0 && d.err == nil {
		d.fail(gjson.Result{}, finding.New("ride.setups_at_once"), finding.New("ride.own_start"))
	}
}
