package fusion

import (
	"math"
	"slices"

	"stillair/fusion/internal/kalman"
	"stillair/sensors/finding"
)

// lagSoFar is the current estimate of the lag.
func (r *ride) lagSoFar() Lag {
	se := math.Sqrt(r.filter.Last().DD)
	return Lag{Seconds: r.lag, SE: se, Found: se < lagSD/3, Steps: r.steps}
}

// lagOf reads the receiver's lag and smoothing off the smoothed state.
func (r *ride) lagOf(tr *Track, x *kalman.Vec, p *kalman.Sym) {
	se := math.Sqrt(p.DD)
	tr.Lag = Lag{Seconds: r.lag + x[kalman.D], SE: se, Found: se < lagSD/3, Steps: r.steps}
	rc := Receiver{WhiteSD: r.n.white, CorrelatedSD: r.n.drift, CorrelatedS: r.n.memory}
	w := math.Max(r.shape+x[kalman.W], 0)
	rc.Smoothing = math.Sqrt(w)
	rc.SmoothingSE = math.Sqrt(p.WW) / (2 * math.Max(rc.Smoothing, 0.1))
	for _, f := range r.fixes {
		if f.extra > 0 {
			rc.Rejected++
		}
	}
	tr.Receiver = rc
}

const (
	fixSilence = 5.0 // s without a fix or a standstill before the speed may be a guess
	guessSD    = 0.5 // m/s of uncertainty from which it is one
)

// gaps are the times without motion samples, and those without fixes for so
// long that the speed is a guess; overlapping ones are merged.
func (r *ride) gaps(tr *Track, nodes []kalman.Node) []Span {
	var all []Span
	for _, g := range r.s.Gaps {
		all = append(all, Span{g[0], g[1]})
	}
	t := tr.T
	last := t[0]
	end := func(at float64) {
		if at-last > fixSilence {
			all = append(all, guessed(tr, Span{last, at})...)
		}
		last = math.Max(last, at)
	}
	for _, n := range nodes {
		if n.Seen && !n.Observation.Vague {
			end(t[n.Index])
		}
	}
	end(t[len(t)-1])
	return joinSpans(all)
}

// guessed is the part of a gap between fixes in which the speed is a guess.
func guessed(tr *Track, s Span) []Span {
	i, _ := slices.BinarySearch(tr.T, s.From)
	var out []Span
	for ; i < len(tr.T) && tr.T[i] <= s.To; i++ {
		if tr.VSD[i] < guessSD {
			continue
		}
		j := i
		for j+1 < len(tr.T) && tr.T[j+1] <= s.To && tr.VSD[j+1] >= guessSD {
			j++
		}
		out = append(out, Span{tr.T[i], tr.T[j]})
		i = j
	}
	return out
}

func joinSpans(all []Span) []Span {
	slices.SortFunc(all, func(a, b Span) int {
		if a.From < b.From {
			return -1
		}
		return 1
	})
	var out []Span
	for _, s := range all {
		if n := len(out); n > 0 && s.From <= out[n-1].To {
			out[n-1].To = math.Max(out[n-1].To, s.To)
			continue
		}
		out = append(out, s)
	}
	return out
}

// noteRejected adds the notes about rejected fixes.
func (tr *Track) noteRejected(fixes int) {
	if n := tr.Receiver.Rejected; n > fixes/50 {
		tr.Notes = append(tr.Notes, finding.New(codeFarOff, finding.Count("n", n), finding.Count("of", fixes)))
	}
}

// notes are the findings about what limits the track.
func (r *ride) notes(tr *Track) []finding.Finding {
	var out []finding.Finding
	say := func(code finding.Code, args ...finding.Arg) { out = append(out, finding.New(code, args...)) }
	for i, m := range tr.Mounts {
		if i > 0 {
			say(codePhoneMoved, finding.Moment("at", m.From))
		}
	}
	for _, d := range tr.GNSSOnly {
		if r.alone {
			say(codeAlone, finding.Of("why", d.Why))
		} else {
			out = append(out, d.Why.Within(d.From, d.To))
		}
	}
	for _, s := range tr.Lag.Steps {
		say(codeLagSteps, finding.Moment("at", s.From), finding.Time("by", s.Other))
	}
	switch {
	case r.alone:
	case !r.s.HasTurn:
		say(codeNoGyro)
	case r.yaw == nil:
		say(codeBadGyro)
	}
	var lost float64
	for _, g := range r.s.Gaps {
		lost += g[1] - g[0]
	}
	if lost > 0 {
		say(codeLost, finding.Time("time", lost), finding.Count("n", len(r.s.Gaps)))
	}
	// What is estimated is the square, so two and a half standard errors of
	// that are five of the root.
	if tr.Receiver.Smoothing > 5*tr.Receiver.SmoothingSE {
		say(codeSmooths, finding.Time("over", tr.Receiver.Smoothing).With(tr.Receiver.SmoothingSE))
	}
	return out
}
