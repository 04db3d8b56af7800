// Package words is the one place where findings become sentences: a catalogue
// with an English and a German text for every code, and a Book that renders a
// finding in one language and one system of units. Screens, command line,
// report, CSV and the text beside a code in JSON and Parquet all come from
// here, so that all of them say the same with the same digits.
//
// A text holds its arguments in braces:
//
//	{at}               the number with its unit, in the digits of its quantity
//	{at.2}             the same with two decimals
//	{at~}, {at~.1}     without the unit: "{from~} to {to}"
//	{at±}              with half of its 95 % interval, to the digits that it supports
//	{n|one run|# runs} the first text where the count is one, else the second; # is the number
//	{why}              another finding, or a name as it is
package words

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"stillair/export/shown"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Entry is what the catalogue holds of one code.
type Entry struct {
	Code    finding.Code
	Args    []finding.Arg // examples, by which tests and the format page know the names and quantities
	English string
	German  string
}

// args makes the examples of an entry.
func args(a ...finding.Arg) []finding.Arg { return a }

// Catalogue gives every entry, area by area.
func Catalogue() []Entry {
	return slices.Concat(ofSensors(), ofFusion(), ofRuns(), ofRoadLoad(), ofPlans(), ofCautions(), ofExport(), ofVerdicts(), ofApp(), ofReport(), ofProtocol())
}

// Book renders findings for one reader.
type Book struct {
	Style shown.Style
	texts map[finding.Code]string
}

// New makes the book for a language and a system of units.
func New(style shown.Style) *Book {
	b := &Book{Style: style, texts: map[finding.Code]string{}}
	for _, e := range Catalogue() {
		b.texts[e.Code] = e.English
		if style.Language == shown.German {
			b.texts[e.Code] = e.German
		}
	}
	return b
}

// Say renders a finding, without a capital or a full stop of its own.
func (b *Book) Say(f finding.Finding) string {
	text, ok := b.texts[f.Code]
	if !ok {
		return f.String()
	}
	return b.fill(text, f)
}

// Sentence renders a finding with a capital and a full stop.
func (b *Book) Sentence(f finding.Finding) string { return shown.Sentence(b.Say(f)) }

// Name is the text of a code that has no arguments: of an answer, a cause, a
// stage; empty for none.
func (b *Book) Name(c finding.Code) string {
	if c == "" {
		return ""
	}
	return b.Say(finding.New(c))
}

// Sentences renders each of the findings as a sentence.
func (b *Book) Sentences(all []finding.Finding) []string {
	out := make([]string, len(all))
	for i, f := range all {
		out[i] = b.Sentence(f)
	}
	return out
}

// Join renders the findings in one line, separated by semicolons.
func (b *Book) Join(all []finding.Finding) string {
	out := make([]string, len(all))
	for i, f := range all {
		out[i] = b.Say(f)
	}
	return strings.Join(out, "; ")
}

// Note renders what a reader said about its file, with the place and how often.
func (b *Book) Note(n sensors.Note) string { return place(n.File, n.Line) + b.remark(n) }

// NoteSentence is Note as a sentence behind the place, which stays as it is
// written.
func (b *Book) NoteSentence(n sensors.Note) string {
	return place(n.File, n.Line) + shown.Sentence(b.remark(n))
}

func (b *Book) remark(n sensors.Note) string {
	s := b.Say(n.What)
	if n.Count > 1 {
		s += b.fill(b.texts[codeTimes], finding.New(codeTimes, finding.Count("n", n.Count)))
	}
	return s
}

// Error renders an error: of a bad input the place, what is wrong and the remedy; of
// a finding its text; of several joined a line each; of a file that is cut off or
// damaged just that; any other unchanged.
func (b *Book) Error(err error) string {
	switch e := err.(type) {
	case nil:
		return ""
	case *sensors.InputError:
		s := place(e.File, e.Line) + b.Say(e.What)
		if !e.Remedy.IsZero() {
			s += "; " + b.Say(e.Remedy)
		}
		return s
	case *finding.Error:
		return b.Say(e.Finding)
	case interface{ Unwrap() error }:
		if inner := e.Unwrap(); inner != nil {
			if own, mine := err.Error(), inner.Error(); strings.HasSuffix(own, mine) {
				return strings.TrimSuffix(own, mine) + b.Error(inner)
			}
		}
	case interface{ Unwrap() []error }:
		if all := e.Unwrap(); len(all) > 0 && err.Error() == errors.Join(all...).Error() {
			return strings.Join(b.lines(all), "\n")
		}
	}
	if f, ok := sensors.Broken(err); ok {
		return b.Say(f)
	}
	return err.Error()
}

func (b *Book) lines(all []error) []string {
	out := make([]string, len(all))
	for i, err := range all {
		out[i] = b.Error(err)
	}
	return out
}

func place(file string, line int) string {
	switch {
	case file == "":
		return ""
	case line > 0:
		return fmt.Sprintf("%s:%d: ", file, line)
	}
	return file + ": "
}

// fill puts the arguments into a text.
func (b *Book) fill(text string, f finding.Finding) string {
	var out strings.Builder
	for {
		before, rest, ok := strings.Cut(text, "{")
		out.WriteString(before)
		if !ok {
			return out.String()
		}
		inside, after, _ := strings.Cut(rest, "}")
		out.WriteString(b.value(inside, f))
		text = after
	}
}

// value is what stands for the braces with that inside.
func (b *Book) value(inside string, f finding.Finding) string {
	if name, forms, ok := strings.Cut(inside, "|"); ok {
		return b.plural(name, forms, f)
	}
	name, form := inside, ""
	if i := strings.IndexAny(inside, "~±."); i >= 0 {
		name, form = inside[:i], inside[i:]
	}
	a, ok := f.Arg(name)
	if !ok {
		return "{" + inside + "}"
	}
	switch {
	case a.Quantity == finding.OfText:
		return a.Text
	case a.Quantity == finding.OfFinding:
		return b.Say(*a.Finding)
	case strings.HasPrefix(form, "±"):
		return b.Style.ArgumentBand(a)
	}
	decimals := -1
	if _, digits, ok := strings.Cut(form, "."); ok {
		decimals, _ = strconv.Atoi(digits)
	}
	return b.Style.Argument(a, decimals, strings.HasPrefix(form, "~"))
}

func (b *Book) plural(name, forms string, f finding.Finding) string {
	a, ok := f.Arg(name)
	one, many, _ := strings.Cut(forms, "|")
	if !ok {
		return "{" + name + "}"
	}
	if a.X == 1 {
		return one
	}
	return strings.ReplaceAll(many, "#", b.Style.Argument(a, 0, true))
}

// Texts renders each of the findings, nil where there are none.
func (b *Book) Texts(all []finding.Finding) []string {
	var out []string
	for _, f := range all {
		out = append(out, b.Say(f))
	}
	return out
}

// ForMachines is the book of what stands beside a code in a file that programs
// read: English, metric.
func ForMachines() *Book { return New(shown.Style{System: shown.Metric, Language: shown.English}) }
