package share

import (
	"math"
	"slices"
	"sort"

	"stillair/fusion"
	"stillair/runs"
	"stillair/runs/pass"
	"stillair/sensors"
)

// Result returns a copy of what was computed from log, with no more of the ride
// itself in it than the choice allows: its track is cut as Apply cuts the log,
// since speed and turn rate would let anyone walk the path back. Figures stay,
// also those from within the cut ends: they hold no places. Of a run that
// reaches into an end the figures stay, but neither its time nor its direction
// and course.
func Result(res *runs.Result, log *sensors.Log, c Choice) *runs.Result {
	out := *res
	w := WindowOf(log, c)
	out.Warnings, out.Notes = w.findings(res.Warnings), w.notes(res.Notes)
	if c.EndsCut <= 0 {
		return &out
	}
	out.Estimate, out.Ride = nil, w.ride(res.Ride)
	out.Runs = make([]runs.Run, len(res.Runs))
	for i, r := range res.Runs {
		out.Runs[i] = w.run(r)
	}
	out.Passes = w.passes(res.Passes)
	if res.Track != nil {
		out.Track = w.track(res.Track)
	}
	return &out
}

// run moves a run.
func (w Window) run(r runs.Run) runs.Run {
	whole := w.Has(r.Start) && w.Has(r.End)
	r.Start, r.End = w.within(r.Start), w.within(r.End)
	r.Reasons, r.Cautions = w.findings(r.Reasons), w.findings(r.Cautions)
	if !whole {
		r.Curve, r.Revs, r.BearingDeg = nil, nil, math.NaN()
		return r
	}
	if r.Curve != nil {
		curve := *r.Curve
		curve.T = w.times(curve.T)
		r.Curve = &curve
	}
	if r.Revs != nil {
		revs := *r.Revs
		revs.Speed.T = w.times(revs.Speed.T)
		r.Revs = &revs
	}
	return r
}

// passes moves passes. A leg that reaches into an end keeps its figures alone.
func (w Window) passes(all []runs.Pass) []runs.Pass {
	leg := func(l pass.Leg) pass.Leg {
		if !w.Has(l.Start) || !w.Has(l.End) {
			l.BearingDeg, l.Length = math.NaN(), math.NaN()
		}
		l.Start, l.End = w.within(l.Start), w.within(l.End)
		return l
	}
	var out []runs.Pass
	for _, p := range all {
		p.There, p.Back, p.Reasons = leg(p.There), leg(p.Back), w.findings(p.Reasons)
		p.Figures = slices.Clone(p.Figures)
		for i := range p.Figures {
			for k, s := range p.Figures[i].Times {
				p.Figures[i].Times[k] = fusion.Span{From: w.within(s.From), To: w.within(s.To)}
			}
		}
		out = append(out, p)
	}
	return out
}

func (w Window) times(t []float64) []float64 {
	if t == nil {
		return nil
	}
	out := make([]float64, len(t))
	for i := range t {
		out[i] = w.Time(t[i])
	}
	return out
}

// track cuts a track and lets its times and distances begin at zero.
func (w Window) track(of *fusion.Track) *fusion.Track {
	track := *of
	first := sort.SearchFloat64s(track.T, w.From)
	last := max(first, sort.Search(len(track.T), func(i int) bool { return track.T[i] > w.To }))
	for _, s := range []*[]float64{&track.T, &track.V, &track.A, &track.S, &track.VSD, &track.ASD,
		&track.Force, &track.Noise, &track.Yaw, &track.Shake} {
		*s = (*s)[min(first, len(*s)):min(last, len(*s))]
	}
	track.T = w.times(track.T)
	if len(track.S) > 0 {
		gone := make([]float64, len(track.S))
		for i := range gone {
			gone[i] = track.S[i] - track.S[0]
		}
		track.S = gone
	}
	track.Notes = w.findings(track.Notes)
	track.Mounts = nil
	for _, m := range of.Mounts {
		for _, s := range w.spans([]fusion.Span{m.Span}) {
			m.Span = s
			track.Mounts = append(track.Mounts, m)
		}
	}
	track.Still, track.Gaps = w.spans(track.Still), w.spans(track.Gaps)
	track.Lag.Steps = nil
	for _, s := range of.Lag.Steps {
		track.Lag.Steps = append(track.Lag.Steps, fusion.LagStep{From: w.within(s.From), Other: s.Other})
	}
	track.GNSSOnly = nil
	for _, d := range of.GNSSOnly {
		for _, s := range w.spans([]fusion.Span{d.Span}) {
			track.GNSSOnly = append(track.GNSSOnly, fusion.GNSSOnly{Span: s, Why: w.finding(d.Why)})
		}
	}
	return &track
}

// spans are what is left of spans.
func (w Window) spans(list []fusion.Span) []fusion.Span {
	var out []fusion.Span
	for _, s := range list {
		if s.To >= w.From && s.From <= w.To {
			out = append(out, fusion.Span{From: w.within(s.From), To: w.within(s.To)})
		}
	}
	return out
}

// ride lets the setups begin when what is left does.
func (w Window) ride(r sensors.Ride) sensors.Ride {
	setups := append([]sensors.Setup(nil), r.Setups...)
	for i := range setups {
		setups[i].From = w.within(setups[i].From)
	}
	r.Setups = setups
	return r
}
