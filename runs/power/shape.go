package power

import "math"

// shape is the model of the force at full throttle over speed, N: piecewise
// linear between knots with small curvature, and a hump.
type shape struct {
	from   float64 // speed of the first knot, m/s
	knots  int
	hump   []float64 // the hump at the knots, 1
	scale  float64   // mean force of the pulls, N: the unit of all coefficients
	spread float64   // from the lowest to the highest speed of the pulls, m/s
}

// knotStep is the distance of the knots, m/s.
const knotStep = 0.5

// Prior of the full-throttle force over speed, in units of its mean and of the
// range of the pull: a torque curve rises, is flat, and falls the faster the
// nearer the engine comes to its limit, as its breathing gives out (Heywood,
// Internal Combustion Engine Fundamentals, from memory). The spread is wide
// enough for an electric motor, whose force is that of a constant power and
// bends the other way.
const (
	humpMean, humpSD = -1.0, 2.0
	humpGrowth       = 2.0 // the curvature of the hump grows with this power of speed
)

// The remaining curvature is white noise over speed. Prior mean and standard
// deviation of the natural logarithm of its strength, in the same units.
const usualBend, bendSD = 0.0, 1.0

func newShape(low, high, force float64) shape {
	s := shape{from: math.Max(0, math.Floor(low/knotStep)-1) * knotStep, scale: force, spread: high - low}
	s.knots = int(math.Ceil((high-s.from)/knotStep)) + 3
	bend, mean := make([]float64, s.knots), 0.0
	for k := range bend {
		v := s.speed(k)
		bend[k] = math.Pow(v/high, humpGrowth)
		if v >= low && v <= high {
			mean += bend[k] * knotStep / s.spread
		}
	}
	s.hump = make([]float64, s.knots)
	for k := 2; k < s.knots; k++ {
		s.hump[k] = 2*s.hump[k-1] - s.hump[k-2] + bend[k-1]/mean*square(knotStep/s.spread)
	}
	return s
}

func (s shape) speed(k int) float64 { return s.from + float64(k)*knotStep }

// at finds the knot below a speed and the interpolation weight of the next.
func (s shape) at(v float64) (k int, share float64) {
	x := math.Max(0, math.Min((v-s.from)/knotStep, float64(s.knots)-1.001))
	k = int(x)
	return k, x - float64(k)
}

// stiffness is the factor of the squared second differences of the knots in the
// penalty, for a curvature of strength exp(bend).
func (s shape) stiffness(bend float64) float64 {
	return math.Pow(s.spread/knotStep, 3) / math.Exp(bend)
}
