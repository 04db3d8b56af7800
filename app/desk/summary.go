package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
)

// print writes text to the command's output.
func (w *world) print(text string) error {
	_, err := io.WriteString(w.Out, text)
	return err
}

// page is text under way.
type page struct {
	strings.Builder
	units shown.System
	said  *words.Book // made when it is first asked for
}

// book renders findings in the units of the page.
func (p *page) book() *words.Book {
	if p.said == nil {
		p.said = words.New(shown.Style{System: p.units, Language: shown.English})
	}
	return p.said
}

func (p *page) line(format string, args ...any) { fmt.Fprintf(p, format+"\n", args...) }

func (p *page) title(format string, args ...any) {
	p.line("\n"+format, args...)
}

// wrapped writes words at an indent, broken at 80 columns.
func (p *page) wrapped(indent int, text string) {
	pad, column := strings.Repeat(" ", indent), 80
	for i, word := range strings.Fields(text) {
		n := len([]rune(word))
		if i > 0 && column+1+n > 80 {
			p.WriteString("\n")
			column = 80
		}
		if column >= 80 {
			p.WriteString(pad)
			column = indent
		} else {
			p.WriteString(" ")
			column++
		}
		p.WriteString(word)
		column += n
	}
	p.WriteString("\n")
}

// summary prints what was found in a ride.
func summary(s *study, units shown.System) string {
	p := &page{units: units}
	p.head(s)
	r := s.result
	p.compared(r)
	for _, c := range r.Compared {
		p.means(r, c, usualSpeed)
	}
	p.launches(r)
	p.rollOns(r)
	p.passes(r)
	p.power(r)
	p.stops(r)
	p.loads(r)
	if len(r.Runs)+len(r.Passes) == 0 {
		p.title("No run was found")
		p.wrapped(2, "A run is a launch or roll-on with the throttle wide open, or a long roll with the clutch in. Part throttle and everyday braking do not count as runs.")
	}
	p.rejected(r)
	if remarks := s.reportOptions(p.book().Style).Remarks; len(remarks) > 0 {
		p.title("You noted")
		for _, note := range remarks {
			p.wrapped(2, p.since(r, note.T)+"  "+note.Text)
		}
	}
	p.assumed(s)
	if len(r.Runs)+len(r.Passes) > 0 {
		p.title("± is a 95 %% band: 95 of 100 such bands contain the true value.")
	}
	return p.String()
}

func (p *page) head(s *study) {
	var facts []string
	add := func(text string) {
		if text != "" && text != "–" {
			facts = append(facts, text)
		}
	}
	o := s.reportOptions(p.book().Style)
	add(o.Name)
	add(s.result.Ride.Bike)
	if !o.Started.IsZero() {
		add(o.Started.Format("2 Jan 2006, 15:04 MST"))
	}
	if t := s.result.Track; t != nil && len(t.T) > 1 {
		last, top := len(t.T)-1, 0.0
		for _, v := range t.V {
			top = max(top, v)
		}
		add(shown.Duration(t.T[last] - t.T[0]))
		add("fastest " + p.units.Number(shown.Speed, top, 0))
	}
	p.wrapped(0, strings.Join(facts, " · "))
	if o.Invented {
		p.line("This ride is invented: it was simulated, not ridden.")
	}
}

// of returns the runs of a kind that count, and how many were found.
func of(r *runs.Result, kind runs.Kind) (counting []runs.Run, found int) {
	for _, run := range r.Runs {
		if run.Kind != kind {
			continue
		}
		found++
		if run.Accepted() {
			counting = append(counting, run)
		}
	}
	return counting, found
}

// counted titles a kind of run with how many there are.
func (p *page) counted(title string, counting, found int) {
	switch {
	case counting == found:
		p.title("%s: %d", title, found)
	default:
		p.title("%s: %d, %d of them rejected", title, found, found-counting)
	}
}

func (p *page) rejected(r *runs.Result) {
	begun := slices.ContainsFunc(r.Passes, func(one runs.Pass) bool { return !one.Accepted() })
	if begun {
		p.title("Rejected")
		p.rejectedPasses(r)
	}
	for _, run := range r.Runs {
		if run.Accepted() {
			continue
		}
		if !begun {
			p.title("Rejected")
			begun = true
		}
		p.wrapped(2, fmt.Sprintf("run %d, %s at %s: %s", run.ID, run.Kind, p.since(r, run.Start), p.book().Join(run.Reasons)))
	}
}

// since shows a time of the log as one since the ride's beginning.
func (p *page) since(r *runs.Result, t float64) string {
	if r.Track != nil && len(r.Track.T) > 0 {
		t -= r.Track.T[0]
	}
	return shown.Moment(t)
}

func (p *page) assumed(s *study) {
	say := p.book().Sentences(s.result.Warnings)
	for _, n := range s.result.Notes {
		say = append(say, p.book().NoteSentence(n))
	}
	if t := s.result.Track; t != nil {
		say = append(say, p.book().Sentences(t.Notes)...)
	}
	if len(s.result.Defaults) > 0 {
		p.title("Assumed (not entered)")
		for _, field := range s.result.Defaults {
			p.wrapped(2, p.book().Default(field, s.result.Ride))
		}
	}
	if len(say) == 0 {
		return
	}
	p.title(p.book().Name("report.know"))
	for _, text := range say {
		p.wrapped(2, text)
	}
}
