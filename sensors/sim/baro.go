package sim

import (
	"math"
	"math/rand/v2"

	"stillair/sensors"
	"stillair/sensors/chunk"
)

// baro is the pressure sensor.
type baro struct {
	set    *Barometer
	sc     *Scenario
	rng    *rand.Rand
	period float64
	n      int
	drift  gaussMarkov
	log    chunk.Buffer[sensors.Pressure]
}

func newBarometer(sc *Scenario, seed uint64) *baro {
	b := &baro{set: &sc.Baro, sc: sc, rng: stream(seed, streamBaro), period: math.Inf(1)}
	if sc.Baro.Rate > 0 {
		b.period = 1 / sc.Baro.Rate
		b.n = 1
		b.drift = newGaussMarkov(b.rng, sc.Baro.DriftSD, sc.Baro.DriftTau, b.period)
	}
	return b
}

// step takes a reading if one is due by the end of the step that began at t.
func (b *baro) step(t float64, n *motion, p *player) {
	at := float64(b.n) * b.period
	if !(at < t+dt) {
		return
	}
	b.n++
	u := n.v + n.head
	pa := b.sc.Air.Pressure - b.sc.Air.Density*b.sc.Road.Gravity*p.road.height(n.x)
	pa += b.set.DynamicCoef * 0.5 * b.sc.Air.Density * u * math.Abs(u)
	pa += b.drift.advance(b.rng) + b.set.NoiseSD*b.rng.NormFloat64()
	b.log.Add(sensors.Pressure{T: at + b.sc.ClockZero, Pa: pa})
}
