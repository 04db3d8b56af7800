package accuracy

import (
	"fmt"

	"stillair/export/report/figure"
	"stillair/export/shown"
)

// view is what the page's template shows.
type view struct {
	Made
	Met, Unclear, Lost int
	Missed             []string
	Sections           []sectionView
}

type sectionView struct {
	ID, Title, About string
	Rows             []rowView
	Shares           []shareView
	Figures          []figure.Figure
}

// rowView is one figure of one case.
type rowView struct {
	Case    string // empty: as above
	Rides   int
	What    string
	N       int
	Columns []cell
}

// shareView is one share of one case.
type shareView struct {
	Case, What string
	Hits, Of   int
	Share      cell
}

// cell is one shown number, and how it stands to its limit, if it has one.
type cell struct {
	Text    string
	Verdict Verdict // empty: no limit
	Want    string  // the limit
}

func (r *Report) view() view {
	v := view{Made: r.Made, Met: r.Count(Met), Unclear: r.Count(Unclear), Lost: r.Count(Missed), Missed: r.Missed()}
	for i := range r.Sections {
		s := &r.Sections[i]
		sv := sectionView{ID: s.Study.Name, Title: s.Study.Title, About: s.Study.About, Figures: s.figures()}
		for _, c := range s.Cases {
			sv.addCase(s, c)
		}
		v.Sections = append(v.Sections, sv)
	}
	return v
}

// addCase adds the rows of a case.
func (sv *sectionView) addCase(s *Section, c *Summary) {
	title := c.Case
	for _, name := range c.names {
		if t := c.Shares[name]; t != nil {
			p := cell{Text: shown.Fixed(100*float64(t.hits)/float64(max(t.of, 1)), 1) + " %"}
			s.judge(&p, c.Case, name, HitRate)
			sv.Shares = append(sv.Shares, shareView{Case: c.Case, What: name, Hits: t.hits, Of: t.of, Share: p})
			continue
		}
		t := c.Values[name]
		row := rowView{Case: title, Rides: c.Rides, What: name, N: t.N()}
		title = ""
		for _, f := range []Figure{Bias, Spread, OverBound, Within95, Coverage, Honesty} {
			row.Columns = append(row.Columns, s.cellOf(c, name, f))
		}
		sv.Rows = append(sv.Rows, row)
	}
}

// cellOf shows one figure.
func (s *Section) cellOf(c *Summary, what string, f Figure) cell {
	t := c.Values[what]
	x := cell{Text: showIn(f, t.Figure(f), s.Study.Unit)}
	switch f {
	case Bias:
		x.Text = fmt.Sprintf("%s ± %s", shown.Fixed(s.Study.Unit.Factor*t.Figure(f), s.Study.Unit.Digits), showIn(f, t.doubt(f), s.Study.Unit))
	case OverBound:
		if b := t.Bound(); b > 0 {
			x.Text += " × " + showIn(Spread, b, s.Study.Unit)
		} else {
			x.Text = ""
		}
	}
	s.judge(&x, c.Case, what, f)
	return x
}

// judge marks a cell that has a limit.
func (s *Section) judge(x *cell, name, what string, f Figure) {
	for _, h := range s.Held {
		if h.Case == name && h.Limit.What == what && h.Limit.Of == f {
			x.Verdict, x.Want = h.Verdict, h.wanted(s.Study.Unit)
		}
	}
}
