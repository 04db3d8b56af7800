package mount

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// cut is a stretch of observations with one mount.
type cut struct {
	from, to   int
	start, end float64 // s, outermost times
}

const (
	fewest   = 12   // observations on either side of a slip
	turned   = 0.12 // rad: minimum rotation of a slip; no public road is as steep for long
	gainOver = 60   // minimum decrease of the residual by a slip, in units of its variance
)

// split divides obs[from:to] wherever the phone slipped.
func split(obs []observation, from, to int) []cut {
	if from >= to {
		return nil
	}
	cum := make([]sums, to-from+1)
	for i, o := range obs[from:to] {
		cum[i+1] = cum[i]
		if o.moving && !o.turning { // a standing bike may lean on its side stand
			cum[i+1].add(o, 1)
		}
	}
	var cuts []cut
	divide(obs[from:to], cum, 0, to-from, &cuts)
	for i := range cuts {
		cuts[i].start, cuts[i].end = obs[from+cuts[i].from].from, obs[from+cuts[i].to-1].to
		cuts[i].from += from
		cuts[i].to += from
	}
	return cuts
}

func divide(obs []observation, cum []sums, from, to int, cuts *[]cut) {
	whole := cum[to].minus(cum[from]).fit()
	best, least := -1, whole.rss
	for k := from + fewest; k <= to-fewest; k++ {
		a, b := cum[k].minus(cum[from]).fit(), cum[to].minus(cum[k]).fit()
		if r := a.rss + b.rss; r < least && a.n >= fewest && b.n >= fewest {
			best, least = k, r
		}
	}
	if best < 0 || !slipped(cum[best].minus(cum[from]).fit(), cum[to].minus(cum[best]).fit(), whole) {
		*cuts = append(*cuts, cut{from: from, to: to})
		return
	}
	divide(obs, cum, from, best, cuts)
	divide(obs, cum, best, to, cuts)
}

// slipped distinguishes a slip from noise and hills: the residual must fall
// significantly, and an axis must have turned.
func slipped(a, b, whole fit) bool {
	left := math.Max(a.rss+b.rss, 1e-6)
	variance := left / math.Max(3*float64(whole.n)-12, 1)
	if (whole.rss-left)/variance < gainOver {
		return false
	}
	if angle(a.up(), b.up()) > turned {
		return true
	}
	return a.sure() && b.sure() && angle(a.forward(), b.forward()) > turned+3*(a.se()+b.se())
}

func angle(a, b r3.Vec) float64 {
	return math.Atan2(r3.Norm(r3.Cross(a, b)), r3.Dot(a, b))
}
