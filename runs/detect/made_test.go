package detect

import (
	"math"

	"stillair/fusion"
	"stillair/sensors"
)

// ridden is a ride made from a closed formula for the acceleration, 100
// samples a second, without any error.
type ridden struct {
	track *fusion.Track
	v, s  float64
}

func newRide() *ridden { return &ridden{track: &fusion.Track{}} }

// drive continues for some seconds, or until the speed passes stop, with the
// acceleration a of the speed and the time since the call.
func (r *ridden) drive(seconds, stop float64, a func(v, t float64) float64) *ridden {
	const h = 0.01
	for k := 0; float64(k)*h < seconds; k++ {
		now := a(r.v, float64(k)*h)
		tr := r.track
		tr.T, tr.V, tr.A = append(tr.T, float64(len(tr.T))*h), append(tr.V, r.v), append(tr.A, now)
		tr.S, tr.Yaw, tr.Shake = append(tr.S, r.s), append(tr.Yaw, 0), append(tr.Shake, 0)
		next := math.Max(0, r.v+h*now)
		passed := (r.v-stop)*(next-stop) <= 0 && next != r.v
		r.s += h * (r.v + next) / 2
		r.v = next
		if passed {
			break
		}
	}
	return r
}

const never = -1

func (r *ridden) stand(seconds float64) *ridden {
	from := float64(len(r.track.T)) / 100
	r.v = 0
	r.drive(seconds, never, func(float64, float64) float64 { return 0 })
	r.track.Still = append(r.track.Still, fusion.Span{From: from, To: float64(len(r.track.T)-1) / 100})
	return r
}

func (r *ridden) hold(seconds float64) *ridden {
	return r.drive(seconds, never, func(float64, float64) float64 { return 0 })
}

// steady accelerates evenly to a speed.
func (r *ridden) steady(a, to float64) *ridden {
	return r.drive(600, to, func(float64, float64) float64 { return a })
}

// power accelerates with a power in W/kg, at most 8 m/s², against the road
// load, with the throttle opening over 0.3 s.
func (r *ridden) power(perKg, to float64) *ridden {
	return r.drive(600, to, func(v, t float64) float64 {
		return math.Min(1, t/0.3)*math.Min(8, perKg/math.Max(v, 1)) - rolling290(v)
	})
}

// rolling290 is the deceleration of an invented naked bike of 290 kg: CdA
// 0.55 m², Crr 0.018, wheels of 4 % of the mass, air of 1.2 kg/m³.
func rolling290(v float64) float64 {
	if v == 0 {
		return 0
	}
	return (0.6*0.55*v*v/290 + 0.018*9.81) / 1.04
}

// coast rolls freely to a speed, with an extra deceleration.
func (r *ridden) coast(to, extra float64) *ridden {
	return r.drive(600, to, func(v, _ float64) float64 { return -rolling290(v) - extra })
}

// coastFor is coast for a time.
func (r *ridden) coastFor(seconds, extra float64) *ridden {
	return r.drive(seconds, never, func(v, _ float64) float64 { return -rolling290(v) - extra })
}

// fixes returns one fix a second, but none from a to b.
func (r *ridden) fixes(a, b float64) []sensors.Fix {
	var out []sensors.Fix
	for i := 0; i < len(r.track.T); i += 100 {
		if t := r.track.T[i]; t < a || t > b {
			out = append(out, sensors.NewFix(t, r.track.V[i]))
		}
	}
	return out
}
