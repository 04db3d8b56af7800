package sim

import (
	"math"
	"math/rand/v2"

	"stillair/sensors"
)

// microphone records the sound of the ride.
type microphone struct {
	set    *Microphone
	zero   float64 // the log's clock at the start
	rng    *rand.Rand
	period float64
	n      int
	tones  []tone
	blocks float64 // phase of the tread at the start, turns
	low    float64 // state of the wind's filter
	keep   float64 // its coefficient
	loud   float64 // mean square that controls the gain
	gaps   *lapses
	now    sensors.Sound
	log    []sensors.Sound
}

// tone is one order of the engine.
type tone struct {
	multiple, phase float64 // turns
	size            float64 // amplitude at full throttle and RefRPM
	swell, stray    gaussMarkov
}

func newMicrophone(sc *Scenario, seed uint64) *microphone {
	m := &microphone{set: &sc.Microphone, zero: sc.ClockZero, rng: stream(seed, streamSound), period: math.Inf(1)}
	if m.set.Rate == 0 {
		return m
	}
	m.period = 1 / m.set.Rate
	m.keep = math.Exp(-2 * math.Pi * m.set.Wind.Hz * m.period)
	m.gaps = newLapses(stream(seed, streamSound+100), m.set.GapsPerHour, m.set.GapMean)
	m.blocks = m.rng.Float64()
	e := &m.set.Engine
	weights := 0.0
	for _, o := range e.Orders {
		weights += o.Weight * o.Weight / 2
	}
	for _, o := range e.Orders {
		m.tones = append(m.tones, tone{multiple: o.Multiple, phase: m.rng.Float64(), size: e.Size * o.Weight / math.Sqrt(weights),
			swell: newGaussMarkov(m.rng, e.Unsteady, e.Tau, m.period), stray: newGaussMarkov(m.rng, e.Unsteady, e.Tau, m.period)})
	}
	return m
}

// step records the sound of the step that began at t.
func (m *microphone) step(t float64, from, to *motion, p *player) {
	for at := float64(m.n) * m.period; at < t+dt; at = float64(m.n) * m.period {
		m.n++
		x := m.hear((at-t)/dt, from, to, p.cmd.throttle)
		m.record(at, x*m.gain(x))
	}
}

// hear is the sound at a fraction of a step.
func (m *microphone) hear(u float64, from, to *motion, throttle float64) float64 {
	set := m.set
	between := func(a, b float64) float64 { return a + u*(b-a) }
	turns, rpm := between(from.turns, to.turns), between(from.rpm, to.rpm)
	size := rpm / set.Engine.RefRPM * (set.Engine.IdleLoad + (1-set.Engine.IdleLoad)*throttle)
	x := set.Floor * m.rng.NormFloat64()
	for i := range m.tones {
		l := &m.tones[i]
		swell, stray := l.swell.advance(m.rng), l.stray.advance(m.rng)
		if l.multiple*rpm/60 < sensors.SoundBand {
			x += size * l.size * (1 + swell) * math.Sin(2*math.Pi*(l.multiple*turns+l.phase)+stray)
		}
	}
	return x + m.wind(math.Abs(between(from.v+from.head, to.v+to.head))) + m.tread(between(from.v, to.v), between(from.s, to.s))
}

// wind is first-order low-pass noise, proportional to the dynamic pressure.
func (m *microphone) wind(air float64) float64 {
	m.low = m.keep*m.low + math.Sqrt(1-m.keep*m.keep)*m.rng.NormFloat64()
	r := air / m.set.Wind.RefSpeed
	return m.set.Wind.Size * r * r * m.low
}

func (m *microphone) tread(v, s float64) float64 {
	t := &m.set.Tread
	size := t.Size * v / t.RefSpeed * math.Sqrt(2/(1+t.Second*t.Second))
	turn := 2 * math.Pi * (t.PerMetre*s + m.blocks)
	x := 0.0
	if t.PerMetre*v < sensors.SoundBand {
		x = size * math.Sin(turn)
	}
	if 2*t.PerMetre*v < sensors.SoundBand {
		x += size * t.Second * math.Sin(2*turn)
	}
	return x
}

// gain follows the loudness of the sound.
func (m *microphone) gain(x float64) float64 {
	g := &m.set.Gain
	if g.Target == 0 {
		return 1
	}
	tau := g.Release
	if x*x > m.loud {
		tau = g.Attack
	}
	m.loud += (x*x - m.loud) * min(1, m.period/tau)
	return min(g.Most, g.Target/math.Sqrt(m.loud))
}

// record adds a value to the current stretch.
func (m *microphone) record(at, x float64) {
	if m.gaps.in(at) {
		m.end()
		return
	}
	if len(m.now.Level) == 0 {
		m.now = sensors.Sound{T: at + m.zero + m.set.Latency, Rate: m.set.Rate}
	}
	level := math.Round(x * sensors.FullScale)
	if level < -sensors.FullScale || level > sensors.FullScale-1 {
		level = max(-sensors.FullScale, min(level, sensors.FullScale-1))
		m.now.Clipped++
	}
	m.now.Level = append(m.now.Level, int16(level))
	if float64(len(m.now.Level)) >= m.set.Stretch*m.set.Rate {
		m.end()
	}
}

// end completes the current stretch.
func (m *microphone) end() {
	if len(m.now.Level) > 0 {
		m.log = append(m.log, m.now)
	}
	m.now = sensors.Sound{}
}

// all returns the recorded sound.
func (m *microphone) all() []sensors.Sound {
	m.end()
	return m.log
}
