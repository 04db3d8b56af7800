package engine

import (
	"math"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// ErrNoLock is the error, for errors.Is, if no ratio stands out.
var ErrNoLock = finding.Fail(codeNoLock)

// Signal is sound or vibration during a pull.
type Signal struct {
	T []float64 // sample times, s, ascending; need not be even
	X []float64 // acceleration along one axis or sound pressure, any unit
	S []float64 // distance travelled at T, m
}

// Search holds the limits of a search.
type Search struct {
	Lowest, Highest float64   // possible engine speeds of the pull, 1/min
	Orders          []float64 // vibration orders of the engine, in multiples of its speed; nil: 1 and 2
	// Alike are the ratios, relative to the one found, at which an engine of
	// another kind would sound the same. If one of them is possible too, there
	// is no lock.
	Alike []float64
}

// Ratio is engine speed per road speed in one gear.
type Ratio struct {
	RPMPerMPS measure.Value // (1/min)/(m/s)
	Strength  float64       // strength above the noise, in standard deviations
}

// frameSeconds is the length of coherent integration, s: short enough that the
// error of the smoothed speed does not rotate the phase, long enough to
// separate neighbouring ratios.
const frameSeconds = 0.5

// Rejection rules, set on simulated pulls so that noise alone and engines
// outside the requested range are rejected.
const (
	leastStrength = 7.0  // standard deviations above noise, all orders together
	leastOrder    = 0.5  // of the orders' mean strength, for each requested order
	mostRival     = 0.7  // of the best ratio's strength, limit for any other
	mostOctave    = 0.35 // the same for its half and double, which share its lines
	halvesAgree   = 0.01 // relative difference allowed between the halves of a pull
)

// Find searches for the ratio that explains the orders in sig.
func Find(sig Signal, se Search) (Ratio, error) {
	l, err := scanOf(sig, se)
	if err != nil {
		return Ratio{}, err
	}
	if err := l.grid.convinced(l.scores, l.all, l.best, se); err != nil {
		return Ratio{}, err
	}
	half := len(l.scores.byFrame) / 2
	q1 := l.grid.q(peak(sum(l.scores.byFrame[:half])))
	q2 := l.grid.q(peak(sum(l.scores.byFrame[half:])))
	q := l.grid.refine(l.all, l.best)
	if math.Abs(q1-q2) > halvesAgree*q || math.Abs(q1-q) > halvesAgree*q {
		return Ratio{}, refuse(codeHalves)
	}
	// The two halves are independent estimates; half their difference is one
	// draw of the error of their mean. The grid's own width bounds it below.
	spread := math.Max(math.Abs(q1-q2)/2, l.grid.step/math.Sqrt(12))
	return Ratio{RPMPerMPS: measure.Value{X: q, SE: spread}.Times(60), Strength: l.strength()}, nil
}

// Clearness is the strength of the best ratio above the noise, in standard
// deviations, whether convincing or not: of several signals or latencies of one
// pull, the right one is the clearest. It is 0 if nothing stands out.
func Clearness(sig Signal, se Search) float64 {
	l, err := scanOf(sig, se)
	if err != nil {
		return 0
	}
	return l.strength()
}

// scan holds a signal's scores for every ratio of a grid.
type scan struct {
	grid   grid
	scores scores
	all    []float64 // scores of all orders and frames
	best   int       // where all is highest
}

func scanOf(sig Signal, se Search) (scan, error) {
	if err := sig.check(); err != nil {
		return scan{}, err
	}
	frames := sig.frames()
	if len(frames) < 4 {
		return scan{}, refuse(codeShort, finding.Time("needed", 4*frameSeconds))
	}
	g, err := newGrid(sig, frames, se)
	if err != nil {
		return scan{}, err
	}
	sc := g.scores(sig, frames)
	all := sum(sc.byFrame)
	return scan{grid: g, scores: sc, all: all, best: peak(all)}, nil
}

func (l scan) strength() float64 {
	return strength(l.all[l.best], len(l.scores.byFrame)*len(l.grid.orders))
}

func (s Signal) check() error {
	if len(s.T) != len(s.X) || len(s.T) != len(s.S) {
		return finding.Fail(codeUneven)
	}
	for i := range s.T {
		if math.IsNaN(s.T[i]+s.X[i]+s.S[i]) || math.IsInf(s.T[i]+s.X[i]+s.S[i], 0) {
			return finding.Fail(codeNotNumber, finding.Count("n", i))
		}
		if i > 0 && (s.T[i] <= s.T[i-1] || s.S[i] < s.S[i-1]) {
			return finding.Fail(codeBackwards, finding.Count("n", i))
		}
	}
	return nil
}

// frames cuts the signal into whole frames, as index pairs.
func (s Signal) frames() [][2]int {
	var f [][2]int
	for from := 0; from < len(s.T); {
		to := from
		for to < len(s.T) && s.T[to] < s.T[from]+frameSeconds {
			to++
		}
		if to == len(s.T) {
			break
		}
		if to-from >= 16 {
			f = append(f, [2]int{from, to})
		}
		from = to
	}
	return f
}
