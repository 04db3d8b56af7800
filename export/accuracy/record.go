package accuracy

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
)

// Value is one figure of one ride with its error.
type Value struct {
	What  string  `json:"what"`
	Err   float64 `json:"err"`             // measured minus true
	SE    float64 `json:"se"`              // stated standard error
	Bound float64 `json:"bound,omitempty"` // smallest standard deviation that any method could have; 0: not known
	Held  bool    `json:"held"`            // the 95 % interval holds the truth
}

// Share counts how often an event occurred.
type Share struct {
	What string `json:"what"`
	Hits int    `json:"hits"`
	Of   int    `json:"of"`
}

// Record is the result of one seed of a case.
type Record struct {
	Version string   `json:"version"`
	Study   string   `json:"study"`
	Case    string   `json:"case"`
	Seed    uint64   `json:"seed"`
	Failed  string   `json:"failed,omitempty"` // why there is no result, in words
	Values  []Value  `json:"values,omitempty"`
	Shares  []Share  `json:"shares,omitempty"`
	Notes   []string `json:"notes,omitempty"` // details of what was wrong
}

// add records a figure with a normal 95 % interval.
func (r *Record) add(what string, err, se, bound float64) {
	if math.IsNaN(err) || math.IsNaN(se) {
		return
	}
	const normal95 = 1.959964
	r.Values = append(r.Values, Value{What: what, Err: err, SE: se, Bound: bound, Held: math.Abs(err) <= normal95*se})
}

// count records how often something happened.
func (r *Record) count(what string, hits, of int) {
	r.Shares = append(r.Shares, Share{What: what, Hits: hits, Of: of})
}

// once notes whether something happened that could have happened once.
func (r *Record) once(what string, happened bool) {
	hits := 0
	if happened {
		hits = 1
	}
	r.count(what, hits, 1)
}

// Load reads the records of a measurement. A last line that was cut off, as
// where the machine went down while it was written, is left out; whole tells
// how many bytes lie before it.
func Load(in io.Reader) (records []Record, whole int64, err error) {
	lines := bufio.NewReader(in)
	for number := 1; ; number++ {
		line, err := lines.ReadBytes('\n')
		if errors.Is(err, io.EOF) {
			return records, whole, nil
		}
		if err != nil {
			return records, whole, err
		}
		var r Record
		if err := json.Unmarshal(line, &r); err != nil {
			return records, whole, fmt.Errorf("line %d is not a record of a measurement (%w); take the line out, or name another file", number, err)
		}
		records, whole = append(records, r), whole+int64(len(line))
	}
}

// Save writes a record as one line.
func Save(out io.Writer, r Record) error {
	line, err := json.Marshal(r)
	if err != nil {
		return err
	}
	_, err = out.Write(append(line, '\n')) // in one write, so that lines are complete
	return err
}

// Of are the records of one version, since a mixture of versions would describe
// none of them.
func Of(records []Record, version string) []Record {
	var out []Record
	for _, r := range records {
		if r.Version == version {
			out = append(out, r)
		}
	}
	return out
}
