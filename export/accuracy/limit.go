package accuracy

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Figure is the statistic that a limit applies to.
type Figure string

// The figures.
const (
	Bias      Figure = "bias"
	Spread    Figure = "spread"
	OverBound Figure = "over bound"
	Within95  Figure = "95 % within"
	Coverage  Figure = "coverage"
	Honesty   Figure = "honesty"
	HitRate   Figure = "share"
)

// Limit is the required range of a figure: Low ≤ figure ≤ High; of a bias the
// absolute value counts. Values are in the units of the Record.
type Limit struct {
	What      string
	Of        Figure
	Low, High float64
	Source    string // source of the limit, if not the project itself
}

// atMost is a limit from above.
func atMost(what string, of Figure, high float64) Limit {
	return Limit{What: what, Of: of, Low: math.Inf(-1), High: high}
}

// inside is a limit from both sides.
func inside(what string, of Figure, low, high float64) Limit {
	return Limit{What: what, Of: of, Low: low, High: high}
}

// Verdict is the comparison of a figure with its limit.
type Verdict string

// The verdicts.
const (
	Met     Verdict = "met"
	Unclear Verdict = "unclear" // missed, but possibly by chance
	Missed  Verdict = "missed"
)

// beyond is the probability of a false alarm: calling a limit missed that is
// met.
const beyond = 0.001

// Judge compares a summary with a limit. It returns false if the figure was not
// measured.
func (l Limit) Judge(s *Summary) (figure float64, v Verdict, ok bool) {
	if l.Of == HitRate {
		t, found := s.Shares[l.What]
		if !found || t.of == 0 {
			return math.NaN(), "", false
		}
		p := float64(t.hits) / float64(t.of)
		return p, l.share(p, float64(t.hits), float64(t.of)), true
	}
	t, found := s.Values[l.What]
	if !found || t.n == 0 {
		return math.NaN(), "", false
	}
	figure = t.Figure(l.Of)
	if math.IsNaN(figure) {
		return figure, "", false
	}
	if l.Of == Coverage {
		n := t.clusters()
		return figure, l.share(figure, figure*n, n), true
	}
	return figure, l.within(figure, t.doubt(l.Of), t.clusters()), true
}

// within tests a figure with the standard error doubt, which is itself
// estimated from n rides.
func (l Limit) within(figure, doubt, n float64) Verdict {
	if l.Of == Bias {
		figure = math.Abs(figure)
	}
	over := math.Max(figure-l.High, l.Low-figure)
	z := distuv.StudentsT{Sigma: 1, Nu: math.Max(n-1, 1)}.Quantile(1 - beyond)
	switch {
	case over <= 0:
		return Met
	case over <= z*doubt:
		return Unclear
	}
	return Missed
}

// share tests a share by the binomial probability of a result at least as far
// beyond if the true share is at the limit.
func (l Limit) share(p, hits, of float64) Verdict {
	switch {
	case p >= l.Low && p <= l.High:
		return Met
	case p < l.Low:
		low := distuv.Binomial{N: math.Round(of), P: math.Min(l.Low, 1-1e-9)}
		if l.Low == 1 || low.CDF(math.Floor(hits+0.5)) < beyond {
			return Missed
		}
	default:
		high := distuv.Binomial{N: math.Round(of), P: math.Max(l.High, 1e-9)}
		if 1-high.CDF(math.Ceil(hits-0.5)-1) < beyond {
			return Missed
		}
	}
	return Unclear
}
