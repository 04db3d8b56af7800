package android

import (
	"math"
	"time"

	"stillair/sensors"
	"stillair/sensors/device"
)

// location is one fix as fixes.c hands it over.
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

// How the receiver is; fixes.h has the same numbers.
const (
	starting = iota
	asking
	denied
	absent
	off
	listening
	broken
)

// told puts the state of the receiver into words; why is the system's.
func told(state int, why string) (device.Told, bool) {
	say := func(c sensors.Condition, detail string) (device.Told, bool) {
		return device.Told{Sensor: sensors.SensorFix, Condition: c, Detail: detail}, true
	}
	switch state {
	case asking:
		return say(sensors.Asking, "Android asks whether the app may use the location; allow the precise one")
	case denied:
		return say(sensors.Denied, "the app may not use the precise location; allow it in the phone's settings for this app")
	case absent:
		return say(sensors.Missing, "this phone has no satellite receiver")
	case off:
		return say(sensors.Silent, "location is switched off in the phone's settings")
	case listening:
		return say(sensors.Available, "")
	case broken:
		return say(sensors.Missing, "Android refused the location: "+why)
	}
	return device.Told{}, false
}
