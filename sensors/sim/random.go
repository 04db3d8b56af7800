package sim

import (
	"math"
	"math/rand/v2"
)

// Numbers of the random streams, one for each part of the ride.
const (
	streamRider uint64 = iota + 1
	streamWind
	streamRoadOut
	streamRoadBack
	streamMount
	streamMotion
	streamShake
	streamLoss
	streamReceiver
	streamBaro
	streamSound
)

// stream returns one part's source of randomness.
func stream(seed, part uint64) *rand.Rand {
	return rand.New(rand.NewPCG(seed, part*0x9e3779b97f4a7c15))
}

// gaussMarkov is a first-order Gauss-Markov (Ornstein-Uhlenbeck) process,
// stepped exactly.
type gaussMarkov struct {
	x, keep, kick float64
}

// newGaussMarkov starts a process with standard deviation sd and time constant
// tau, to be stepped by dt, in its stationary state.
func newGaussMarkov(rng *rand.Rand, sd, tau, dt float64) gaussMarkov {
	g := gaussMarkov{x: sd * rng.NormFloat64()}
	if tau > 0 {
		g.keep = math.Exp(-dt / tau)
	}
	g.kick = sd * math.Sqrt(1-g.keep*g.keep)
	return g
}

func (g *gaussMarkov) advance(rng *rand.Rand) float64 {
	g.x = g.keep*g.x + g.kick*rng.NormFloat64()
	return g.x
}

// lapses is a random sequence of outages: exponential times between them,
// exponential lengths.
type lapses struct {
	rng       *rand.Rand
	meanWait  float64 // s; 0: never
	meanLen   float64
	from, end float64
}

func newLapses(rng *rand.Rand, perHour, meanLen float64) *lapses {
	l := &lapses{rng: rng, meanLen: meanLen, from: math.Inf(1), end: math.Inf(1)}
	if perHour > 0 {
		l.meanWait = 3600 / perHour
		l.plan(0)
	}
	return l
}

func (l *lapses) plan(after float64) {
	l.from = after + l.meanWait*l.rng.ExpFloat64()
	l.end = l.from + l.meanLen*l.rng.ExpFloat64()
}

// in reports whether t falls into an outage; t must not go back.
func (l *lapses) in(t float64) bool {
	for t >= l.end {
		l.plan(l.end)
	}
	return t >= l.from
}
