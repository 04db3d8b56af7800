package foreign

import (
	"math"
	"math/rand/v2"

	"stillair/sensors"
)

// The rider's actions.
type mode int

const (
	standing mode = iota
	coasting
	driving // with a share of full throttle
	engineBraking
	braking
	holding // a speed
)

const tick = 0.0025 // s

// world is the state of a ride.
type world struct {
	machine
	rng            *rand.Rand
	t, v, a        float64
	way, x, y      float64
	heading, yaw   float64
	mode           mode
	gear           int
	throttle       func(since float64) float64 // share of full
	since, shifted float64                     // s, when the throttle was opened, and the last gear change ends
	want           float64                     // speed held, m/s, or braking, m/s²

	dragging float64 // N of a brake while coasting
	inGear   bool    // while coasting

	wind, from, gust, gustSD, gustTime float64
	steep, tilt                        float64 // of the road: its waves, and its mean slope
	habits                             habits
	waves                              [4]float64

	rpm, engineTurns, pitch, pitching float64
	antic                             antic
	lift, lifting, liftingMore        float64 // of the front wheel: rad, rad/s, rad/s²
	phone                             phone
	past                              []moment // every pastStep
	events                            []event
	setups                            []sensors.Setup
}

// becomes changes the setup of the bike.
func (w *world) becomes(name string) {
	w.setups = append(w.setups, sensors.Setup{From: zero + w.t, Name: name})
}

const pastStep = 0.02 // s

type moment struct{ v, x, y, height, heading float64 }

func newWorld(seed uint64) *world {
	rng := rand.New(rand.NewPCG(seed, 4711))
	w := &world{machine: drawn(rng), rng: rng, rpm: idle}
	w.wind, w.from = math.Abs(rng.NormFloat64())*2, w.between(0, 2*math.Pi)
	w.gustSD, w.gustTime = w.between(0.15, 0.4)*w.wind+0.1, w.between(3, 12)
	w.steep, w.heading = w.between(0, 0.006), w.between(0, 2*math.Pi)
	for i := range w.waves {
		w.waves[i] = w.between(0, 2*math.Pi)
	}
	w.phone = newPhone(rng)
	return w
}

func (w *world) between(a, b float64) float64 { return a + (b-a)*w.rng.Float64() }

// road returns slope and height: four sine waves of the position.
func (w *world) road() (slope, height float64) {
	for i, length := range []float64{2500, 1100, 600, 310} {
		size, phase := w.steep*[]float64{1, 0.7, 0.4, 0.25}[i], 2*math.Pi*w.x/length+w.waves[i]
		slope += size * math.Sin(phase) * math.Cos(w.heading)
		height -= size * math.Cos(phase) * length / (2 * math.Pi)
	}
	return slope + w.tilt*math.Cos(w.heading), height + w.tilt*w.x
}

// resists is the resistance of the bike without engine and brakes, N.
func (w *world) resists(slope float64) float64 {
	w.gust += -w.gust*tick/w.gustTime + w.gustSD*math.Sqrt(2*tick/w.gustTime)*w.rng.NormFloat64()
	w.wind += w.habits.windRises * tick
	cda := w.habits.drag(w.cda, w.v)
	along := w.v - (w.wind+w.gust)*math.Cos(w.from-w.heading)
	across := (w.wind + w.gust) * math.Sin(w.from-w.heading)
	f := density/2*cda*along*math.Hypot(along, across) + w.mass*gravity*slope
	if w.v > 0.02 {
		f += w.rolling(w.v)
	}
	return f
}

// pushes is the force of engine and brakes, N.
func (w *world) pushes(resistance float64) float64 {
	switch w.mode {
	case driving:
		if w.gears[w.gear]*w.v > 0.985*w.limitRPM && w.gear < len(w.gears)-1 {
			w.gear++
			w.shifted = w.t + shiftCut
		}
		if w.t < w.shifted {
			return 0
		}
		return w.driven(w.v, w.throttle(w.t-w.since), w.gear) * w.antic.left(w.t-w.since)
	case engineBraking:
		return -w.dragged(w.v, w.gear)
	case coasting:
		if w.inGear {
			return -w.dragged(w.v, len(w.gears)-1) - w.dragging
		}
		return -w.dragging
	case braking:
		return -w.want * w.mass
	case holding:
		pull := resistance + (w.mass+w.rotating)*math.Max(-0.6, math.Min(0.5, 0.3*(w.want-w.v)))
		return math.Min(pull, 0.7*w.driven(w.v, 1, w.gear))
	}
	return 0
}

// turning is the target engine speed, and the time constant to reach it, s.
func (w *world) turning() (rpm, time float64) {
	geared := w.gears[w.gear] * w.v
	switch w.mode {
	case driving:
		if w.antic.kind == spin && w.antic.left(w.t-w.since) < 1 {
			return w.limitRPM, 0.08
		}
		return math.Max(geared, 0.3*w.limitRPM), 0.08
	case engineBraking, holding:
		return math.Max(geared, idle), 0.1
	case coasting:
		if w.inGear {
			return math.Max(w.gears[len(w.gears)-1]*w.v, idle), 0.1
		}
	}
	return idle, 0.4
}

func (w *world) step() {
	slope, height := w.road()
	resistance := w.resists(slope)
	f := w.pushes(resistance) - resistance
	if w.a = f / (w.mass + w.rotating); w.v <= 0 && (f < 0 || w.mode == standing || w.mode == braking) {
		w.a = 0
	}
	w.v = math.Max(0, w.v+w.a*tick)
	w.way += w.v * tick
	w.heading += w.yaw * tick
	w.x, w.y = w.x+w.v*math.Cos(w.heading)*tick, w.y+w.v*math.Sin(w.heading)*tick
	rpm, time := w.turning()
	w.rpm += (rpm - w.rpm) * tick / time
	w.engineTurns += w.rpm / 60 * tick
	const natural, damping = 2 * math.Pi * 1.8, 0.5 // of the springs
	w.pitching += (natural*natural*(-w.squat*w.a/gravity-w.pitch) - 2*damping*natural*w.pitching) * tick
	w.pitch += w.pitching * tick
	w.t += tick
	w.lift, w.lifting, w.liftingMore = 0, 0, 0
	if w.mode == driving {
		w.lift, w.lifting, w.liftingMore = w.antic.lift(w.t - w.since)
	}
	w.phone.feel(w, slope)
	if len(w.past) <= int(w.t/pastStep) {
		w.past = append(w.past, moment{w.v, w.x, w.y, height, w.heading})
	}
}

// until continues in a mode until done, or for a maximum time.
func (w *world) until(m mode, most float64, done func() bool) {
	w.mode, w.since = m, w.t
	for end := w.t + most; w.t < end && !done(); {
		w.step()
	}
}

func never() bool { return false }
