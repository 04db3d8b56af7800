package plain

import (
	"math"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/decimal"
	"stillair/sensors/internal/packed"
	"stillair/sensors/internal/repair"
)

var gnssColumns = []column{
	{"t_s", true, "s"},
	{"speed_mps", true, "m/s"},
	{"lat_deg", false, "°"}, {"lon_deg", false, "°"}, {"utc_ms", false, "ms"},
	{"alt_m", false, "m"}, {"bearing_deg", false, "°"}, {"speed_sd_mps", false, "m/s"}, {"h_sd_m", false, "m"},
}

const mostFixes = 500_000

// readFixes reads gnss.csv, with speeds in the unit of the file; times are multiplied by clock, the unit that
// motion.csv was found to be in.
func readFixes(f file, clock float64, order *repair.Clock) ([]sensors.Fix, *tally, error) {
	samples, y, err := readRows(f, gnssColumns, mostFixes, takeFix)
	if err == nil {
		err = y.verdict("plain.want_fixes")
	}
	if err != nil {
		return nil, y, err
	}
	for i := range samples {
		samples[i].T *= clock
	}
	samples = order.Fixes(samples)
	y.notes = append(y.notes, order.Notes(f.name)...)
	return samples, y, nil
}

func takeFix(r row) (sensors.Fix, bool) {
	t, ok := r.need(gnssColumns, 0)
	if !ok {
		return sensors.Fix{}, false
	}
	speed, ok := r.need(gnssColumns, 1)
	if !ok {
		return sensors.Fix{}, false
	}
	if speed < 0 {
		r.y.skip(r.t.line, "negative", finding.New("plain.negative_speed"))
		return sensors.Fix{}, false
	}
	x := sensors.NewFix(t, speed)
	x.LatDeg, x.LonDeg = r.position()
	x.Alt = r.may(gnssColumns, 5)
	x.BearingDeg = bearing(r.may(gnssColumns, 6))
	x.SpeedSD = r.deviation(7)
	x.HSD = r.deviation(8)
	if b := r.raw(4); b != nil {
		at, state := utcMillis(b)
		if state == decimal.Broken {
			r.y.say(r.t.line, "utc", finding.New("plain.no_utc", packed.Cut("value", b, 40)))
		}
		x.UTC = at
	}
	return x, true
}

// position returns both coordinates or neither.
func (r row) position() (lat, lon float64) {
	lat, lon = r.may(gnssColumns, 2), r.may(gnssColumns, 3)
	if math.IsNaN(lat) || math.IsNaN(lon) {
		return nan, nan
	}
	if math.Abs(lat) > 90 || math.Abs(lon) > 180 {
		r.y.say(r.t.line, "globe", finding.New("plain.off_globe"))
		return nan, nan
	}
	return lat, lon
}

// deviation returns a standard deviation; phones write −1 or 0 for an unknown
// one.
func (r row) deviation(c int) float64 {
	if v := r.may(gnssColumns, c); v > 0 {
		return v
	}
	return nan
}

// bearing normalises a course to 0 to 360°; a negative one means unknown, as
// written by phones.
func bearing(deg float64) float64 {
	if deg < 0 || deg > 720 {
		return nan
	}
	return math.Mod(deg, 360)
}
