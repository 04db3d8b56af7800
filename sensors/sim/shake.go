package sim

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/spatial/r3"
)

// roadBand is the bandwidth of the road's noise, Hz: an anti-alias filter
// reduces it by the square root of the share of the band that it passes.
const roadBand = 200.0

// shaker generates the vibration of engine and road at the accelerometer.
type shaker struct {
	set    Vibration
	cutOff float64
	rng    *rand.Rand
	lines  []line
	road   float64 // sd of each axis at RefSpeed, m/s²
	b1, b2 float64 // second-order recursion of the bounce
	kick   float64 // its innovation at RefSpeed
	y1, y2 float64 // its last values
}

// line is one order of the engine.
type line struct {
	multiple, phase float64 // of the crank's turns; turns
	amplitude       r3.Vec  // at full throttle and RefRPM, m/s², phone axes
}

func newShaker(ph Phone, seed uint64) *shaker {
	s := &shaker{set: ph.Shake, cutOff: ph.Accel.CutOffHz, rng: stream(seed, streamShake)}
	draw := stream(seed, streamShake+100)
	weights := 0.0
	for _, o := range s.set.Orders {
		weights += o.Weight * o.Weight / 2
	}
	size := 0.0
	if weights > 0 {
		size = s.set.RMS * math.Sqrt(s.set.EngineShare/weights)
	}
	for _, o := range s.set.Orders {
		at := o.Direction
		random := gaussVec(draw, 1)
		if at == (r3.Vec{}) {
			at = random
		}
		s.lines = append(s.lines, line{multiple: o.Multiple, phase: draw.Float64(), amplitude: r3.Scale(size*o.Weight, r3.Unit(at))})
	}
	s.road = s.set.RMS * math.Sqrt((1-s.set.EngineShare)/3)
	if s.cutOff > 0 {
		s.road *= math.Sqrt(min(1, s.cutOff/roadBand))
	}
	s.springs(ph.Rate)
	return s
}

// springs sets the recursion y = b1·y1 + b2·y2 + noise of a damped oscillation
// and scales its noise so that its sd is BounceRMS (stationary variance of a
// second-order autoregression: Box and Jenkins, section 3.2.4).
func (s *shaker) springs(rate float64) {
	const damping = 0.3
	if s.set.BounceRMS == 0 || s.set.BounceHz == 0 || rate == 0 {
		return
	}
	w := 2 * math.Pi * s.set.BounceHz / rate
	r := math.Exp(-damping * w)
	s.b1, s.b2 = 2*r*math.Cos(w*math.Sqrt(1-damping*damping)), -r*r
	variance := (1 - s.b2) / ((1 + s.b2) * ((1-s.b2)*(1-s.b2) - s.b1*s.b1))
	s.kick = s.set.BounceRMS / math.Sqrt(variance)
}

// bounce returns the next vertical acceleration on the springs at a speed.
func (s *shaker) bounce(v float64) float64 {
	if s.kick == 0 {
		return 0
	}
	y := s.b1*s.y1 + s.b2*s.y2 + s.kick*s.rng.NormFloat64()
	s.y2, s.y1 = s.y1, y
	return y * v / s.set.RefSpeed
}

// feel returns the vibration at a fraction of a step, and the sd of the road
// noise on each axis, m/s², phone axes.
func (s *shaker) feel(u float64, from, to *motion, p *player) (r3.Vec, float64) {
	noise := s.road * (from.v + u*(to.v-from.v)) / s.set.RefSpeed
	sum := r3.Vec{}
	if noise > 0 {
		sum = gaussVec(s.rng, noise)
	}
	rpm := from.rpm + u*(to.rpm-from.rpm)
	turns := from.turns + u*(to.turns-from.turns)
	load := s.set.IdleLoad + (1-s.set.IdleLoad)*p.cmd.throttle
	size := rpm / s.set.RefRPM * load
	for i := range s.lines {
		l := &s.lines[i]
		x := size * s.pass(l.multiple*rpm/60) * math.Sin(2*math.Pi*(l.multiple*turns+l.phase))
		sum = r3.Add(sum, r3.Scale(x, l.amplitude))
	}
	return sum, noise
}

// pass is the gain of the anti-alias filter for a line.
func (s *shaker) pass(hz float64) float64 {
	if s.cutOff == 0 {
		return 1
	}
	x := hz / s.cutOff
	return 1 / math.Sqrt(1+x*x*x*x)
}
