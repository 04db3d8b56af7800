package marks

import (
	"math"
	"testing"

	"stillair/fusion"
)

// exact is an error-free track of a bike that stands for 3 s and then moves
// with given speed and distance, at 100 Hz.
func exact(speed, distance func(t float64) float64, seconds float64) *fusion.Track {
	tr := &fusion.Track{}
	for i := 0; i <= int((3+seconds)*100); i++ {
		t := float64(i) / 100
		v, s := 0.0, 0.0
		if t > 3 {
			v, s = speed(t-3), distance(t-3)
		}
		tr.T, tr.V, tr.S = append(tr.T, t), append(tr.V, v), append(tr.S, s)
	}
	return tr
}

// sure is a negligibly small covariance.
type sure struct{}

func (sure) SD([]fusion.Term) float64 { return 1e-5 }

func (sure) SpeedCov(times []float64) [][]float64 {
	c := make([][]float64, len(times))
	for i := range c {
		c[i] = make([]float64, len(times))
		c[i][i] = 1e-10
	}
	return c
}

// TestTextbookLaunches compares the marks with closed solutions: constant
// acceleration, t = √(2s/a) and t = v/a; constant power from rest, t = m·v²/(2P)
// and s = (2/3)·v·t (textbook mechanics). With constant power the acceleration
// at rest is unbounded, which no clutch can transmit and which is outside the
// model of a start: there the first movement may be off by more.
func TestTextbookLaunches(t *testing.T) {
	const a, p = 5.0, 100.0 // m/s², W/kg
	steady := exact(func(t float64) float64 { return a * t }, func(t float64) float64 { return a * t * t / 2 }, 21)
	power := exact(func(t float64) float64 { return math.Sqrt(2 * p * t) },
		func(t float64) float64 { return 2. / 3 * math.Sqrt(2*p*t) * t }, 31)
	quarter := 402.336 // m: 1320 ft of 0.3048 m (NIST SP 811)
	root := func(s float64) float64 { return math.Sqrt(2 * s / a) }
	cube := func(s float64) float64 { return math.Cbrt(9 * s * s / (8 * p)) }
	tests := []struct {
		name    string
		track   *fusion.Track
		mark    string
		time    float64
		rollout float64
		slack   float64 // of the first movement, s
		speed   float64
	}{
		{"constant acceleration", steady, "0-100 km/h", 100 / 3.6 / a, 100/3.6/a - root(0.3048), 0.02, math.NaN()},
		{"constant acceleration", steady, "0-60 mph", 26.8224 / a, 26.8224/a - root(0.3048), 0.02, math.NaN()},
		{"constant acceleration", steady, "60 ft", root(18.288), root(18.288) - root(0.3048), 0.02, a * root(18.288)},
		{"constant acceleration", steady, "1/4 mile", root(quarter), root(quarter) - root(0.3048), 0.02,
			20.1168 / (root(quarter) - root(quarter-20.1168))},
		{"constant acceleration", steady, "1 km", root(1000), root(1000) - root(0.3048), 0.02, a * root(1000)},
		{"constant power", power, "0-100 km/h", math.Pow(100/3.6, 2) / (2 * p), math.Pow(100/3.6, 2)/(2*p) - cube(0.3048), 0.05, math.NaN()},
		{"constant power", power, "1/8 mile", cube(201.168), cube(201.168) - cube(0.3048), 0.05, 20.1168 / (cube(201.168) - cube(181.0512))},
		{"constant power", power, "1/4 mile", cube(quarter), cube(quarter) - cube(0.3048), 0.05, 20.1168 / (cube(quarter) - cube(quarter-20.1168))},
	}
	for _, tt := range tests {
		t.Run(tt.name+" "+tt.mark, func(t *testing.T) {
			n := len(tt.track.T)
			marks, first := OfLaunch(tt.track, sure{}, 3, tt.track.T[n-1], nil, nil)
			near(t, "first movement", first.First.X, 3, tt.slack)
			for _, m := range marks {
				if m.Name == tt.mark {
					near(t, "from the rollout", m.Rollout.X, tt.rollout, 0.004)
					near(t, "from first movement", m.Time.X, tt.time, tt.slack)
					if !math.IsNaN(tt.speed) {
						near(t, "speed", m.Speed.X, tt.speed, 0.01)
					}
					return
				}
			}
			t.Fatalf("mark not reached")
		})
	}
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: got %.4f, want %.4f ± %v", what, got, want, within)
	}
}
