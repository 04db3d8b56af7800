package plain

import (
	"fmt"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// tally counts what is odd about one file: a Note for each kind of oddity, at
// the line of its first case.
type tally struct {
	file    string
	rows    int
	skipped int
	notes   []sensors.Note
	at      map[string]int // index in notes
}

func newTally(file string) *tally { return &tally{file: file, at: map[string]int{}} }

// say notes one case of the oddity that key names; text is that of its first.
func (y *tally) say(line int, key, text string) {
	i, ok := y.at[key]
	if !ok {
		i = len(y.notes)
		y.at[key] = i
		y.notes = append(y.notes, sensors.Note{File: y.file, Line: line, What: finding.Said(text)})
	}
	y.notes[i].Count++
}

// skip notes that a row was left out.
func (y *tally) skip(line int, key, text string) {
	y.skipped++
	y.say(line, key, text+"; the row is left out")
}

// hopeless reports early that a file is no log, so that gigabytes of rubbish
// are not read to their end.
func (y *tally) hopeless() bool { return y.skipped >= 10_000 && y.skipped*10 > y.rows*9 }

// verdict refuses a file of which too little is left.
func (y *tally) verdict(what string) error {
	if y.rows == 0 {
		return &sensors.InputError{File: y.file, What: finding.Said("there is no row below the header"),
			Remedy: finding.Said("record again, or take the file that holds the " + what)}
	}
	if 2*y.skipped <= y.rows {
		return nil
	}
	worst := y.notes[0]
	for _, n := range y.notes {
		if n.Count > worst.Count {
			worst = n
		}
	}
	return &sensors.InputError{File: y.file, Line: worst.Line,
		What:   finding.Said(fmt.Sprintf("%d of %d rows cannot be read; first: %s", y.skipped, y.rows, worst.What)),
		Remedy: finding.Said("see that the header names the right columns, that decimals have points, and that the file is whole")}
}
