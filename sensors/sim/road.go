package sim

import (
	"math"
	"math/rand/v2"
)

// profileStep is the spacing of the road's slope nodes, m; between them the
// slope is linear.
const profileStep = 5.0

// profile is the slope of the road over the position x. It is extended in both
// directions as needed.
type profile struct {
	mean      float64
	out, back side // from x = 0 towards positive and negative x
}

// side holds the roughness on one side of x = 0. The slope about the mean is a
// Matérn 3/2 process (Rasmussen and Williams, Gaussian Processes for Machine
// Learning, 2006, section 4.2.1), generated from its state, value and
// derivative.
type side struct {
	rng    *rand.Rand
	next   matern
	slope  []float64 // at each node, the mean in it, direction of growing x
	height []float64 // at each node, m
}

// matern steps a Matérn 3/2 process over a fixed distance.
type matern struct {
	x, dx         float64    // value and derivative
	a             [4]float64 // transition, by rows
	l11, l21, l22 float64    // Cholesky factor of the innovation
	sd, lambda    float64
}

func newMatern(sd, length, step float64) matern {
	m := matern{sd: sd}
	if sd == 0 {
		return m
	}
	l := math.Sqrt(3) / length
	m.lambda = l
	e := math.Exp(-l * step)
	m.a = [4]float64{e * (1 + l*step), e * step, -e * l * l * step, e * (1 - l*step)}
	p, q := sd*sd, sd*sd*l*l // stationary variances of value and derivative
	q11 := p - (m.a[0]*m.a[0]*p + m.a[1]*m.a[1]*q)
	q21 := -(m.a[2]*m.a[0]*p + m.a[3]*m.a[1]*q)
	q22 := q - (m.a[2]*m.a[2]*p + m.a[3]*m.a[3]*q)
	m.l11 = math.Sqrt(max(q11, 0))
	m.l21 = q21 / m.l11
	m.l22 = math.Sqrt(max(q22-m.l21*m.l21, 0))
	return m
}

// settle draws the state from the stationary distribution.
func (m *matern) settle(rng *rand.Rand) {
	m.x, m.dx = m.sd*rng.NormFloat64(), m.sd*m.lambda*rng.NormFloat64()
}

func (m *matern) advance(rng *rand.Rand) {
	if m.sd == 0 {
		return
	}
	e1, e2 := rng.NormFloat64(), rng.NormFloat64()
	m.x, m.dx = m.a[0]*m.x+m.a[1]*m.dx+m.l11*e1, m.a[2]*m.x+m.a[3]*m.dx+m.l21*e1+m.l22*e2
}

// newProfile starts both sides from the same state at x = 0. The process is
// reversible in space except for the sign of its derivative.
func newProfile(rd Road, seed uint64) *profile {
	m := newMatern(rd.RoughSD, rd.RoughLength, profileStep)
	p := &profile{mean: rd.Grade}
	if rd.Seed != 0 {
		seed = rd.Seed
	}
	p.out.rng, p.back.rng = stream(seed, streamRoadOut), stream(seed, streamRoadBack)
	m.settle(p.out.rng)
	p.out.next = m
	m.dx = -m.dx
	p.back.next = m
	for _, s := range []*side{&p.out, &p.back} {
		s.slope, s.height = []float64{rd.Grade + m.x}, []float64{0}
	}
	return p
}

// grow adds nodes until node i+1 exists.
func (p *profile) grow(s *side, i int, sign float64) {
	for len(s.slope) < i+2 {
		s.next.advance(s.rng)
		last := len(s.slope) - 1
		slope := p.mean + s.next.x
		s.height = append(s.height, s.height[last]+sign*profileStep*(s.slope[last]+slope)/2)
		s.slope = append(s.slope, slope)
	}
}

// locate returns the side of x, the node before it, and the distance to that
// node in m.
func (p *profile) locate(x float64) (s *side, node int, rest, sign float64) {
	s, sign = &p.out, 1
	if x < 0 {
		s, sign, x = &p.back, -1, -x
	}
	node = int(x / profileStep)
	if node+1 >= len(s.slope) {
		p.grow(s, node, sign)
	}
	return s, node, x - float64(node)*profileStep, sign
}

// slope returns the sine of the slope at x, rising with x positive.
func (p *profile) slope(x float64) float64 {
	s, i, rest, _ := p.locate(x)
	return s.slope[i] + (s.slope[i+1]-s.slope[i])*rest/profileStep
}

// height returns the height relative to x = 0, m.
func (p *profile) height(x float64) float64 {
	s, i, rest, sign := p.locate(x)
	rise := (s.slope[i+1] - s.slope[i]) / profileStep
	return s.height[i] + sign*rest*(s.slope[i]+rise*rest/2)
}
