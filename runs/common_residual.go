package runs

import (
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/roadload"
)

// A gear that stays in until the engine idles, or a brake released on the way,
// makes the resistance drop at one speed, which no drag area and no rolling
// resistance can. The fitted curve then passes between the two, and the residuals
// have one shape in all runs, in both directions, whereas wind and road differ from
// run to run. What the model leaves out of a free coast-down (a rider who sits up, a
// different growth of the rolling resistance) leaves 0.1 m/s at most.
const (
	mostInCommon = 0.25 // m/s of common residual above which the resistance changed on the way
	fewestCommon = 4    // runs that must show it
)

// commonResidual is the largest significant mean residual that the runs of a setup
// have in common in one speed bin, m/s, with the middle of that bin; 0 if there is
// none. Significant is by Student's t at 5 % over all bins (Bonferroni).
func commonResidual(est *roadload.Estimate, setup int) (most, at float64) {
	var used []roadload.RunFit
	for _, f := range est.Runs {
		if f.Setup == setup && f.Reason.IsZero() {
			used = append(used, f)
		}
	}
	bins := binsOver(used)
	perRun := make([][]float64, len(used))
	for i, f := range used {
		perRun[i] = bins.means(f)
	}
	for b := range residualBins {
		var means []float64
		for _, run := range perRun {
			if !math.IsNaN(run[b]) {
				means = append(means, run[b])
			}
		}
		if len(means) < fewestCommon {
			continue
		}
		mean, sd := stat.MeanStdDev(means, nil)
		n := float64(len(means))
		t := distuv.StudentsT{Sigma: 1, Nu: n - 1}.Quantile(1 - 0.025/residualBins)
		if math.Abs(mean) > t*sd/math.Sqrt(n) && math.Abs(mean) > most {
			most, at = math.Abs(mean), (bins.from(b)+bins.from(b+1))/2
		}
	}
	return most, at
}
