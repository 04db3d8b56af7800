package foreign

import (
	"math"
	"math/rand/v2"
)

const (
	gravity  = 9.81
	density  = 1.2    // kg/m³
	idle     = 1300.0 // 1/min
	kmh      = 1 / 3.6
	grip     = 0.85 // of the weight
	shiftCut = 0.18 // s without force at a gear change
)

// machine is a motorcycle with its rider.
type machine struct {
	mass, rotating  float64 // kg
	cda, crr        float64
	grows, squares  float64   // of rolling resistance, s/m and s²/m²
	power, limitRPM float64   // W, 1/min
	gears           []float64 // 1/min per m/s
	order           float64   // strongest vibration order of the engine
	held            float64   // W of drag at limitRPM with a closed throttle
	squat           float64   // rad of pitch per g
}

func drawn(rng *rand.Rand) machine {
	between := func(a, b float64) float64 { return a + (b-a)*rng.Float64() }
	m := machine{power: math.Exp(between(math.Log(9e3), math.Log(140e3))), cda: between(0.3, 0.75), crr: between(0.012, 0.021),
		grows: between(0, 0.006), squares: between(0, 1.2e-4), limitRPM: between(7000, 12000), order: 1,
		squat: between(0.5, 2.5) * math.Pi / 180}
	m.mass = between(200, 260) + between(0, 140)*math.Min(1, m.power/60e3)
	m.rotating = m.mass * between(0.03, 0.05)
	m.held = m.power / between(6, 9) // 1 to 1.5 bar of mean pressure (Heywood, from memory)
	if rng.IntN(4) == 0 {
		m.order = 2
	}
	top, many := 0.97*m.top(), 5+rng.IntN(2)
	first := top / between(2.4, 3)
	for i := range many {
		m.gears = append(m.gears, m.limitRPM/(first*math.Pow(top/first, float64(i)/float64(many-1))))
	}
	return m
}

// top is its approximate top speed, m/s.
func (m machine) top() float64 { return math.Cbrt(m.power / (density / 2 * m.cda)) }

// full is the power at an engine speed and full throttle, W.
func (m machine) full(rpm float64) float64 {
	x := rpm / m.limitRPM
	p := m.power * x * (2 - x)
	if x > 1 {
		p *= math.Max(0, 1-(x-1)*12)
	}
	return math.Max(0, p)
}

// rolling is the rolling resistance at a speed, N.
func (m machine) rolling(v float64) float64 {
	return m.mass * gravity * m.crr * (1 + m.grows*v + m.squares*v*v)
}

// driven is the force of the engine at the wheel in a gear, N, with a share of
// full throttle; the clutch slips if the engine would be too slow.
func (m machine) driven(v, share float64, gear int) float64 {
	const slips = 0.4 // of the limit
	rpm := math.Max(m.gears[gear]*v, slips*m.limitRPM)
	return math.Min(m.full(rpm)/math.Max(v, 1), grip*m.mass*gravity) * share
}

// dragged is the drag of the engine with a closed throttle, N.
func (m machine) dragged(v float64, gear int) float64 {
	rpm := m.gears[gear] * v
	if rpm < idle {
		return 0
	}
	return m.held * (0.67 + 0.33*rpm/m.limitRPM) * rpm / m.limitRPM / math.Max(v, 1)
}

// gearFor is the lowest in which the engine stays below three quarters of its limit.
func (m machine) gearFor(v float64) int {
	for i, ratio := range m.gears {
		if ratio*v < 0.75*m.limitRPM {
			return i
		}
	}
	return len(m.gears) - 1
}
