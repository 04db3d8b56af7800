package compare

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// Finding is one of the three answers, as a code.
type Finding = finding.Code

// The answers.
const (
	Differs    Finding = "compare.differs"
	NoneShown  Finding = "compare.none_shown"
	CannotTell Finding = "compare.cannot_tell"
)

// Difference is one measured difference b − a, with what its test needs.
type Difference struct {
	Delta measure.Value // b − a, in the quantity's unit
	Held  float64       // part of Delta.SE from assumptions, which more pairs do not reduce
	Base  float64       // a's value, same unit, for percents
	DoF   float64       // of Delta's t interval
	Pairs int           // pairs, or repetitions, of the setup that has fewer
}

// Verdict is the outcome for one difference. Percentages are of a's value.
type Verdict struct {
	Finding   Finding
	Delta     measure.Value // as measured
	CI        [2]float64    // 95 % interval of Delta, for all comparisons together
	P         float64       // two-sided, adjusted for the number of comparisons
	Percent   float64
	CIPercent [2]float64
	Unlikely  float64 // percent: a difference larger than this, either way, is unlikely; for NoneShown
	MorePairs int     // approximate number of further pairs per setup needed; for CannotTell
	Beyond    bool    // for CannotTell: more than MostPairs more pairs would be needed
	Next      Next    // the effect of one more pair with each setup
}

// Next is the predicted effect of one more pair, or repetition, with each
// setup.
type Next struct {
	Half   float64 // half width of the interval it would leave, percent
	Chance float64 // that the answer is then certain, either way; 1 if it already is
}

// MostPairs limits the number of further pairs that Stillair suggests: beyond
// it a calmer day helps more than more riding.
const MostPairs = 20

// Judge tests the differences that belong to one question together. matters is
// the smallest relative difference that matters to the rider: 0.05 is 5 %.
//
// Intervals and p-values are simultaneous by Bonferroni's method: each of n
// differences has an interval of level 1 − 0.05/n and a p-value multiplied by
// n. So verdict and interval always agree: the setups differ exactly if the
// interval excludes zero. The verdict is that there is no difference that
// matters only if the whole interval lies within matters.
func Judge(ds []Difference, matters float64) []Verdict {
	out := make([]Verdict, len(ds))
	for i, d := range ds {
		out[i] = judge(d, len(ds), matters)
	}
	return out
}

func judge(d Difference, comparisons int, matters float64) Verdict {
	level := 1 - 0.05/float64(comparisons)
	ci := d.Delta.Interval(level, d.DoF)
	percent := 100 / d.Base
	v := Verdict{
		Delta: d.Delta, CI: ci, P: math.Min(1, float64(comparisons)*d.Delta.TwoSided(d.DoF)),
		Percent:   d.Delta.X * percent,
		CIPercent: [2]float64{ci[0] * percent, ci[1] * percent},
	}
	reach := math.Max(math.Abs(v.CIPercent[0]), math.Abs(v.CIPercent[1]))
	switch {
	case ci[0] > 0 || ci[1] < 0:
		v.Finding = Differs
	case reach <= 100*matters:
		v.Finding, v.Unlikely = NoneShown, reach
	default:
		v.Finding = CannotTell
		v.MorePairs, v.Beyond = morePairs(d, level, matters)
	}
	v.Next = next(d, level, matters, v.Finding != CannotTell)
	return v
}

// next predicts the interval with one more pair. Given the data so far, the
// true difference is distributed about the estimate with its standard error,
// and the next estimate with the decrease of the error variance through the new
// pair (the predictive distribution of a normal mean with a flat prior; Gelman
// and others, Bayesian Data Analysis, section 2.5).
func next(d Difference, level, matters float64, settled bool) Next {
	half, se := d.halfWith(1, level), d.seWith(1)
	n := Next{Half: 100 * half / math.Abs(d.Base), Chance: 1}
	if settled {
		return n
	}
	move := math.Sqrt(d.Delta.SE*d.Delta.SE - se*se)
	below := func(x float64) float64 { return distuv.UnitNormal.CDF((x - d.Delta.X) / move) }
	n.Chance = below(-half) + 1 - below(half)
	if room := matters*math.Abs(d.Base) - half; room > 0 { // within what matters, and not past zero
		room = math.Min(room, half)
		n.Chance += below(room) - below(-room)
	}
	return n
}

// seWith is the standard error with n more pairs of the same scatter.
func (d Difference) seWith(n int) float64 {
	have, noise := float64(max(d.Pairs, 1)), d.Delta.SE*d.Delta.SE-d.Held*d.Held
	return math.Sqrt(d.Held*d.Held + math.Max(0, noise)*have/(have+float64(n)))
}

// halfWith is the half-width of the interval with n more pairs.
func (d Difference) halfWith(n int, level float64) float64 {
	return measure.Quantile(level, d.DoF+2*float64(n)) * d.seWith(n)
}

// morePairs is the number of further pairs per setup that would settle the
// question if scatter and difference stay the same: until the half-width of the
// interval is less than the difference, or less than matters minus the
// difference.
func morePairs(d Difference, level, matters float64) (n int, beyond bool) {
	size := math.Abs(d.Delta.X)
	settled := math.Max(size, matters*math.Abs(d.Base)-size)
	for n = 1; n <= MostPairs; n++ {
		if d.halfWith(n, level) <= settled {
			return n, false
		}
	}
	return MostPairs, true
}
