package fusion

import (
	"math"

	"stillair/sensors"
)

// fix is a speed that the receiver reported.
type fix struct {
	t     float64 // arrival, s
	speed float64 // m/s
	trust float64 // variance beyond the receiver's usual, as a factor; 1 is usual
}

// tooFast is a speed that no motorcycle reaches, m/s.
const tooFast = 150

// usable are the fixes that say something new. Receivers repeat the last fix
// when they have no other: the same satellite time, or exactly the same speed
// and place while moving.
func usable(fixes []sensors.Fix) []fix {
	out := make([]fix, 0, len(fixes))
	var last sensors.Fix
	for _, f := range fixes {
		if !(f.Speed >= 0 && f.Speed < tooFast) || math.IsNaN(f.T) || math.IsInf(f.T, 0) {
			continue
		}
		if n := len(out); n > 0 {
			if f.T <= out[n-1].t || repeats(last, f) {
				continue
			}
		}
		last = f
		out = append(out, fix{t: f.T, speed: f.Speed, trust: 1})
	}
	return out
}

func repeats(a, b sensors.Fix) bool {
	if !a.UTC.IsZero() && a.UTC.Equal(b.UTC) {
		return true
	}
	return a.Speed > restSpeed && a.Speed == b.Speed && a.HasPosition() && a.LatDeg == b.LatDeg && a.LonDeg == b.LonDeg
}

// roughSpeed draws straight lines between the fixes, the lag taken off, for
// every time of ts.
func roughSpeed(ts []float64, fixes []fix, lag float64) []float64 {
	out := make([]float64, len(ts))
	k := 0
	for i, t := range ts {
		at := t + lag
		for k+1 < len(fixes) && fixes[k+1].t <= at {
			k++
		}
		switch {
		case at <= fixes[0].t:
			out[i] = fixes[0].speed
		case k+1 == len(fixes):
			out[i] = fixes[k].speed
		default:
			a, b := fixes[k], fixes[k+1]
			out[i] = a.speed + (b.speed-a.speed)*(at-a.t)/(b.t-a.t)
		}
	}
	return out
}
