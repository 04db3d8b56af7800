package sensors

import (
	"math"
	"slices"
	"sort"

	"stillair/sensors/finding"
)

// Limits for time without samples. The smoother has ten nodes of 800 bytes for
// each second, so six empty hours take 170 MB. Two hours without a sample
// separate two rides.
const (
	longestGap = 2 * 3600.0 // s
	mostEmpty  = 6 * 3600.0 // s in total
	emptyFrom  = 10.0       // s without a sample from which time counts as empty
)

const (
	codeOtherPart finding.Code = "log.other_part"
	codeWildStamp finding.Code = "log.wild_stamp"
)

// Stretch returns the part of a log that is one ride: the one with most samples
// between gaps that are so long that another ride began, or that are caused by
// a time stamp far from all others. The notes list what is left out, with its
// times; log itself is not changed. So the cost of the analysis grows with the
// samples of a log and not with the span of its stamps.
func Stretch(log *Log) *Log {
	times := stamps(log)
	for gap := longestGap; gap >= emptyFrom; gap /= 2 {
		parts := split(times, gap)
		best := slices.MaxFunc(parts, func(a, b span) int { return a.n - b.n })
		switch {
		case best.empty > mostEmpty:
			continue
		case len(parts) == 1:
			return log
		}
		return log.within(best, parts)
	}
	return log
}

// span is a part of a log: its first and last time, its number of samples and
// its time without samples.
type span struct {
	from, to float64
	n        int
	empty    float64
}

// stamps are the times of all motion and fixes that have one, in order.
func stamps(log *Log) []float64 {
	times := make([]float64, 0, len(log.Motion)+len(log.Fixes))
	add := func(t float64) {
		if finite(t) {
			times = append(times, t)
		}
	}
	for _, m := range log.Motion {
		add(m.T)
	}
	for _, f := range log.Fixes {
		add(f.T)
	}
	sort.Float64s(times)
	return times
}

func split(times []float64, gap float64) []span {
	parts := []span{{from: math.Inf(-1), to: math.Inf(-1)}}
	for i, t := range times {
		p := &parts[len(parts)-1]
		switch {
		case i == 0:
			p.from = t
		case t-p.to > gap:
			parts = append(parts, span{from: t})
			p = &parts[len(parts)-1]
		case t-p.to > emptyFrom:
			p.empty += t - p.to
		}
		p.to = t
		p.n++
	}
	return parts
}

// within copies the part of a log, and notes the contents of the others.
func (l *Log) within(s span, parts []span) *Log {
	out := *l
	out.Motion = cut(l.Motion, s, func(m Motion) float64 { return m.T })
	out.Fixes = cut(l.Fixes, s, func(f Fix) float64 { return f.T })
	out.Pressure = cut(l.Pressure, s, func(p Pressure) float64 { return p.T })
	out.Sound = cut(l.Sound, s, func(x Sound) float64 { return x.T })
	out.States = cut(l.States, s, func(x State) float64 { return x.T })
	out.Notes = slices.Clone(l.Notes)
	const few = 5
	wild := 0
	for _, p := range parts {
		switch {
		case p == s:
		case p.n <= few:
			wild += p.n
		default:
			out.Notes = append(out.Notes, Note{Count: 1, What: finding.New(codeOtherPart, finding.Time("length", p.to-p.from),
				finding.Count("samples", p.n)).Within(p.from, p.to)})
		}
	}
	if wild > 0 {
		out.Notes = append(out.Notes, Note{Count: wild, What: finding.New(codeWildStamp)})
	}
	return &out
}

func cut[S any](all []S, s span, at func(S) float64) []S {
	out := func(x S) bool { t := at(x); return !(t >= s.from && t <= s.to) }
	for len(all) > 0 && out(all[0]) {
		all = all[1:]
	}
	for len(all) > 0 && out(all[len(all)-1]) {
		all = all[:len(all)-1]
	}
	if slices.ContainsFunc(all, out) {
		return slices.DeleteFunc(slices.Clone(all), out)
	}
	return all
}
