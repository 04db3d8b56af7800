package compare

import (
	"math"

	"stillair/runs/measure"
)

// Finding is one of the three answers.
type Finding string

// The answers.
const (
	Differs    Finding = "differs"
	NoneShown  Finding = "no difference shown"
	CannotTell Finding = "cannot tell yet"
)

// Difference is one measured difference b − a, with what judging it needs.
type Difference struct {
	Delta measure.Value // b − a, in the quantity's unit
	Base  float64       // a's value, same unit, for percents
	DoF   float64       // of Delta's t interval
	Pairs int           // pairs, or repetitions, of the setup that has fewer
}

// Verdict is a judged difference. Percents are of a's value.
type Verdict struct {
	Finding   Finding
	Delta     measure.Value // as measured
	CI        [2]float64    // 95 % interval of Delta, for all comparisons together
	P         float64       // two-sided, adjusted for the number of comparisons
	Percent   float64
	CIPercent [2]float64
	Unlikely  float64 // percent: a difference larger than this, either way, is unlikely; for NoneShown
	MorePairs int     // about so many more pairs a setup would tell; for CannotTell
	Beyond    bool    // for CannotTell: more than MostPairs more pairs would be needed
}

// MostPairs bounds what Stillair suggests to add: beyond it a calmer day
// helps more than more riding.
const MostPairs = 20

// Judge judges differences that belong to one question together. matters is
// the relative difference that the rider wants to know about: 0.05 is 5 %.
//
// Intervals and p are simultaneous by one method, Bonferroni's: of n differences
// each has an interval of level 1 − 0.05/n and a p multiplied by n. So the
// words and the band never disagree: the setups differ just where the band
// leaves zero out. That there is no difference that matters is said only where
// the whole band lies within what matters.
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
	return v
}

// morePairs is how many more pairs a setup would settle it, were the scatter
// and the difference to stay as they are: until the half width of the interval
// is less than the difference, or less than what it lacks to what matters.
func morePairs(d Difference, level, matters float64) (n int, beyond bool) {
	have, size := max(d.Pairs, 1), math.Abs(d.Delta.X)
	settled := math.Max(size, matters*math.Abs(d.Base)-size)
	for n = 1; n <= MostPairs; n++ {
		se := d.Delta.SE * math.Sqrt(float64(have)/float64(have+n))
		if measure.Quantile(level, d.DoF+2*float64(n))*se <= settled {
			return n, false
		}
	}
	return MostPairs, true
}
