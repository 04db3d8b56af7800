package report

import (
	_ "embed"
	"html/template"
	"io"
	"regexp"
	"strings"
	"time"

	"stillair/export/report/figure"
	"stillair/export/shown"
	"stillair/runs"
)

// Options configures the page.
type Options struct {
	Units    shown.System   // "": metric
	Name     string         // the rider's name for the ride; may be empty
	Started  time.Time      // when the ride began; zero if unknown
	Invented bool           // the ride is simulated, and the page says so
	Program  string         // name and version of the program, for the foot of the page
	Remarks  []Remark       // what the rider noted
	Sections []Section      // shown after the road load
	Test     *Test          // for the protocol; nil: none
	Language shown.Language // "": English
}

// Remark is what the rider noted at a time of the log.
type Remark struct {
	T    float64 // s on the log's clock
	Text string
}

// Section is a part of the page that was computed elsewhere.
type Section struct {
	Title   string
	Lead    []string // paragraphs before the table
	Header  []string // of the table
	Rows    [][]string
	Figures []figure.Figure
	After   []string // paragraphs after
}

//go:embed page.html
var pageText string

//go:embed protocol.html
var protocolText string

//go:embed comparison.html
var comparisonText string

//go:embed style.css
var styleText string

// settled has metric units and English where nothing was chosen.
func (o Options) settled() Options {
	if o.Units == "" {
		o.Units = shown.Metric
	}
	if o.Language == "" {
		o.Language = shown.English
	}
	return o
}

// Write writes the page.
func Write(w io.Writer, r *runs.Result, opts Options) error {
	opts = opts.settled()
	return execute(w, pageText, opts, newPage(r, opts))
}

// execute fills a page with its content, in the language of the options.
func execute(w io.Writer, text string, opts Options, content any) error {
	teller := newTeller(opts)
	t, err := template.New("page").Funcs(template.FuncMap{"nb": together, "empty": empty, "lines": lines, "say": teller.say, "text": teller.text, "caution": teller.caution}).Parse(text)
	if err == nil {
		t, err = t.Parse(protocolText)
	}
	if err != nil {
		return err
	}
	return t.Execute(w, content)
}

// empty asks a part of the page whether it has anything to show. Templates call no
// methods themselves: the program of a browser is compiled without that (package
// app/phone/web).
func empty(part interface{ Empty() bool }) bool { return part.Empty() }

// comparisonPage is what the template of a comparison shows.
type comparisonPage struct {
	Style    template.CSS
	Language shown.Language
	Verdicts []string
	Protocol *protocol
}

// WriteComparison writes a page of what was compared, within rides and across
// them: the verdicts, and the protocol behind them.
func WriteComparison(w io.Writer, test *Test, opts Options) error {
	opts = opts.settled()
	t := newTeller(opts)
	p := comparisonPage{Style: template.CSS(styleText), Language: opts.Language, Protocol: t.protocol(test)}
	for _, c := range test.Across {
		p.Verdicts = append(p.Verdicts, t.verdicts(c)...)
	}
	for _, r := range test.Rides {
		for _, c := range r.Compared {
			p.Verdicts = append(p.Verdicts, t.verdicts(c)...)
		}
	}
	return execute(w, comparisonText, opts, p)
}

// loose is a space that must not end a line: before ± and before a unit.
var loose = regexp.MustCompile(`([0-9]) (±|%|kW|hp|km/h|mph|kg|lb|km|mi|min|h|s|m|ft|N)\b?`)

// together keeps figures and their units on one line.
func together(s string) string {
	return loose.ReplaceAllString(strings.ReplaceAll(s, "± ", "±\u00a0"), "$1\u00a0$2")
}

// lines splits the words of a cell.
func lines(s string) []string { return strings.Split(s, "\n") }
