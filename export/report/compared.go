package report

import (
	"math"

	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// comparison is the difference of two setups on the page.
type comparison struct {
	Title string
	Lines []difference
	Meant []string // the effect of the difference on the road
	Notes []string
}

// difference is one judged difference with its band about zero. Positions are
// percents of the drawn scale.
type difference struct {
	Sentence               string
	Sign                   string // of the finding, next to its text: ▲ more, ▼ less, ○ none, ? cannot tell
	Left, Width, Mid, Zero float64
	Low, High              string
	Drawn                  bool
}

func (t *teller) comparisons(r *runs.Result) []comparison {
	var out []comparison
	for _, c := range r.Compared {
		v := comparison{Title: t.against(c), Notes: t.book.Sentences(c.Notes)}
		var verdicts []named
		add := func(quantity finding.Finding, verdict *compare.Verdict) {
			if verdict != nil {
				verdicts = append(verdicts, named{quantity, *verdict})
			}
		}
		add(words.Drag(), c.CdA)
		add(words.Rolling(), c.Crr)
		add(words.Power(), c.Power)
		for i := range c.Times {
			add(words.TimeFor(c.Times[i].Mark), &c.Times[i].Verdict)
		}
		v.Lines = t.judged(t.setup(c.B), verdicts)
		v.Meant = t.meant(r, c)
		out = append(out, v)
	}
	return out
}

// named is a verdict with its subject.
type named struct {
	quantity finding.Finding
	verdict  compare.Verdict
}

// judged draws all verdicts to one scale in percent.
func (t *teller) judged(b string, all []named) []difference {
	reach := 5.0
	for _, n := range all {
		for _, end := range n.verdict.CIPercent {
			if !math.IsNaN(end) && math.Abs(end) < 60 {
				reach = math.Max(reach, math.Abs(end))
			}
		}
	}
	reach = 5 * math.Ceil(reach/5)
	at := func(x float64) float64 { return 50 + 50*math.Max(-1, math.Min(1, x/reach)) }
	var out []difference
	for _, n := range all {
		v := n.verdict
		d := difference{Sentence: t.book.Sentence(words.Verdict(b, n.quantity, v)), Sign: sign(v), Low: t.percent(-reach), High: t.percent(reach), Zero: 50}
		if low, high := v.CIPercent[0], v.CIPercent[1]; low <= high {
			d.Drawn, d.Left, d.Width, d.Mid = true, at(low), at(high)-at(low), at(v.Percent)
		}
		out = append(out, d)
	}
	return out
}

func (t *teller) percent(x float64) string {
	if x > 0 {
		return "+" + t.style.Fixed(x, 0) + " %"
	}
	return t.style.Fixed(x, 0) + " %"
}

func sign(v compare.Verdict) string {
	switch {
	case v.Finding == compare.Differs && v.Percent > 0:
		return "▲"
	case v.Finding == compare.Differs:
		return "▼"
	case v.Finding == compare.NoneShown:
		return "○"
	}
	return "?"
}

// meant describes the effect of a shown difference in drag at usual speeds.
func (t *teller) meant(r *runs.Result, c runs.Comparison) []string {
	if c.CdA == nil || c.Load == nil || c.CdA.Finding != compare.Differs {
		return nil
	}
	var out []string
	for _, l := range r.RoadLoads {
		if l.Setup != c.A {
			continue
		}
		w := effectOf(r, l)
		for _, v := range usualSpeeds(t.style.System)[1:] {
			p := c.Load.Power(w, v)
			key := "takes_more"
			if p.X < 0 {
				key, p.X = "takes_less", -p.X
			}
			out = append(out, t.fill(key, finding.Speed("speed", v), finding.Power("power", p.X).With(p.SE), finding.Text("b", t.setup(c.B))))
		}
	}
	return out
}

// usualSpeeds are those of town, country road and motorway, m/s.
func usualSpeeds(u shown.System) []float64 {
	if u == shown.Imperial {
		return []float64{40 * units.MPH, 60 * units.MPH, 80 * units.MPH}
	}
	return []float64{60 * units.KMH, 100 * units.KMH, 130 * units.KMH}
}
