package plain

import (
	"stillair/sensors"
	"stillair/sensors/finding"
)

// tally counts the irregularities of one file: a Note for each kind, at the
// line of its first case.
type tally struct {
	file    string
	rows    int
	skipped int
	notes   []sensors.Note
	at      map[string]int // index in notes
}

func newTally(file string) *tally { return &tally{file: file, at: map[string]int{}} }

// say counts one case of the irregularity named by key; what describes the first one.
func (y *tally) say(line int, key string, what finding.Finding) {
	i, ok := y.at[key]
	if !ok {
		i = len(y.notes)
		y.at[key] = i
		y.notes = append(y.notes, sensors.Note{File: y.file, Line: line, What: what})
	}
	y.notes[i].Count++
}

// skip notes that a row was left out.
func (y *tally) skip(line int, key string, why finding.Finding) {
	y.skipped++
	y.say(line, key, finding.New("plain.row_left_out", finding.Of("why", why)))
}

// hopeless reports early that a file is not a log, so that gigabytes of rubbish
// are not read to their end.
func (y *tally) hopeless() bool { return y.skipped >= 10_000 && y.skipped*10 > y.rows*9 }

// verdict refuses a file if too little of it is left.
func (y *tally) verdict(want finding.Code) error {
	if y.rows == 0 {
		return &sensors.InputError{File: y.file, What: finding.New("plain.no_rows"),
			Remedy: finding.New("plain.record_again", finding.Of("what", finding.New(want)))}
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
		What:   finding.New("plain.bad_rows", finding.Count("bad", y.skipped), finding.Count("of", y.rows), finding.Of("first", worst.What)),
		Remedy: finding.New("plain.check_table")}
}
