package runs

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion"
	"stillair/sensors"
	"stillair/sensors/units"
)

// TestWheelie: a nose that rises and comes down again is a wheelie; one that stays up, as
// when the phone slips or the road climbs, and one that the springs raise is none.
func TestWheelie(t *testing.T) {
	const begins, ends = 10.0, 18.0 // s, of the launch
	hump := func(size float64) func(float64) float64 {
		return func(t float64) float64 { return size * math.Exp(-math.Pow((t-12)/0.5, 2)) }
	}
	tests := []struct {
		name  string
		angle func(t float64) float64 // rad
		gyro  bool
		want  float64
	}{
		{"a wheelie", hump(0.3), true, 0.3},
		{"a low one", hump(0.13), true, 0.13},
		{"on its springs", hump(0.06), true, 0},
		{"the phone slips", func(t float64) float64 { return 0.15 + 0.15*math.Tanh((t-12)/0.2) }, true, 0},
		{"no gyroscope", hump(0.3), false, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			mount := fusion.Mount{Span: fusion.Span{From: 0, To: 30}, Forward: r3.Vec{Y: 1}, Up: r3.Vec{Z: 1}} // left is −x
			var motion []sensors.Motion
			for at := 0.0; at < 30; at += 0.01 {
				rate := (tt.angle(at+1e-3) - tt.angle(at-1e-3)) / 2e-3
				turn := r3.Vec{X: rate + 0.02} // with a bias
				if !tt.gyro {
					turn = r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}
				}
				motion = append(motion, sensors.Motion{T: at, Turn: turn})
			}
			most, when := noseOf(motion, []fusion.Mount{mount}, begins, ends).wheelie(ends)
			if math.Abs(most-tt.want) > 0.01 || tt.want > 0 && math.Abs(when-12) > 0.05 {
				t.Errorf("%.3f rad at %.2f s, want %.3f at 12 s", most, when, tt.want)
			}
		})
	}
}

// TestDropped: what is missing from the thrust for long enough, and comes back.
func TestDropped(t *testing.T) {
	missing := func(from, to, share float64) func(float64) float64 {
		return func(t float64) float64 {
			if t > from && t < to {
				return 1 - share
			}
			return 1
		}
	}
	tests := []struct {
		name   string
		thrust func(t float64) float64 // of 6 m/s²
		by     float64
	}{
		{"none", func(float64) float64 { return 1 }, 0},
		{"a falling torque curve", func(t float64) float64 { return 1 - 0.1*t }, 0},
		{"a dip of the torque curve", missing(1, 2, 0.15), 0},
		{"a quick change of gear", missing(1.5, 1.7, 0.9), 0},
		{"the rear wheel spins", missing(1, 2, 0.4), 0.4},
		{"the throttle is closed at the end", missing(3, 9, 0.6), 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := drive{mass: 280, doubt: 1e-3}
			v := 3.0
			for at := 0.0; at < 4; at += driveStep {
				d.t, d.v = append(d.t, at), append(d.v, v)
				v += driveStep * (6*tt.thrust(at) - d.push(v, 0))
			}
			if got := d.dropped(); math.Abs(got.by-tt.by) > 0.07 {
				t.Errorf("%+v, want by %.2f at %.0f km/h", got, tt.by, v/units.KMH)
			}
		})
	}
}
