package accuracy

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"math"
	"slices"

	"stillair/export/plot"
	"stillair/export/report/figure"
	"stillair/export/shown"
)

//go:embed page.html
var pageText string

// Made describes how a measurement was made.
type Made struct {
	Version string // of the program
	By      string // the command
}

// Report is the summary of a measurement.
type Report struct {
	Made
	Sections []Section
}

// Section is the result of one study.
type Section struct {
	Study Study
	Cases []*Summary
	Held  []Held // every limit of every case, in order
}

// Held is one limit with the measured figure.
type Held struct {
	Case    string
	Limit   Limit
	Figure  float64
	Verdict Verdict
}

// NewReport sums up the records of studies. Limits of which nothing was
// measured are left out.
func NewReport(studies []Study, records []Record, made Made) *Report {
	out := &Report{Made: made}
	for _, s := range studies {
		sec := Section{Study: s}
		for _, c := range s.Cases {
			sum := Summarise(s.Name, c.Name, records)
			if sum.Rides == 0 {
				continue
			}
			sec.Cases = append(sec.Cases, sum)
			for _, l := range c.Limits {
				if f, v, ok := l.Judge(sum); ok {
					sec.Held = append(sec.Held, Held{Case: c.Name, Limit: l, Figure: f, Verdict: v})
				}
			}
		}
		if len(sec.Cases) > 0 {
			out.Sections = append(out.Sections, sec)
		}
	}
	return out
}

// Count is how many limits have a verdict.
func (r *Report) Count(v Verdict) int {
	n := 0
	for _, s := range r.Sections {
		for _, h := range s.Held {
			if h.Verdict == v {
				n++
			}
		}
	}
	return n
}

// Missed are the limits that were missed, study by study, in words.
func (r *Report) Missed() []string {
	var out []string
	for _, s := range r.Sections {
		for _, h := range s.Held {
			if h.Verdict == Missed {
				out = append(out, fmt.Sprintf("%s, %s: %s", s.Study.Title, h.Case, h.words(s.Study.Unit)))
			}
		}
		for _, c := range s.Cases {
			if len(c.Failed) > 0 {
				out = append(out, fmt.Sprintf("%s, %s: %d of %d rides came to nothing, such as: %s", s.Study.Title, c.Case, len(c.Failed), c.Rides, c.Failed[0]))
			}
		}
	}
	return out
}

// words describe the verdict on a limit.
func (h Held) words(u Unit) string {
	return fmt.Sprintf("%s, %s %s, wanted %s", h.Limit.What, h.Limit.Of, showIn(h.Limit.Of, h.Figure, u), h.wanted(u))
}

// wanted is the text of a limit.
func (h Held) wanted(u Unit) string {
	show := func(x float64) string { return showIn(h.Limit.Of, x, u) }
	switch l := h.Limit; {
	case math.IsInf(l.Low, -1):
		return "at most " + show(l.High)
	case l.Of == HitRate && l.High == 1:
		return "at least " + show(l.Low)
	default:
		return show(l.Low) + " to " + show(l.High)
	}
}

// showIn shows a figure in its unit.
func showIn(f Figure, x float64, u Unit) string {
	switch f {
	case Coverage, HitRate:
		return shown.Fixed(100*x, 1) + " %"
	case OverBound, Honesty:
		return shown.Fixed(x, 2)
	}
	return shown.Fixed(u.Factor*x, u.Digits) + " " + u.Name
}

// Write writes the report as one self-contained HTML page.
func (r *Report) Write(out io.Writer) error {
	page, err := template.New("page").Funcs(template.FuncMap{"columns": columns}).Parse(pageText)
	if err != nil {
		return err
	}
	var whole bytes.Buffer
	if err := page.Execute(&whole, r.view()); err != nil {
		return err
	}
	_, err = out.Write(whole.Bytes())
	return err
}

// columns head the figures of a row.
func columns() []string {
	return []string{"bias", "spread", "error over bound", "95 % within", "intervals hold", "error/said"}
}

// figures are the pictures of a section.
func (s *Section) figures() []figure.Figure {
	var what []string
	for _, c := range s.Cases {
		for _, name := range c.names {
			if c.Values[name] != nil && !slices.Contains(what, name) && len(what) < plot.Tones {
				what = append(what, name)
			}
		}
	}
	var out []figure.Figure
	add := func(f figure.Figure) {
		if !f.Empty() {
			out = append(out, f)
		}
	}
	add(dots{of: Bias, axis: "bias, " + s.Study.Unit.Name, factor: s.Study.Unit.Factor, what: what, reaching: []float64{0}}.draw(s.Cases, "Bias"))
	add(dots{of: OverBound, axis: "error over bound", factor: 1, what: what, reaching: []float64{1}}.draw(s.Cases, "Errors over the theoretical bound"))
	add(dots{of: Coverage, axis: "95 % intervals that hold the truth, %", factor: 100, what: what, reaching: []float64{95}}.draw(s.Cases, "Coverage of the 95 % intervals"))
	if s.Study.Unit == milliseconds {
		for _, name := range []string{hundred + rolled, hundred + moving, quarter + rolled, overtake} {
			add(sizes(s.Cases, name, s.Study.Unit))
		}
	}
	add(standardised(s.Cases))
	return out
}
