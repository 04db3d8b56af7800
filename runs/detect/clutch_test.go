package detect

import (
	"math"
	"testing"
)

// rollsBy is the slowing of a bike from 110 to 35 km/h, in thirds of the time,
// by air, tyres, the slope and an additional deceleration (m/s², at all
// speeds), integrated in small steps with the wind squared with the speed.
func rollsBy(mass, cda, crr, slope, wind, course, other float64) slowed {
	const dt = 0.1
	var v []float64
	for x := 110 / 3.6; x > 35/3.6; {
		v = append(v, x)
		x -= dt * (0.5*1.2*cda*(x+wind)*(x+wind)/mass + 9.81*(crr*(1+0.004*x)+slope) + other)
	}
	var r slowed
	for k := range 3 {
		a, b := (len(v)-1)*k/3, (len(v)-1)*(k+1)/3
		p := part{seconds: float64(b-a) * dt, decel: (v[a] - v[b]) / (float64(b-a) * dt)}
		for _, x := range v[a:b] {
			p.speed += x / float64(b-a)
			p.square += x * x / float64(b-a)
		}
		r.parts = append(r.parts, p)
	}
	r.north, r.east = math.Cos(course*math.Pi/180), math.Sin(course*math.Pi/180)
	return r
}

// TestChances: a road that rises one way falls the other way, but engine drag
// always has the same sign. The values of the bikes are from the sources of
// package runs (Cossalter), those of engine drag from the sources of this
// package: 0.25 to 1 m/s².
func TestChances(t *testing.T) {
	day := func(pairs int, mass, cda, crr, slope, wind, other float64) (all []slowed) {
		for range pairs {
			all = append(all, rollsBy(mass, cda, crr, slope, wind, 84, other), rollsBy(mass, cda, crr, -slope, -wind, 264, other))
		}
		return all
	}
	one := func(all []slowed, at int, with slowed) []slowed { all[at] = with; return all }
	tests := []struct {
		name  string
		mass  float64
		all   []slowed
		in    []int // those held back; nil: none
		every bool
	}{
		{name: "an ordinary day", mass: 290, all: day(3, 290, 0.55, 0.018, 0, 1, 0)},
		{name: "one pair", mass: 290, all: day(1, 290, 0.55, 0.018, 0.004, 2, 0)},
		{name: "panniers and a passenger", mass: 460, all: day(3, 460, 0.75, 0.02, 0, 1.5, 0)},
		{name: "lying flat", mass: 280, all: day(3, 280, 0.25, 0.014, 0, 1.5, 0)},
		{name: "a clutch in cold oil", mass: 205, all: day(3, 205, 0.52, 0.019+0.01, 0, 1, 0)},
		{name: "up and down a hill", mass: 290, all: day(3, 290, 0.55, 0.018, 0.015, 0, 0)},
		{name: "in gear all day", mass: 290, all: day(3, 290, 0.55, 0.018, 0, 1, 0.5), every: true},
		{name: "in gear once each way", mass: 290, all: day(1, 290, 0.55, 0.018, 0, 1, 0.45), every: true},
		{name: "one of ten in gear", mass: 290, all: one(day(5, 290, 0.55, 0.018, 0, 1, 0), 7, rollsBy(290, 0.55, 0.018, 0, -1, 264, 0.5)), in: []int{7}},
		{name: "one of ten braked by 120 N", mass: 290, all: one(day(5, 290, 0.55, 0.018, 0, 1, 0), 2, rollsBy(290, 0.55, 0.018, 0, 1, 84, 120.0/290)), in: []int{2}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			want := make([]bool, len(tt.all))
			for i := range want {
				want[i] = tt.every
			}
			for _, i := range tt.in {
				want[i] = true
			}
			for i, p := range chances(massRange(tt.mass), tt.all) {
				if want[i] && p < 0.7 || !want[i] && p > 0.3 {
					t.Errorf("run %d: chance %.2f of a gear or a brake, which is %v", i, p, want[i])
				}
			}
		})
	}
}
