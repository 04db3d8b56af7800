package runs

import (
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/roadload"
	"stillair/sensors/finding"
)

// Residuals are the residuals of the measured speeds, by speed and direction.
// Both runs of a pair have the same road and air in opposite directions:
// residuals of opposite sign come from road or wind, which cancels between
// them; equal ones would come from the bike, a force that grows with speed
// differently from the model.
type Residuals struct {
	RMS      float64 // of all residuals, m/s
	Bins     []ResidualBin
	Findings []finding.Finding
}

// ResidualBin is the mean residual of all pairs between two speeds, m/s. The
// standard uncertainty comes from the scatter of the pairs.
type ResidualBin struct {
	From, To        float64 // m/s
	Out, Back       float64 // in direction +1 and −1
	Opposite, Alike Value   // half of the difference, half of the sum
	Pairs           int
}

// residualBins is the number of speed bins.
const residualBins = 6

// fewestPairs is the smallest number of pairs for testing a common residual.
const fewestPairs = 3

// Residuals computes the binned residuals of the fit; empty without a fit.
func (r *Result) Residuals() Residuals {
	var out Residuals
	if r.Estimate == nil {
		return out
	}
	var used []roadload.RunFit
	square, n := 0.0, 0.0
	for _, f := range r.Estimate.Runs {
		if f.Reason.IsZero() {
			used = append(used, f)
			for i, v := range f.Fit {
				square, n = square+math.Pow(f.V[i]-v, 2), n+1
			}
		}
	}
	if n == 0 {
		return out
	}
	out.RMS = math.Sqrt(square / n)
	bins, pairs := binsOver(used), pairedMeans(used)
	for b := range residualBins {
		bin := ResidualBin{From: bins.from(b), To: bins.from(b + 1)}
		var there, back []float64
		for _, p := range pairs {
			if !math.IsNaN(p.out[b]) && !math.IsNaN(p.back[b]) {
				there, back = append(there, p.out[b]), append(back, p.back[b])
			}
		}
		if bin.Pairs = len(there); bin.Pairs > 0 {
			bin.Out, bin.Back = stat.Mean(there, nil), stat.Mean(back, nil)
			bin.Opposite, bin.Alike = halves(there, back)
			out.Bins = append(out.Bins, bin)
		}
	}
	out.judge()
	return out
}

// bothWays are the mean residuals of the two runs of a pair in each bin, m/s; NaN where
// a run has none.
type bothWays struct{ out, back []float64 }

// pairedMeans are the mean residuals of all pairs of which both runs were used.
func pairedMeans(used []roadload.RunFit) (pairs []bothWays) {
	bins := binsOver(used)
	for _, f := range used {
		for _, g := range used {
			if f.Pair != 0 && f.Setup == g.Setup && f.Pair == g.Pair && f.Dir == 1 && g.Dir == -1 {
				pairs = append(pairs, bothWays{bins.means(f), bins.means(g)})
			}
		}
	}
	return pairs
}

// speedBins divide the speeds of runs into residualBins equal ranges.
type speedBins struct{ slow, fast float64 } // m/s

// binsOver are the bins over all speeds of fitted runs.
func binsOver(runs []roadload.RunFit) speedBins {
	b := speedBins{math.Inf(1), 0}
	for _, f := range runs {
		for _, v := range f.Fit {
			b.slow, b.fast = math.Min(b.slow, v), math.Max(b.fast, v)
		}
	}
	return b
}

// from is the speed at which a bin begins, m/s.
func (b speedBins) from(bin int) float64 {
	return b.slow + (b.fast-b.slow)*float64(bin)/residualBins
}

// means are the mean residuals of a run in each bin, m/s; NaN where it has none.
func (b speedBins) means(f roadload.RunFit) []float64 {
	sum, n := make([]float64, residualBins), make([]float64, residualBins)
	for i, v := range f.Fit {
		bin := min(int(residualBins*(v-b.slow)/(b.fast-b.slow)), residualBins-1)
		sum[bin], n[bin] = sum[bin]+f.V[i]-v, n[bin]+1
	}
	for k := range sum {
		sum[k] /= n[k] // 0/0 is NaN
	}
	return sum
}

// halves are the odd and even parts: the means of half the difference and half
// the sum.
func halves(there, back []float64) (opposite, alike Value) {
	d, s := make([]float64, len(there)), make([]float64, len(there))
	for i := range there {
		d[i], s[i] = (there[i]-back[i])/2, (there[i]+back[i])/2
	}
	of := func(x []float64) Value {
		mean, sd := stat.MeanStdDev(x, nil)
		return Value{X: mean, SE: sd / math.Sqrt(float64(len(x)))}
	}
	return of(d), of(s)
}

// judge tests for a common residual of the pairs, by Student's t at 5 % over
// all bins and both halves (Bonferroni).
func (r *Residuals) judge() {
	clear := func(of func(ResidualBin) Value) (most float64) {
		for _, b := range r.Bins {
			if b.Pairs < fewestPairs {
				continue
			}
			t := distuv.StudentsT{Sigma: 1, Nu: float64(b.Pairs - 1)}.Quantile(1 - 0.025/(2*residualBins))
			if v := of(b); math.Abs(v.X) > t*v.SE {
				most = math.Max(most, math.Abs(v.X))
			}
		}
		return most
	}
	opposite := clear(func(b ResidualBin) Value { return b.Opposite })
	alike := clear(func(b ResidualBin) Value { return b.Alike })
	if opposite > 0 {
		r.Findings = append(r.Findings, finding.New(codeOppositeLeft, finding.Wind("most", opposite)))
	}
	if alike > 0 {
		r.Findings = append(r.Findings, finding.New(codeAlikeLeft, finding.Wind("most", alike)))
	}
	if opposite == 0 && alike == 0 {
		r.Findings = append(r.Findings, finding.New(codeNothingLeft, finding.Wind("rms", r.RMS)))
	}
}
