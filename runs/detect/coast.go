package detect

import (
	"math"

	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// Limits of a coast-down.
const (
	coastSpan    = 40 * units.KMH // least range of speed
	intendedSpan = 25 * units.KMH // from which a stretch may have been intended as one
	coastFirst   = 50 * units.KMH // one that starts slower was not intended
	coastTime    = 8.0            // s
	jolt         = 0.5            // a step in the deceleration not caused by wind or road, m/s²
	joltWindow   = 20             // grid points on each side of a step
	cutMargin    = 4              // grid points left out on each side of a step
)

// piece is a stretch between two steps of the deceleration.
type piece struct{ from, to int }

// coastDowns finds the stretches of free rolling.
func coastDowns(s *series, b bounds) []Found {
	var out []Found
	for _, zone := range slowings(s) {
		var rolling []piece
		for _, p := range piecesOf(s, zone) {
			if b.rolls(s, p) {
				rolling = append(rolling, p)
			}
		}
		for _, group := range neighbours(s, rolling) {
			if f, ok := judgeCoast(s, b, group); ok {
				out = append(out, f)
			}
		}
	}
	return out
}

// slowings returns the stretches in which the bike gets slower, short
// interruptions included.
func slowings(s *series) []piece {
	const patience = 2.0 // s
	var out []piece
	for i := 0; i < s.len(); i++ {
		if s.calm[i] >= -0.05 || s.still[i] {
			continue
		}
		last := i
		for j := i; j < s.len() && !s.still[j] && s.v[j] > 1; j++ {
			if s.calm[j] < -0.05 {
				last = j
			} else if s.seconds(last, j) > patience {
				break
			}
		}
		if s.v[i]-s.v[last] > intendedSpan {
			out = append(out, piece{i, last})
		}
		i = last
	}
	return out
}

// excess is the acceleration minus that of an average road load; while a bike
// rolls freely it changes slowly.
func excess(s *series, i int) float64 { return s.quick[i] + load(s.v[i]) }

// piecesOf splits a stretch at steps of the deceleration (change points).
func piecesOf(s *series, z piece) []piece {
	sum := make([]float64, z.to-z.from+2)
	for i := z.from; i <= z.to; i++ {
		sum[i-z.from+1] = sum[i-z.from] + excess(s, i)
	}
	mean := func(i, j int) float64 { return (sum[j-z.from] - sum[i-z.from]) / float64(j-i) }
	height := func(i int) float64 {
		a, b := max(z.from, i-joltWindow), min(z.to+1, i+joltWindow)
		if i-a < 3 || b-i < 3 {
			return 0
		}
		return math.Abs(mean(i, b) - mean(a, i))
	}
	var out []piece
	from := z.from
	for i := z.from; i <= z.to; i++ {
		if height(i) < jolt || !isPeak(height, i) {
			continue
		}
		if i-cutMargin > from {
			out = append(out, piece{from, i - cutMargin})
		}
		from = i + cutMargin
	}
	if z.to > from {
		out = append(out, piece{from, z.to})
	}
	return out
}

// isPeak reports whether f is at its highest at i, among the points within
// half a second.
func isPeak(f func(int) float64, i int) bool {
	for k := 1; k <= 5; k++ {
		if f(i-k) > f(i) || f(i+k) >= f(i) {
			return false
		}
	}
	return true
}

// rolls reports whether the mean deceleration of a piece can be free rolling.
func (b bounds) rolls(s *series, p piece) bool {
	if p.to-p.from < 20 {
		return false
	}
	return b.possible(s, p)
}

// neighbours groups pieces separated by only a short disturbance.
func neighbours(s *series, pieces []piece) [][]piece {
	const disturbance = 5.0 // s
	var out [][]piece
	for _, p := range pieces {
		if n := len(out); n > 0 {
			last := out[n-1][len(out[n-1])-1]
			if s.seconds(last.to, p.from) < disturbance {
				out[n-1] = append(out[n-1], p)
				continue
			}
		}
		out = append(out, []piece{p})
	}
	return out
}

// judgeCoast makes a run of a group of pieces: the piece with the widest range
// of speed, if it is wide enough. The others show what disturbed it.
func judgeCoast(s *series, b bounds, group []piece) (Found, bool) {
	best := group[0]
	for _, p := range group[1:] {
		if s.span(p) > s.span(best) {
			best = p
		}
	}
	fit := fitRolling(s, best)
	group = fit.alike(s, best, group)
	whole := piece{group[0].from, group[len(group)-1].to}
	if s.v[whole.from] < coastFirst || s.seconds(best.from, best.to) < coastTime {
		return Found{}, false
	}
	f := Found{Kind: CoastDown, From: s.time(best.from), To: s.time(best.to)}
	why := fit.against(b, s, best)
	cut, wide := len(group) > 1, s.span(best)
	switch {
	case wide < coastSpan && (why != "" || wide < intendedSpan && (!cut || s.span(whole) < coastSpan)):
		return Found{}, false
	case why != "":
		f.Reasons = append(f.Reasons, finding.New(why))
	case wide >= coastSpan && cut && rangeOutside(s, group, best) > 0:
		f.Cautions = append(f.Cautions, finding.New(codePart, finding.Of("why", disturbance(s, group, best))))
	case wide < coastSpan && cut:
		f.Reasons = append(f.Reasons, disturbance(s, group, best))
	}
	if wide < coastSpan {
		f.Reasons = append(f.Reasons, finding.New(codeCoastShort, finding.Speed("span", wide), finding.Speed("needed", coastSpan)))
	}
	reasons, cautions := bends(s, best)
	f.Reasons, f.Cautions = append(f.Reasons, reasons...), append(f.Cautions, cautions...)
	return f, true
}

// rangeOutside is the range of speed of a group outside its best piece, without
// the end of a run where the rider braked.
func rangeOutside(s *series, group []piece, best piece) float64 {
	const ended = 15 * units.KMH
	lost := 0.0
	for _, p := range group {
		switch {
		case p.from > best.from:
			lost += math.Max(s.span(p)-ended, 0)
		case p.from < best.from:
			lost += s.span(p)
		}
	}
	return lost
}

// span is the range of speed of a piece, m/s.
func (s *series) span(p piece) float64 { return s.v[p.from] - s.v[p.to] }

// disturbance is the finding about what interrupted a group, next to its best
// piece.
func disturbance(s *series, group []piece, best piece) finding.Finding {
	for i := 1; i < len(group); i++ {
		a, b := group[i-1], group[i]
		if a != best && b != best {
			continue
		}
		mid := (a.to + b.from) / 2
		d := (s.v[b.from] - s.v[a.to]) / s.seconds(a.to, b.from)
		usual := (meanSlope(s, a) + meanSlope(s, b)) / 2
		if d < usual {
			return finding.New(codeBraked, finding.Speed("at", s.v[mid]))
		}
		return finding.New(codePushed, finding.Speed("at", s.v[mid]))
	}
	return finding.New(codeDisturbed)
}

func meanSlope(s *series, p piece) float64 {
	return (s.v[p.to] - s.v[p.from]) / s.seconds(p.from, p.to)
}
