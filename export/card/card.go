// Package card writes a planned test as a card to print and take along: in which
// order to ride, how fast, on how much road, what to check, what to watch out
// for, and room for notes. It is one HTML file that needs nothing else.
package card

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"math"

	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs/plan"
)

// Card is a planned test.
type Card struct {
	Plan         *plan.Plan
	From, To     float64 // of each run, m/s; 0, 0: see Runs
	Runs         string  // the runs, in the caller's words
	FullThrottle bool
}

//go:embed card.html
var pageText string

// row is one run on the card.
type row struct {
	Number           int
	Setup, Pair, Way string
	Change           bool // the setup is changed before it
}

// Write writes the card.
func Write(out io.Writer, c Card, s shown.Style) error {
	t := wordsOf(s.Language)
	page, err := template.New("card").Funcs(template.FuncMap{"say": t.say}).Parse(pageText)
	if err != nil {
		return err
	}
	book, p := words.New(s), c.Plan
	cautions := words.CoastCautions()
	if c.FullThrottle {
		cautions = words.ThrottleCautions()
	}
	road := func(x float64) string { return s.Number(shown.Distance, math.Ceil(x/10)*10, 0) }
	data := struct {
		Lang                           string
		Runs, Speeds, Road, Up, Length string
		End, Stop                      string
		Pairs                          string
		Minutes                        string
		Rows                           []row
		Setups                         []string
		Cautions                       []string
		Checks                         []string
	}{Lang: string(s.Language), Runs: c.Runs, Road: road(p.RoadLength), End: road(math.Max(p.Up, p.Stop)), Stop: fmt.Sprintf(t.say("stop"), road(p.Stop)), Up: road(p.Up), Length: road(p.RoadLength - p.Up - math.Max(p.Up, p.Stop)),
		Pairs: fmt.Sprintf(t.say("pairs"), p.Pairs), Minutes: fmt.Sprintf(t.say("minutes"), math.Ceil(p.Seconds/300)*5), Rows: rows(p, t), Cautions: book.Sentences(cautions)}
	if c.To > 0 {
		key := "speeds"
		if c.FullThrottle {
			key = "up_from_to"
		}
		data.Speeds = fmt.Sprintf(t.say(key), s.Number(shown.Speed, c.From, 0), s.Number(shown.Speed, c.To, 0))
	}
	for i := range setups(p) {
		data.Setups = append(data.Setups, letter(i))
	}
	for _, key := range checks {
		data.Checks = append(data.Checks, t.say(key))
	}
	return page.Execute(out, data)
}

func setups(p *plan.Plan) int {
	n := 0
	for _, b := range p.Blocks {
		n = max(n, b.Setup+1)
	}
	return n
}

// rows are all runs in the order of riding.
func rows(p *plan.Plan, t book) []row {
	var out []row
	pair := 0
	for k, b := range p.Blocks {
		for i := range b.Pairs {
			pair++
			for _, way := range []string{"there", "back"} {
				out = append(out, row{Number: len(out) + 1, Setup: letter(b.Setup), Pair: fmt.Sprint(pair), Way: t.say(way),
					Change: k > 0 && i == 0 && way == "there"})
			}
		}
	}
	return out
}

func letter(i int) string { return string(rune('A' + i%26)) }
