package runs

import (
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/roadload"
)

// A gear that stays in until the engine idles, or a brake let go on the way, makes
// the resistance drop at one speed, which no drag area and no rolling resistance
// does. The fit then passes between: its residuals have one shape in all runs,
// whichever way they went, where wind and road differ from run to run. What the
// estimator leaves out of a free coast-down (a rider who sits up, other growth of the
// rolling resistance) leaves a tenth of a metre a second at most.
const (
	leftInAll  = 0.25 // m/s of common residual from which the resistance was not one
	fewestLeft = 4    // runs that show it together
)

// leftOver is the largest residual that all runs of a setup have in common over a
// range of speeds, m/s, by Student's t at 5 % over all ranges (Bonferroni), with the
// middle of that range; 0: none.
func leftOver(est *roadload.Estimate, setup int) (most, at float64) {
	var used []roadload.RunFit
	slow, fast := math.Inf(1), 0.0
	for _, f := range est.Runs {
		if f.Setup == setup && f.Reason.IsZero() {
			used = append(used, f)
			for _, v := range f.Fit {
				slow, fast = math.Min(slow, v), math.Max(fast, v)
			}
		}
	}
	width := (fast - slow) / residualBins
	for b := range residualBins {
		from := slow + width*float64(b)
		var means []float64
		for _, f := range used {
			var in []float64
			for i, v := range f.Fit {
				if v >= from && v < from+width {
					in = append(in, f.V[i]-v)
				}
			}
			if len(in) > 0 {
				means = append(means, stat.Mean(in, nil))
			}
		}
		if len(means) < fewestLeft {
			continue
		}
		mean, sd := stat.MeanStdDev(means, nil)
		n := float64(len(means))
		t := distuv.StudentsT{Sigma: 1, Nu: n - 1}.Quantile(1 - 0.025/residualBins)
		if math.Abs(mean) > t*sd/math.Sqrt(n) && math.Abs(mean) > most {
			most, at = math.Abs(mean), from+width/2
		}
	}
	return most, at
}
