package android

import (
	"math"
	"time"

	"stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/finding"
)

// location is one fix as delivered by fixes.c.
type location struct {
	t, utc                      int64 // ns since the phone was started; ms since 1970
	lat, lon, alt               float64
	speed, speedSD, bearing, h2 float64 // h2: radius that holds 68 % of errors, m
}

// fix converts. Android's horizontal accuracy is a radius that holds 68 % of
// errors (Location.getAccuracy); for an error normal in both directions that
// is √(−2 ln 0.32) standard deviations of one. Its speed accuracy is one
// standard deviation.
func (l location) fix() sensors.Fix {
	f := sensors.NewFix(seconds(l.t), l.speed)
	f.LatDeg, f.LonDeg, f.Alt, f.SpeedSD = l.lat, l.lon, l.alt, l.speedSD
	f.HSD = l.h2 / math.Sqrt(-2*math.Log(0.32))
	f.BearingDeg = l.bearing
	if f.BearingDeg == 360 {
		f.BearingDeg = 0
	}
	if l.utc > 0 {
		f.UTC = time.UnixMilli(l.utc).UTC()
	}
	return f
}

// The states of the receiver; fixes.h has the same numbers.
const (
	starting = iota
	asking
	denied
	absent
	off
	listening
	broken
)

// fixReport converts the state of the receiver to a report; why is the system's reason.
func fixReport(state int, why string) (device.Report, bool) {
	say := func(c sensors.Condition, code finding.Code, args ...finding.Arg) (device.Report, bool) {
		return device.Report{Sensor: sensors.SensorFix, Condition: c, Detail: finding.New(code, args...)}, true
	}
	switch state {
	case asking:
		return say(sensors.Asking, "android.asks_location")
	case denied:
		return say(sensors.Denied, "android.no_location_leave")
	case absent:
		return say(sensors.Missing, "sensor.none", finding.Of("what", finding.New("sensor.receiver")))
	case off:
		return say(sensors.Silent, "android.location_off")
	case listening:
		return device.Report{Sensor: sensors.SensorFix, Condition: sensors.Available}, true
	case broken:
		return say(sensors.Missing, "android.location_refused", finding.Text("why", why))
	}
	return device.Report{}, false
}
