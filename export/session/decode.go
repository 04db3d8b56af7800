package session

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"time"

	"github.com/tidwall/gjson"
	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/plain"
)

// Column names of the motion and pressure lines.
var (
	motionColumns   = []string{"t_s", "ax_mps2", "ay_mps2", "az_mps2", "gx_radps", "gy_radps", "gz_radps"}
	pressureColumns = []string{"t_s", "pressure_pa"}
)

// forceColumns is how many of motionColumns a motion line must have.
const forceColumns = 4

// decodeLine decodes one line into the current recording. Only exceeding the
// limits of a file is an error; an invalid line is left out and noted.
func (d *decoder) decodeLine(line []byte, p *part) error {
	line = bytes.TrimSpace(line)
	if len(line) == 0 {
		return nil
	}
	if bytes.HasPrefix(line, []byte(`{"type":"motion"`)) {
		return d.motionLine(string(line), p)
	}
	if !gjson.ValidBytes(line) {
		d.odd(finding.New("session.not_json"))
		return nil
	}
	o := gjson.ParseBytes(line)
	switch kind := o.Get("type").String(); kind {
	case "part":
		p.known++
	case "header":
		p.known++
		d.header(o, p.n)
	case "motion":
		return d.motionLine(o.Raw, p)
	case "fix", "state", "pressure", "sound":
		p.known++
		d.events++
		d.sample(kind, o)
		return d.tooMany()
	case "ride", "name", "remark":
		d.events++
		d.entered(kind, o, p.n)
		d.words += int64(len(line))
		return d.tooMany()
	case "end":
		p.end = true
	default:
		d.odd(finding.New("session.unknown_type", short("type", kind)))
	}
	return nil
}

// odd notes that something in the line at hand is odd.
func (d *decoder) odd(what finding.Finding) { d.cur.notes.note(what, d.line) }

// short is a text of the file as an argument, cut where it is long.
func short(name, s string) finding.Arg { return finding.Text(name, fmt.Sprintf("%.40s", s)) }

// number returns a field of o, NaN where it is absent or no number.
func number(o gjson.Result, key string) float64 {
	v := o.Get(key)
	if v.Type != gjson.Number {
		return math.NaN()
	}
	return v.Float()
}

// header takes a header, and leaves the recording out where it is of another
// format or a later version.
func (d *decoder) header(o gjson.Result, n int) {
	refuse := func(what finding.Finding, remedy finding.Code) {
		d.refuse(&sensors.InputError{File: d.name, Line: d.line, What: what, Remedy: finding.New(remedy)})
	}
	if f := o.Get("format").String(); f != FormatName {
		refuse(finding.New("session.other_format", short("format", f), finding.Text("want", FormatName)), codeGiveSession)
		return
	}
	if v := number(o, "version"); !(v >= 1 && v <= Version) {
		refuse(finding.New("session.later_version", short("version", o.Get("version").Raw), finding.Count("most", Version)), "session.newer_program")
		return
	}
	if a := o.Get("axes").String(); a != "" && a != AxesUp {
		refuse(finding.New("session.other_axes", short("axes", a), finding.Text("want", AxesUp)), "session.convert_axes")
		return
	}
	if !d.cur.later("header", n) {
		return
	}
	d.cur.rec.Header = Header{ID: d.cur.id, Start: number(o, "t_s"), Started: utc(o), Device: o.Get("device").String(),
		Program: o.Get("program").String(), Origin: o.Get("origin").String()}
}

// utc returns the field utc_ms as a time, the zero time where it is absent or
// out of the range that RFC 3339 can write.
func utc(o gjson.Result) time.Time {
	ms := number(o, "utc_ms")
	const limit = 2.5e14 // ms: the year 9892
	if !(ms > -limit/8 && ms < limit) {
		return time.Time{}
	}
	return time.UnixMilli(int64(ms)).UTC()
}

// entered takes what the rider entered, from a line in part n.
func (d *decoder) entered(kind string, o gjson.Result, n int) {
	switch kind {
	case "name":
		if d.cur.later("name", n) {
			d.cur.rec.Name = o.Get("text").String()
		}
	case "remark":
		d.cur.rec.Remarks = append(d.cur.rec.Remarks, Remark{T: number(o, "t_s"), Text: o.Get("text").String()})
	case "ride":
		ride, notes, err := plain.DecodeRide([]byte(o.Get("ride").Raw), d.name)
		if err != nil {
			d.odd(finding.New("session.ride_left_out", finding.Of("why", what(err))))
			return
		}
		for _, n := range notes {
			d.odd(n.What)
		}
		if d.cur.later("ride", n) {
			d.cur.rec.Log.Ride = ride
		}
	}
}

