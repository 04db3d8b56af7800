package fusion

import "math"

// noise holds the smoother's noise parameters. All are learned from the ride;
// the priors matter only when the ride is short.
type noise struct {
	vibration float64 // density of the accelerometer's noise near zero frequency over that at a few Hz
	road      float64 // random walk of slope and mount, (m/s²)² per metre
	white     float64 // receiver, independent from fix to fix, m/s
	drift     float64 // receiver, correlated, m/s
	memory    float64 // its correlation time, s
	walk      float64 // without the accelerometer: random walk of the acceleration, (m/s²)²/s
	jolt      float64 // and its white part, of brakes and gear changes between two fixes, m²/s³
}

const noises = 7

// Indices of the parameters learned with the accelerometer and without it;
// without it a correlated error cannot be distinguished from motion.
var (
	learnedFused = []int{0, 1, 2, 3, 4}
	learnedAlone = []int{2, 5, 6}

	learnedStraight = []int{2, 6}
)

// typical and spread are the medians and logarithmic standard deviations of the
// log-normal priors for phones, roads and receivers: wide enough that a ride of
// some minutes overrides them.
var (
	typical = noise{vibration: 1.2, road: 3e-5, white: 0.05, drift: 0.05, memory: 6, walk: 1, jolt: 0.05}
	spread  = [noises]float64{1.2, 2.0, 0.9, 0.9, 0.7, 1.5, 2.5}
)

// log returns the natural logarithms of the parameters.
func (n noise) log() [noises]float64 {
	return [noises]float64{math.Log(n.vibration), math.Log(n.road), math.Log(n.white), math.Log(n.drift), math.Log(n.memory), math.Log(n.walk), math.Log(n.jolt)}
}

// noiseOf is the inverse of log.
func noiseOf(x [noises]float64) noise {
	return noise{vibration: math.Exp(x[0]), road: math.Exp(x[1]), white: math.Exp(x[2]), drift: math.Exp(x[3]), memory: math.Exp(x[4]),
		walk: math.Exp(x[5]), jolt: math.Exp(x[6])}
}

// gnssOnlyAt reports whether the accelerometer is disabled at a sample.
func (r *ride) gnssOnlyAt(i int) bool {
	if r.gnssOnly == nil {
		return false
	}
	return i > 0 && r.gnssOnly[i] > r.gnssOnly[i-1] || i == 0 && r.gnssOnly[1] > 0
}

// logPrior is the logarithm of the prior density of the noise, up to a
// constant.
func (n noise) logPrior(before noise) float64 {
	x, centre := n.log(), before.log()
	var sum float64
	for i := range x {
		d := (x[i] - centre[i]) / spread[i]
		sum -= d * d / 2
	}
	return sum
}

// mostDrift is the largest plausible standard deviation of a receiver's
// correlated error, m/s. Satellite speeds come from the carrier's Doppler shift
// and are accurate to 0.05 to 0.2 (common practice); a larger apparent error is
// the road's slope, or a phone that moves.
const mostDrift = 0.2

// Model parameters that are not learned.
const (
	blindDensity = 8.0  // m²/s³: a rider's own accelerations where none were measured, 2 m/s² for a second
	leastDensity = 2e-5 // m²/s³: of the quietest phone sensor
	standDensity = 1e-6 // (m/s²)²/s: random walk of the bias at a standstill
	turnDensity  = 0.1  // (m/s²)²/rad: yaw that leaks into the pitch through an axis error of a degree or two, and the slope of a road in another direction
	scaleSD      = 0.06 // share by which chassis pitch and the sensor's scale change the acceleration
	steadySD     = 0.01 // the same if the gyroscope has removed the pitch
	scaleMemory  = 120  // s over which that share may change
	restSD       = 0.01 // m/s: how still a standstill is
	crawlSpeed   = 1.0  // m/s below which the error of the velocity dominates the speed
	crawlSD      = 0.5  // m/s: standard deviation of such a fix
	vagueSD      = 20.0 // m/s: how far a speed may lie from the line between two distant fixes
	vagueOver    = 20.0 // s over which that counts as one observation
	lagSD        = 0.4  // s, prior standard deviation
	lagWander    = 1e-6 // s²/s: the lag's own random walk, a hundredth of a second in two minutes
	shapeSD      = 0.12 // s²: the square of the receiver's smoothing time, prior standard deviation
	firstBiasSD  = 1.0  // m/s²
	aloneSD      = 3.0  // m/s²: of a vehicle's acceleration at any time
	aloneDrift   = 0.08 // m/s: a receiver's lasting error, which its speeds alone do not show (common practice: 0.05 to 0.2)
	aloneLagSD   = 1e-4 // s: the lag is fixed
	aloneScaleSD = 1e-3 // the scale has no effect without a measured force
)
