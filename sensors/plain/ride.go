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
	"stillair/sensors/internal/mend"
)

// Version of the plain log that this package writes, and the newest it reads.
const Version = 1

// DecodeRide reads what the rider told, as ride.json holds it; name is for
// errors and notes. What is absent or null comes back as NaN or empty.
func DecodeRide(b []byte, name string) (sensors.Ride, []sensors.Note, error) {
	d := &rideReader{name: name, text: b}
	ride := sensors.UnknownRide()
	if err := jsontext.Check(b); err != nil {
		return ride, nil, d.fail(gjson.Result{}, "the file "+err.Error(), "check its brackets, commas and quotation marks")
	}
	top := gjson.ParseBytes(b)
	if !top.IsObject() {
		return ride, nil, d.fail(gjson.Result{}, "the file is no JSON object", `it begins with { "version": 1`)
	}
	d.ride(&ride, top)
	if d.err != nil {
		return sensors.UnknownRide(), nil, d.err
	}
	return ride, d.notes, nil
}

// rideReader keeps the first error, so that reading reads as a list of fields.
type rideReader struct {
	name  string
	text  []byte
	notes []sensors.Note
	err   error
}

func (d *rideReader) fail(at gjson.Result, what, mend string) error {
	err := &sensors.InputError{File: d.name, What: finding.Said(what), Remedy: finding.Said(mend)}
	if at.Index > 0 {
		err.Line = jsontext.Line(d.text, at.Index)
	}
	if d.err == nil {
		d.err = err
	}
	return err
}

// fields are the members of one object by name.
type fields struct {
	d  *rideReader
	of string // path of the object, for errors
	m  map[string]gjson.Result
}

// object takes an object apart; names that are not known are noted, since they
// may be a slip of the pen.
func (d *rideReader) object(of string, r gjson.Result, known ...string) fields {
	f := fields{d: d, of: of, m: map[string]gjson.Result{}}
	if r.Type == gjson.Null {
		return f
	}
	if !r.IsObject() {
		d.fail(r, fmt.Sprintf("%s is no object", of), "put its fields between { and }")
		return f
	}
	r.ForEach(func(k, v gjson.Result) bool {
		switch {
		case !slices.Contains(known, k.Str):
			if len(d.notes) < 20 {
				d.notes = append(d.notes, sensors.Note{File: d.name, Line: jsontext.Line(d.text, k.Index), Count: 1,
					What: finding.Said(fmt.Sprintf("%s%.40q is not known and is passed over", of, k.Str))})
			}
		case f.m[k.Str].Exists():
			d.fail(k, fmt.Sprintf("%s%s is there twice", of, k.Str), "keep one")
		default:
			f.m[k.Str] = v
		}
		return true
	})
	return f
}

// number returns a number times 10^shift that lies in [least, most]; NaN where
// it is absent.
func (f fields) number(name string, shift int, least, most float64, mend string) float64 {
	r := f.m[name]
	switch r.Type {
	case gjson.Null:
		return nan
	case gjson.Number:
		v := jsontext.Shift(r.Raw, shift)
		if unshifted := r.Num; !(unshifted >= least && unshifted <= most) || math.IsInf(v, 0) {
			f.d.fail(r, fmt.Sprintf("%s%s is %.20s, outside %g to %g", f.of, name, r.Raw, least, most), mend)
		}
		return v
	}
	f.d.fail(r, fmt.Sprintf("%s%s is no number", f.of, name), "write it without quotation marks, with a point for decimals")
	return nan
}

func (f fields) text(name string) string {
	r := f.m[name]
	switch {
	case r.Type == gjson.Null:
		return ""
	case r.Type == gjson.String && len(r.Str) <= 10_000 && !utf8.ValidString(r.Str):
		f.d.notes = append(f.d.notes, sensors.Note{File: f.d.name, Line: jsontext.Line(f.d.text, r.Index), Count: 1,
			What: finding.Said(f.of + name + " is not in UTF-8; what cannot be read is replaced by �")})
		return strings.ToValidUTF8(r.Str, "�")
	case r.Type == gjson.String && len(r.Str) <= 10_000:
		return r.Str
	case r.Type == gjson.Number: // a gear named 4
		return r.Raw
	}
	f.d.fail(r, fmt.Sprintf("%s%s is no text of up to 10000 letters", f.of, name), "put it between quotation marks")
	return ""
}

