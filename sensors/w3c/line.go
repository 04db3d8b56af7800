package w3c

import (
	"math"

	"github.com/tidwall/gjson"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/jsontext"
	"stillair/sensors/internal/repair"
)

// kind is the kind of an object of the stream.
type kind int

const (
	unknown kind = iota
	head
	motion
	position
)

// object is one line of the stream, in the page's units.
type object struct {
	kind       kind
	timeStamp  float64 // ms on the page's clock, or NaN
	timestamp  float64 // ms since 1970, or NaN
	motion     sensors.Motion
	coords     Coords
	timeOrigin float64
	axes       string
}

var (
	errNotJSON  = finding.Fail("w3c.not_json")
	errNoForce  = finding.Fail("w3c.no_force")
	errNoNumber = finding.Fail("w3c.no_number")
	errNoSpeed  = finding.Fail("w3c.no_speed")
	errAxes     = finding.Fail("w3c.axes")
)

// parseLine reads one line.
func parseLine(b []byte) (object, error) {
	if jsontext.Check(b) != nil {
		return object{}, errNotJSON
	}
	top := gjson.ParseBytes(b)
	if !top.IsObject() {
		return object{}, errNotJSON
	}
	p := newMembers(top)
	o := object{timeStamp: p.timeStamp, timestamp: p.timestamp, timeOrigin: p.timeOrigin, axes: p.axes, coords: p.coords}
	switch {
	case p.err != nil:
		return o, p.err
	case p.hasCoords:
		o.kind = position
		if !(o.coords.Speed >= 0) {
			return o, errNoSpeed
		}
	case p.hasMotion:
		o.kind = motion
		o.motion = MotionFrom(0, p.force[0], p.force[1], p.force[2], p.rate[0], p.rate[1], p.rate[2])
		if f := o.motion.Force; math.IsNaN(f.X + f.Y + f.Z) {
			return o, errNoForce
		}
	case !math.IsNaN(o.timeOrigin) || o.axes != "":
		o.kind = head
		if o.axes != "" && o.axes != repair.AxesUp && o.axes != repair.AxesDown {
			return o, errAxes
		}
	}
	return o, nil
}

// members are the members of an object that are used; numbers that are null or
// absent are NaN.
type members struct {
	timeStamp, timestamp, timeOrigin float64
	force, rate                      [3]float64
	coords                           Coords
	hasMotion, hasCoords             bool
	axes                             string
	err                              error // the first
}

func newMembers(top gjson.Result) *members {
	nan := math.NaN()
	p := &members{timeStamp: nan, timestamp: nan, timeOrigin: nan, force: [3]float64{nan, nan, nan}, rate: [3]float64{nan, nan, nan},
		coords: Coords{nan, nan, nan, nan, nan, nan}}
	top.ForEach(func(k, v gjson.Result) bool {
		switch k.Str {
		case "timeStamp":
			p.number(v, &p.timeStamp)
		case "timestamp":
			p.number(v, &p.timestamp)
		case "timeOrigin":
			p.number(v, &p.timeOrigin)
		case "axes":
			p.axes = v.String()
		case "accelerationIncludingGravity":
			p.hasMotion = true
			p.inside(v, func(name string) *float64 { return xyz(&p.force, name, "x", "y", "z") })
		case "rotationRate":
			p.hasMotion = true
			p.inside(v, func(name string) *float64 { return xyz(&p.rate, name, "alpha", "beta", "gamma") })
		case "coords":
			p.hasCoords = v.IsObject()
			p.inside(v, p.coord)
		}
		return true
	})
	return p
}

func xyz(v *[3]float64, name, x, y, z string) *float64 {
	switch name {
	case x:
		return &v[0]
	case y:
		return &v[1]
	case z:
		return &v[2]
	}
	return nil
}

func (p *members) coord(name string) *float64 {
	switch name {
	case "latitude":
		return &p.coords.Latitude
	case "longitude":
		return &p.coords.Longitude
	case "altitude":
		return &p.coords.Altitude
	case "accuracy":
		return &p.coords.Accuracy
	case "heading":
		return &p.coords.Heading
	case "speed":
		return &p.coords.Speed
	}
	return nil
}

// inside reads the numbers of an object into the variables of where.
func (p *members) inside(v gjson.Result, where func(name string) *float64) {
	if !v.IsObject() {
		if v.Type != gjson.Null {
			p.err = errNoNumber
		}
		return
	}
	v.ForEach(func(k, v gjson.Result) bool {
		if at := where(k.Str); at != nil {
			p.number(v, at)
		}
		return true
	})
}

func (p *members) number(v gjson.Result, at *float64) {
	switch {
	case v.Type == gjson.Null:
	case v.Type == gjson.Number && !math.IsInf(v.Num, 0):
		*at = v.Num
	default:
		p.err = errNoNumber
	}
}
