package nmea

import (
	"math"
	"strconv"
	"time"
)

// clock reads hhmmss or hhmmss.sss; a leap second, 60, is accepted.
func (p *fieldReader) clock(i int) time.Duration {
	s := p.text(i)
	if s == "" {
		return -1
	}
	if len(s) < 6 || len(s) > 16 || !decimals(s) || len(s) > 6 && s[6] != '.' {
		p.fail(i, "nmea.time")
		return -1
	}
	h, _ := strconv.Atoi(s[0:2]) // digits, as checked by decimals
	m, _ := strconv.Atoi(s[2:4])
	sec, err := strconv.ParseFloat(s[4:], 64)
	if err != nil || h > 23 || m > 59 || sec >= 61 {
		p.fail(i, "nmea.time")
		return -1
	}
	return time.Duration(h)*time.Hour + time.Duration(m)*time.Minute + time.Duration(math.Round(sec*1e9))
}

// date reads ddmmyy; yy from 80 on is in the last century, since the system is
// no older than that.
func (p *fieldReader) date(i int) time.Time {
	s := p.text(i)
	if s == "" {
		return time.Time{}
	}
	n, err := strconv.Atoi(s)
	if err != nil || len(s) != 6 || n < 0 {
		p.fail(i, "nmea.date")
		return time.Time{}
	}
	day, month, year := n/10000, n/100%100, n%100
	if year += 2000; year >= 2080 {
		year -= 100
	}
	at := time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
	if at.Day() != day || int(at.Month()) != month {
		p.fail(i, "nmea.date")
		return time.Time{}
	}
	return at
}

// position reads the four fields from i on: ddmm.mm, N or S, dddmm.mm, E or W.
// It returns both coordinates or neither.
func (p *fieldReader) position(i int) (lat, lon float64) {
	lat = p.angle(i, "N", "S", 90)
	lon = p.angle(i+2, "E", "W", 180)
	if math.IsNaN(lat) || math.IsNaN(lon) {
		return math.NaN(), math.NaN()
	}
	return lat, lon
}

func (p *fieldReader) angle(i int, positive, negative string, most float64) float64 {
	v, side := p.number(i), p.text(i+1)
	if math.IsNaN(v) {
		return v
	}
	degrees := math.Floor(v / 100)
	deg := degrees + (v-100*degrees)/60
	if v < 0 || v-100*degrees >= 60 || deg > most || side != positive && side != negative {
		p.fail(i, "nmea.coordinate")
		return math.NaN()
	}
	if side == negative {
		return -deg
	}
	return deg
}
