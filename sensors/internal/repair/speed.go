package repair

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	"stillair/sensors"
	"stillair/sensors/units"
)

// SpeedUnit is a unit of speed that a file may have by mistake.
type SpeedUnit struct {
	Name string
	MPS  float64 // its value in m/s
}

// speedUnits are exact by definition (NIST SP 811); within is the tolerance of
// the median ratio, smaller for units close to each other.
var speedUnits = [...]struct {
	SpeedUnit
	within float64
}{
	{SpeedUnit{"m/s", 1}, 0.12},
	{SpeedUnit{"knots", 1852.0 / 3600}, 0.06},
	{SpeedUnit{"mph", units.MPH}, 0.06},
	{SpeedUnit{"ft/s", 0.3048}, 0.045},
	{SpeedUnit{"km/h", units.KMH}, 0.05},
}

// SpeedFromPositions compares each speed with the distance between the
// positions around it, and returns the median of their ratio, NaN if there are
// too few pairs, and the unit that fits it, the zero unit if none does.
func SpeedFromPositions(fixes []sensors.Fix) (unit SpeedUnit, ratio float64) {
	var ratios []float64
	from := 0
	for i := range fixes {
		dt := fixes[i].T - fixes[from].T
		if dt < 0.8 {
			continue
		}
		d, _, _ := apart(fixes[from], fixes[i])
		// The speed in the middle; way and speed must both be well above noise.
		if v := (fixes[from].Speed + fixes[i].Speed) / 2; dt < 5 && d/dt > 3 {
			ratios = append(ratios, v*dt/d)
		}
		from = i
	}
	if len(ratios) < 10 {
		return SpeedUnit{}, math.NaN()
	}
	ratio = quantile(ratios, 0.5)
	for _, u := range speedUnits {
		if math.Abs(ratio*u.MPS-1) < u.within {
			return u.SpeedUnit, ratio
		}
	}
	return SpeedUnit{}, ratio
}

// FastSpeed returns the speed that one fix in a hundred exceeds, in the file's
// unit.
func FastSpeed(fixes []sensors.Fix) float64 {
	v := make([]float64, len(fixes))
	for i, f := range fixes {
		v[i] = f.Speed
	}
	return quantile(v, 0.99)
}

// SpeedByForce returns the gain of speed in the file's unit per m/s from the
// accelerometer: near 1 for speeds in m/s, 3.6 in km/h. ok is false if the
// ride's changes of speed do not explain its forces well enough. The force must
// be in m/s².
//
// The direction of travel is not known, so Δv/Δt between fixes is regressed on
// all three axes of the mean force, by least squares,
//
//	Δv/Δt = c·(f − mean f),
//
// and |c| is the answer: 1, since f along the direction of travel is dv/dt but
// for the slope and the sensor's bias. Slopes and a phone that moves make |c|
// smaller, never larger. Delays of the fixes up to 1.5 s are tried, and the best
// fit must explain 60 % of the variance.
func SpeedByForce(log *sensors.Log) (gain float64, ok bool) {
	bs := blocks(log.Motion)
	best := 0.6
	for lag := 0.0; lag <= 1.5; lag += blockLength {
		if g, r2 := speedGain(bs, log.Fixes, lag); r2 > best {
			gain, best, ok = g, r2, true
		}
	}
	return gain, ok
}

// speedGain returns |c| and the share of the variance that the fit explains.
func speedGain(bs []block, fixes []sensors.Fix, lag float64) (gain, r2 float64) {
	var rows []float64 // force and 1
	var rates []float64
	from := 0
	for i := range fixes {
		dt := fixes[i].T - fixes[from].T
		if dt < 0.9 {
			continue
		}
		if f, _, some := mean(bs, fixes[from].T-lag, fixes[i].T-lag); some && dt < 3 {
			rows = append(rows, f.X, f.Y, f.Z, 1)
			rates = append(rates, (fixes[i].Speed-fixes[from].Speed)/dt)
		}
		from = i
	}
	if len(rates) < 20 {
		return 0, 0
	}
	a, y := mat.NewDense(len(rates), 4, rows), mat.NewVecDense(len(rates), rates)
	var c, fitted mat.VecDense
	if err := c.SolveVec(a, y); err != nil {
		return 0, 0
	}
	fitted.MulVec(a, &c)
	fitted.SubVec(y, &fitted)
	variance := stat.Variance(rates, nil)
	if !(variance > 0.05) { // (m/s²)²: a ride at constant speed gives no result
		return 0, 0
	}
	left := mat.Dot(&fitted, &fitted) / float64(len(rates)-4)
	return math.Sqrt(c.AtVec(0)*c.AtVec(0) + c.AtVec(1)*c.AtVec(1) + c.AtVec(2)*c.AtVec(2)), 1 - left/variance
}
