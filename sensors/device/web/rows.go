package web

import (
	"encoding/binary"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/finding"
	"stillair/sensors/w3c"
)

// rowWidth is the number of values in a row of sensing.js.
const rowWidth = 10

// Kinds of row; sensing.js has the same numbers.
const (
	rowMotion = 1
	rowFix    = 2
	rowReport = 3
	rowHole   = 4
)

// codeHidden is reported when the page is hidden; nothing follows until the row
// of a gap.
const codeHidden finding.Code = "browser.hidden"

var (
	rowSensors    = []sensors.Sensor{sensors.SensorMotion, sensors.SensorTurn, sensors.SensorFix}
	rowConditions = []sensors.Condition{sensors.Asking, sensors.Available, sensors.Denied, sensors.Missing, sensors.Silent}
	rowReasons    = []finding.Code{ // 1 to 3 are the codes of GeolocationPositionError
		0:  "",
		1:  "browser.no_location_leave",
		2:  "browser.no_position",
		3:  "browser.no_satellites",
		4:  codeHidden,
		5:  "browser.no_motion_leave",
		6:  "browser.tap_again",
		7:  "browser.no_motion",
		8:  "browser.no_location",
		9:  "browser.asks_location",
		10: "browser.not_secure",
		11: "browser.not_asked",
	}
	rowCauses = []finding.Code{"browser.was_hidden", "browser.was_frozen", "browser.was_asleep"}
)

// reader turns the rows of sensing.js into samples.
type reader struct {
	sign    float64 // of forces: -1 in browsers with the opposite sign
	arrival device.Arrival
	hidden  bool // and the gap is reported when the page is visible again
}

// read adds the rows in p to b. A row it does not know is counted as lost.
func (r *reader) read(p []byte, b *device.Batch) {
	var row [rowWidth]float64
	for ; len(p) >= rowWidth*8; p = p[rowWidth*8:] {
		for i := range row {
			row[i] = math.Float64frombits(binary.LittleEndian.Uint64(p[8*i:]))
		}
		at := row[1]
		switch v := row[2:]; row[0] {
		case rowMotion:
			b.Motion = append(b.Motion, r.motion(at, v))
		case rowFix:
			b.Fixes = append(b.Fixes, r.fix(at, v))
		case rowReport:
			r.report(v, b)
		case rowHole:
			r.hole(at, v, b)
		default:
			b.Lost++
		}
	}
	b.Away = r.hidden
}

// motion converts a row to a sample; the sign of forces is this browser's.
func (r *reader) motion(at float64, v []float64) sensors.Motion {
	m := w3c.MotionFrom(at, v[0], v[1], v[2], v[3], v[4], v[5])
	m.Force = r3.Scale(r.sign, m.Force)
	return m
}

// fix converts a row to a fix, stamped with its arrival at the phone.
func (r *reader) fix(at float64, v []float64) sensors.Fix {
	c := w3c.Coords{Speed: v[1], Latitude: v[2], Longitude: v[3], Accuracy: v[4], Altitude: v[5], Heading: v[6]}
	f := w3c.FixFrom(at, c, v[0])
	f.T = r.arrival.At(v[0]/1000, at/1000)
	return f
}

func (r *reader) report(v []float64, b *device.Batch) {
	s, okS := pick(rowSensors, v[0])
	c, okC := pick(rowConditions, v[1])
	why, okW := pick(rowReasons, v[2])
	if !okS || !okC || !okW {
		b.Lost++
		return
	}
	r.hidden = r.hidden || why == codeHidden
	b.Reports = append(b.Reports, device.Report{Sensor: s, Condition: c, Detail: finding.New(why)})
}

// hole takes a gap that ended at at, ms.
func (r *reader) hole(at float64, v []float64, b *device.Batch) {
	why, ok := pick(rowCauses, v[1])
	if !ok || !(v[0] <= at) {
		b.Lost++
		return
	}
	r.hidden = false
	b.Holes = append(b.Holes, sensors.Hole{From: v[0] / 1000, To: at / 1000, Why: finding.New(why)})
}

// pick returns the element of list that a number from the page names.
func pick[T any](list []T, at float64) (T, bool) {
	if !(at >= 0 && at < float64(len(list))) {
		var none T
		return none, false
	}
	return list[int(at)], true
}
