package fusion

import (
	"math"

	"stillair/fusion/internal/motion"
)

const (
	checkOver = 0.95 // s between the fixes of one check of the pitch, at least
	checkMost = 2.6  // s, at most
	checkOff  = 0.5  // how far from 1 the share may lie
)

// gyroAgrees tests the gyroscope's pitch against the ride. Second by second,
// the forward force minus the change of satellite speed is slope, bias and
// pitch; its changes, regressed on those of pitch times g, give a coefficient
// of 1 if the gyroscope is right, and near 0 if its axes, sign or unit are
// wrong. If the ride is inconclusive, the gyroscope is used.
func gyroAgrees(s *motion.Series, fixes []fix, lag float64, force, pitch []float64) bool {
	var pp, pe, ee, n float64
	var lastE, lastP float64
	known := false
	for i, j := 0, 0; i < len(fixes); i = j {
		for j = i + 1; j < len(fixes) && fixes[j].t-fixes[i].t < checkOver; {
			j++
		}
		if j == len(fixes) {
			break
		}
		a, b := s.Index(fixes[i].t-lag), s.Index(fixes[j].t-lag)
		h := s.T[b] - s.T[a]
		if h < checkOver/2 || h > checkMost {
			known = false
			continue
		}
		p := mean(s, pitch, a, b)
		e := mean(s, force, a, b) + p - (fixes[j].speed-fixes[i].speed)/h
		if known && math.Abs(e-lastE) < 5 {
			dp, de := p-lastP, e-lastE
			pp += dp * dp
			pe += dp * de
			ee += de * de
			n++
		}
		lastE, lastP, known = e, p, true
	}
	if n < 20 || pp == 0 {
		return true
	}
	share := pe / pp
	se := math.Sqrt(math.Max(ee-share*pe, 0) / (n - 1) / pp)
	return math.Abs(share-1) < checkOff+2*se
}

// mean is the time average of x between two samples.
func mean(s *motion.Series, x []float64, from, to int) float64 {
	var sum float64
	for i := from + 1; i <= to; i++ {
		sum += (s.T[i] - s.T[i-1]) * (x[i-1] + x[i]) / 2
	}
	return sum / (s.T[to] - s.T[from])
}
