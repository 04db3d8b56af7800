package recorder

import (
	"math"

	"stillair/sensors"
)

// rhythm holds the times of a sensor's last samples, to compute its rate.
type rhythm struct{ times []float64 }

// rateSpan is over how long a rate is taken, s: of fixes, of which there may be
// one a second, long enough for a few; of the others so short that what is shown
// is never older than a glance.
func rateSpan(s sensors.Sensor) float64 {
	if s == sensors.SensorFix {
		return 4
	}
	return 2
}

// mostTimes bounds what is held where samples come faster than any sensor's: two
// seconds at 500 a second.
const mostTimes = 1000

// after gives the rate once a sample has come at t, or NaN while it is the only
// one. Samples are counted over the span and their intervals are not averaged one
// by one, so that neither jitter nor a past slow stretch affects it. Two samples
// are kept however far apart, since a slow sensor has a rate too.
func (r *rhythm) after(t, span float64) float64 {
	r.times = append(r.times, t)
	old := 0
	for len(r.times)-old > 2 && r.times[old] < t-span || len(r.times)-old > mostTimes {
		old++
	}
	r.times = r.times[old:]
	if len(r.times) < 2 {
		return math.NaN()
	}
	return float64(len(r.times)-1) / (t - r.times[0])
}

// pause forgets what was before t.
func (r *rhythm) pause(t float64) { r.times = append(r.times[:0], t) }
