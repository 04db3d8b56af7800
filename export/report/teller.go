package report

import (
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/sensors/finding"
)

// teller writes a protocol for one reader.
type teller struct {
	style shown.Style
	book  *words.Book
}

// say is a fixed text of the protocol.
func (t *teller) say(key string) string { return t.book.Name(finding.Code("protocol." + key)) }

// text is a fixed text of the page.
func (t *teller) text(key string) string { return t.book.Name(finding.Code("report." + key)) }

// caution is a caution as a sentence.
func (t *teller) caution(key string) string {
	return t.book.Sentence(finding.New(finding.Code("caution." + key)))
}

// fill is a text of the page with its arguments.
func (t *teller) fill(key string, args ...finding.Arg) string {
	return t.book.Say(finding.New(finding.Code("report."+key), args...))
}

func newTeller(o Options) *teller {
	style := shown.Style{System: o.Units, Language: o.Language}
	return &teller{style: style, book: words.New(style)}
}
