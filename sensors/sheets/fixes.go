package sheets

import (
	"math"
	"time"

	"stillair/sensors"
	"stillair/sensors/internal/repair"
)

// track is a sheet with a receiver's data.
type track struct {
	sheet *sheet
	clock *timing
	wide  bool // rows repeat the newest fix
	speed, speedSD, lat, lon,
	alt, bearing, radius, own *column
}

// tracks are the sheets that hold speeds or positions, best first.
func tracks(all []*sheet) (out []*track) {
	for _, s := range all {
		t := &track{sheet: s, speed: s.find(speed), speedSD: s.find(speedSD), lat: s.find(latitude), lon: s.find(longitude),
			alt: s.find(altitude), bearing: s.find(bearing), radius: s.find(radius), own: s.find(fixClock)}
		switch {
		case s.rows < 2 || t.speed == nil && (t.lat == nil || t.lon == nil):
		case t.speed != nil:
			out = append([]*track{t}, out...)
		default:
			out = append(out, t)
		}
	}
	return out
}

func value(c *column, row int) float64 {
	if c == nil {
		return math.NaN()
	}
	return c.v[row]
}

func in(c *column, row int) float64 {
	if v := value(c, row); c != nil && c.unit.known() {
		return v * c.unit.si
	} else {
		return v
	}
}

// has reports whether a row has data of a fix.
func (t *track) has(row int) bool {
	return !math.IsNaN(value(t.speed, row)) || !math.IsNaN(value(t.lat, row)+value(t.lon, row))
}

// arrivals are the rows in which a fix arrived: all that have one, or those in
// which it changed.
func (t *track) arrivals() (rows []int) {
	last := -1
	for row := range t.sheet.rows {
		if !t.has(row) {
			continue
		}
		if t.wide && last >= 0 && !t.changed(last, row) {
			continue
		}
		rows = append(rows, row)
		last = row
	}
	return rows
}

func (t *track) changed(a, b int) bool {
	if t.own != nil && !math.IsNaN(t.own.v[a]+t.own.v[b]) {
		return t.own.v[a] != t.own.v[b]
	}
	for _, c := range []*column{t.speed, t.lat, t.lon, t.bearing, t.alt} {
		if x, y := value(c, a), value(c, b); x != y && !(math.IsNaN(x) && math.IsNaN(y)) {
			return true
		}
	}
	return false
}

// accuracyRadius is the radius that contains 68 % of errors, as reported by
// phones, in standard deviations of one direction: √(−2 ln 0.32).
const accuracyRadius = 1.5096

// fixes converts the rows to fixes, with speeds in the unit of the file, or in
// m/s if it is known. lost counts rows without a valid speed.
func (t *track) fixes(utc *timing) (out []sensors.Fix, lost int) {
	for _, row := range t.arrivals() {
		at := t.clock.at(row)
		f := sensors.NewFix(at, in(t.speed, row))
		if math.IsNaN(at) || t.speed != nil && !(f.Speed >= 0) {
			lost++
			continue
		}
		lat, lon := in(t.lat, row), in(t.lon, row)
		if math.Abs(lat) <= 90 && math.Abs(lon) <= 180 && (lat != 0 || lon != 0) {
			f.LatDeg, f.LonDeg = lat, lon
		}
		f.Alt = in(t.alt, row)
		if b := in(t.bearing, row); b >= 0 && b <= 360 {
			f.BearingDeg = math.Mod(b, 360)
		}
		if sd := in(t.speedSD, row); sd > 0 {
			f.SpeedSD = sd
		}
		if r := in(t.radius, row); r > 0 {
			f.HSD = r / accuracyRadius
		}
		if utc != nil {
			if s := utc.at(row); !math.IsNaN(s) {
				f.UTC = time.UnixMicro(int64(math.Round(s * 1e6))).UTC()
			}
		}
		out = append(out, f)
	}
	if t.speed == nil {
		out, _ = repair.Order(out, repair.FixTime)
		out = repair.SpeedFromWay(out)
	}
	return out, lost
}