func (f fields) list(name string) []gjson.Result {
	r := f.m[name]
	if r.Type == gjson.Null {
		return nil
	}
	if !r.IsArray() {
		f.d.fail(r, fmt.Sprintf("%s%s is no list", f.of, name), "put its entries between [ and ]")
		return nil
	}
	return r.Array()
}

func (d *rideReader) ride(ride *sensors.Ride, top gjson.Result) {
	f := d.object("", top, "version", "bike", "mass_kg", "mass_sd_kg", "rotating_mass_kg", "air", "wind_sd_mps",
		"gears", "limit_rpm", "cylinders", "axes", "setups")
	if v := f.number("version", 0, 1, math.MaxFloat64, "the first version is 1"); v > Version || v != math.Trunc(v) && !math.IsNaN(v) {
		d.fail(f.m["version"], "version "+f.m["version"].Raw+" is not known", "this program reads version 1; a newer program may read it")
	}
	ride.Bike = f.text("bike")
	ride.Mass = f.mass("mass_kg")
	ride.MassSD = f.number("mass_sd_kg", 0, 0, 1000, "give the uncertainty of the mass in kg, or leave it out")
	ride.RotatingMass = f.number("rotating_mass_kg", 0, 0, 500, "give it in kg, or leave it out for 4 % of the mass")
	if n := f.number("cylinders", 0, 1, 12, "give the number of the engine's cylinders, or leave it out"); !math.IsNaN(n) {
		ride.Cylinders = int(n)
	}
	ride.LimitRPM = f.number("limit_rpm", 0, 1000, 30_000, "give the highest engine speed in 1/min, or leave it out")
	ride.WindSD = f.number("wind_sd_mps", 0, 0, 30, "give it in m/s, or leave it out")
	air := d.object("air.", f.m["air"], "temperature_c", "pressure_hpa", "humidity_pct")
	ride.Air = sensors.Air{
		Temperature: air.number("temperature_c", 0, -60, 60, "give it in °C"),
		Pressure:    air.number("pressure_hpa", 2, 300, 1100, "give the pressure where you ride in hPa, such as 1009"),
		Humidity:    air.number("humidity_pct", -2, 0, 100, "give it in per cent"),
	}
	for i, r := range f.list("gears") {
		g := d.object("gears["+strconv.Itoa(i)+"].", r, "name", "rpm_per_mps")
		gear := sensors.Gear{Name: g.text("name"),
			RPMPerMPS: g.number("rpm_per_mps", 0, 1, 10_000, "give the engine speed in 1/min divided by the road speed in m/s")}
		if math.IsNaN(gear.RPMPerMPS) {
			d.fail(r, fmt.Sprintf("gears[%d] has no rpm_per_mps", i), "give the engine speed in 1/min divided by the road speed in m/s")
		}
		ride.Gears = append(ride.Gears, gear)
	}
	switch ride.Axes = f.text("axes"); ride.Axes {
	case "", mend.AxesUp, mend.AxesDown:
	default:
		d.fail(f.m["axes"], fmt.Sprintf("axes is %.40q", ride.Axes), fmt.Sprintf("write %q or %q, or leave it out", mend.AxesUp, mend.AxesDown))
	}
	d.setups(ride, f.list("setups"))
}

// mass reads a weight: zero is refused, since nothing can be computed from it.
func (f fields) mass(name string) float64 {
	return f.number(name, 0, 20, 5000, "give the weight of bike, rider, fuel and luggage in kg, or leave it out")
}

func (d *rideReader) setups(ride *sensors.Ride, list []gjson.Result) {
	for i, r := range list {
		of := "setups[" + strconv.Itoa(i) + "]."
		f := d.object(of, r, "from_s", "name", "mass_kg", "tyres")
		s := sensors.Setup{From: f.number("from_s", 0, -math.MaxFloat64, math.MaxFloat64, "give it in s on the clock of motion.csv"),
			Name: f.text("name"), Mass: f.mass("mass_kg"), Tyres: f.text("tyres")}
		if math.IsNaN(s.From) {
			d.fail(r, of+"from_s is missing", "say from which second of the log on the setup was on the bike")
		}
		ride.Setups = append(ride.Setups, s)
	}
	var o mend.Disorder
	ride.Setups, o = mend.Order(ride.Setups, func(s sensors.Setup) float64 { return s.From })
	if o.Doubled > 0 && d.err == nil {
		d.fail(gjson.Result{}, "two setups begin in the same second", "give each its own from_s")
	}
}
