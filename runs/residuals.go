package runs

import (
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

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
	slow, fast, square, n := math.Inf(1), 0.0, 0.0, 0.0
	type pairOf struct{ setup, pair int }
	left := map[pairOf]map[float64][][]float64{}
	for _, f := range r.Estimate.Runs {
		if f.Reason.IsZero() {
			for i, v := range f.Fit {
				slow, fast = math.Min(slow, v), math.Max(fast, v)
				square, n = square+math.Pow(f.V[i]-v, 2), n+1
			}
		}
	}
	if n == 0 {
		return out
	}
	out.RMS = math.Sqrt(square / n)
	for _, f := range r.Estimate.Runs {
		if !f.Reason.IsZero() || f.Pair == 0 {
			continue
		}
		key := pairOf{f.Setup, f.Pair}
		if left[key] == nil {
			left[key] = map[float64][][]float64{}
		}
		bins := make([][]float64, residualBins)
		for i, v := range f.Fit {
			b := min(int(residualBins*(v-slow)/(fast-slow)), residualBins-1)
			bins[b] = append(bins[b], f.V[i]-v)
		}
		left[key][f.Dir] = bins
	}
	for b := range residualBins {
		bin := ResidualBin{From: slow + (fast-slow)*float64(b)/residualBins, To: slow + (fast-slow)*float64(b+1)/residualBins}
		var there, back []float64
		for _, p := range left {
			if p[1] != nil && p[-1] != nil && len(p[1][b]) > 0 && len(p[-1][b]) > 0 {
				there, back = append(there, stat.Mean(p[1][b], nil)), append(back, stat.Mean(p[-1][b], nil))
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
