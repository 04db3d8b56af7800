package store

import (
	"bytes"
	"encoding/json"
	"errors"
	"io/fs"

	"stillair/export/results"
)

// keptEnding is that of the file which keeps what a session measured.
const keptEnding = ".season.json"

// kept is what a session measured, with what it was computed by.
type kept struct {
	Version int               `json:"version"`
	By      string            `json:"by"`
	Values  *Values           `json:"computed_with,omitempty"`
	Results *results.Document `json:"results"`
}

// KeepResults keeps of a session's results what a season needs
// (results.Document.ForSeason), computed with those values. By names the program and whatever else the results depend on.
func (s *Sessions) KeepResults(id, by string, values *Values, d *results.Document) error {
	return writeJSON(s.files, id+keptEnding, kept{Version: Version, By: by, Values: values, Results: d})
}

// KeptResults gives what KeepResults kept of a session, nil where nothing of
// use is: results that were computed by another program or with other values
// are not, nor are damaged ones. All of those can be recomputed.
func (s *Sessions) KeptResults(id, by string, values *Values) *results.Document {
	var k kept
	if err := readJSON(s.files, id+keptEnding, &k); err != nil || k.By != by || k.Results == nil || !k.Values.same(values) {
		return nil
	}
	return k.Results
}

// same reports whether both say the same, be they read from a file or not.
func (v *Values) same(o *Values) bool {
	a, errA := json.Marshal(v)
	b, errB := json.Marshal(o)
	return errA == nil && errB == nil && bytes.Equal(a, b)
}

// forgetResults removes what was kept of a session's results.
func (s *Sessions) forgetResults(id string) error {
	if err := s.files.Remove(id + keptEnding); !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}
