package roadload

import "math"

// Vehicle is the vehicle, and the air around it, on which a road load acts.
type Vehicle struct {
	Mass, Inertia float64 // m and m + m_rot, kg
	Density       float64 // kg/m³
	Gravity       float64 // m/s²
	Slope         float64 // k, s/m
}

// Force is the road load on level ground in still air at v m/s, N.
func (l Load) Force(v float64, b Vehicle) float64 {
	m := l.motion(b)
	return m.at(v, 0, 0).total * b.Inertia
}

// CoastTime is the time in which the bike slows from one speed to another on
// level ground in still air, s: the integral of dv over the deceleration, by
// Simpson's rule.
func (l Load) CoastTime(from, to float64, b Vehicle) float64 {
	m := l.motion(b)
	const n = 200
	sum := 0.0
	for i := range n + 1 {
		weight := 2.0
		switch {
		case i == 0 || i == n:
			weight = 1
		case i%2 == 1:
			weight = 4
		}
		sum += weight / m.at(to+(from-to)*float64(i)/n, 0, 0).total
	}
	return math.Abs(from-to) / (3 * n) * sum
}

func (l Load) motion(b Vehicle) motion {
	return motion{
		cda: l.CdA.X, crr: l.Crr.X, k: b.Slope, warm: 1, dir: 1,
		air: b.Density / (2 * b.Inertia), weight: b.Mass * b.Gravity / b.Inertia,
	}
}