// what returns the fault of a value, without the place, which an odd line has
// of its own.
func what(err error) finding.Finding {
	var input *sensors.InputError
	if errors.As(err, &input) {
		return input.What
	}
	var own *finding.Error
	if errors.As(err, &own) {
		return own.Finding
	}
	return finding.New("session.cause", sensors.Cause(err))
}

// tooMany returns an error once the file has more samples than any session.
func (d *decoder) tooMany() error {
	if d.events > d.mostEvents || d.pressures > d.most || d.heard > d.mostSound || d.words > maxWords {
		return errTooMuch
	}
	return nil
}

// sample takes a line with a fix, a state, pressures or sound.
func (d *decoder) sample(kind string, o gjson.Result) {
	switch kind {
	case "fix":
		f := sensors.Fix{T: number(o, "t_s"), Speed: number(o, "speed_mps"), SpeedSD: number(o, "speed_sd_mps"),
			LatDeg: number(o, "lat_deg"), LonDeg: number(o, "lon_deg"), HSD: number(o, "h_sd_m"),
			Alt: number(o, "alt_m"), BearingDeg: number(o, "bearing_deg"), UTC: utc(o)}
		if math.IsNaN(f.T) || math.IsNaN(f.Speed) {
			d.odd(finding.New("session.fix_incomplete"))
			return
		}
		d.cur.fixes.Add(f)
	case "state":
		s := sensors.State{T: number(o, "t_s"), Sensor: sensors.Sensor(o.Get("sensor").String()),
			Condition: sensors.Condition(o.Get("condition").String()), Detail: detail(o)}
		if math.IsNaN(s.T) {
			d.odd(finding.New("session.state_incomplete"))
			return
		}
		d.words += int64(len(o.Get("detail").Raw) + len(o.Get("args").Raw) + len(s.Detail.Code) + len(s.Sensor) + len(s.Condition))
		d.cur.rec.Log.States = append(d.cur.rec.Log.States, s)
	case "sound":
		d.sound(o)
	case "pressure":
		cols, n, ok := d.table(o, pressureColumns, len(pressureColumns))
		if !ok {
			d.odd(finding.New("session.pressure_columns"))
			return
		}
		d.pressures += n
		for i := range n {
			s := sensors.Pressure{T: cols[i], Pa: cols[n+i]}
			if math.IsNaN(s.T) || math.IsNaN(s.Pa) {
				d.odd(finding.New("session.pressure_incomplete"))
				continue
			}
			d.cur.pressure.Add(s)
		}
	}
}

// motionLine takes a motion line, the one kind that is hot.
func (d *decoder) motionLine(line string, p *part) error {
	p.known++
	cols, n, ok := d.table(gjson.Parse(line), motionColumns, forceColumns)
	if !ok {
		d.odd(finding.New("session.motion_columns"))
		return nil
	}
	if d.motions += n; d.motions > d.most {
		return errTooMuch
	}
	turns := len(cols) == n*len(motionColumns)
	nan := math.NaN()
	for i := range n {
		m := sensors.Motion{T: cols[i], Force: r3.Vec{X: cols[n+i], Y: cols[2*n+i], Z: cols[3*n+i]},
			Turn: r3.Vec{X: nan, Y: nan, Z: nan}}
		if turns {
			m.Turn = r3.Vec{X: cols[4*n+i], Y: cols[5*n+i], Z: cols[6*n+i]}
		}
		if math.IsNaN(m.T) || math.IsNaN(m.Force.X) || math.IsNaN(m.Force.Y) || math.IsNaN(m.Force.Z) {
			d.odd(finding.New("session.motion_incomplete"))
			continue
		}
		d.cur.motion.Add(m)
	}
	return nil
}

// table reads the named columns of a line, one behind the other, each of n
// values. The first need of them must be there; the others all or none.
func (d *decoder) table(o gjson.Result, names []string, need int) (cols []float64, n int, ok bool) {
	raw := make([]string, len(names))
	o.ForEach(func(key, value gjson.Result) bool {
		for i, name := range names {
			if key.Str == name {
				raw[i] = value.Raw
			}
		}
		return true
	})
	cols = d.columns[:0]
	defer func() { d.columns = cols }()
	for i, text := range raw {
		if text == "" {
			return cols, n, i >= need && len(cols) == n*need
		}
		before := len(cols)
		if cols, ok = parseNumbers(cols, text); !ok {
			return nil, 0, false
		}
		if i == 0 {
			n = len(cols)
		}
		if len(cols)-before != n {
			return nil, 0, false
		}
	}
	return cols, n, true
}
