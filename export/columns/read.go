package columns

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"

	"github.com/parquet-go/parquet-go"

	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// What is said about files that cannot be read.
const (
	codeNoParquet finding.Code = "columns.no_parquet"
	codeForeign   finding.Code = "columns.foreign"
	codeNoColumn  finding.Code = "columns.no_column"
	codeRow       finding.Code = "columns.row"
	codeNoNumber  finding.Code = "columns.no_number"
	codeManyRows  finding.Code = "columns.many_rows"
	codeAgain     finding.Code = "columns.export_again"
	codeOurs      finding.Code = "columns.give_ours"
)

// most is how many bytes of a file, and mostRows how many rows, are read: some
// hundred times what a season gives.
const (
	most     = 256 << 20
	mostRows = 1 << 20
)

// Reader gathers rides from any number of tables, in any order.
type Reader struct {
	order []rideKey
	rides map[rideKey]*gathered
}

// rideKey identifies a ride: rides in different folders may have the same name.
type rideKey struct{ folder, ride string }

// gathered is what the tables say about one ride.
type gathered struct {
	result  runs.Result
	started string
	gears   map[int]string
	marks   map[int][]runs.Mark
	passes  map[int32]*runs.Pass
	passed  []*runs.Pass // in order of appearance
}

// NewReader gathers nothing yet.
func NewReader() *Reader { return &Reader{rides: map[rideKey]*gathered{}} }

// Add reads one table, of one ride or of many. Folder is where tables of the
// same rides lie beside it; name is for messages. Tables that a season has no
// use for, of samples and of power, are skipped. The rows of a table that is
// faulty are not kept.
func (g *Reader) Add(r io.ReaderAt, size int64, folder, name string) (err error) {
	fail := func(what, remedy finding.Finding, cause error) error {
		return &sensors.InputError{File: name, What: what, Remedy: remedy, Err: cause}
	}
	defer func() { // the library panics on some malformed files
		if p := recover(); p != nil {
			cause := fmt.Errorf("%v", p)
			err = fail(finding.New(codeNoParquet, sensors.Cause(cause)), finding.New(codeAgain), cause)
		}
	}()
	if size > most {
		return fail(finding.New("input.large_file", finding.Size("most", most)), finding.New("input.check_file"), nil)
	}
	if err := wholeFooter(r, size); err != nil {
		return fail(finding.New(codeNoParquet, sensors.Cause(err)), finding.New(codeAgain), err)
	}
	f, err := parquet.OpenFile(r, size)
	if err != nil {
		return fail(finding.New(codeNoParquet, sensors.Cause(err)), finding.New(codeAgain), err)
	}
	t, lacks := tableOf(f)
	switch {
	case f.NumRows() > mostRows && (t == nil || t.read != nil):
		return fail(finding.New(codeManyRows, finding.Count("most", mostRows)), finding.New("input.check_file"), nil)
	case t == nil:
		return fail(finding.New(codeForeign), finding.New(codeOurs), nil)
	case lacks != "":
		return fail(finding.New(codeNoColumn, finding.Text("table", t.name), finding.Text("column", lacks)), finding.New(codeAgain), nil)
	case t.read == nil:
		return nil
	}
	keep, err := t.read(f)
	var bad *fault
	switch {
	case errors.As(err, &bad) && bad.column != "":
		return fail(finding.New(codeNoNumber, finding.Text("column", bad.column), finding.Count("row", bad.row)), finding.New(codeAgain), nil)
	case errors.As(err, &bad):
		return fail(finding.New(codeRow, finding.Count("row", bad.row), sensors.Cause(bad.err)), finding.New(codeAgain), bad.err)
	}
	keep(g, folder)
	return nil
}

// wholeFooter validates the end of a file: the length of the footer and the
// magic number PAR1. The library would allocate any stated length.
func wholeFooter(r io.ReaderAt, size int64) error {
	var end [8]byte
	if size < 12 {
		return io.ErrUnexpectedEOF
	}
	if _, err := r.ReadAt(end[:], size-8); err != nil {
		return err
	}
	if string(end[4:]) != "PAR1" || int64(binary.LittleEndian.Uint32(end[:])) > size-12 {
		return io.ErrUnexpectedEOF
	}
	return nil
}

// fault is what is wrong with a row, counted from 1.
type fault struct {
	row    int
	column string // without a usable number; "": the row cannot be read
	err    error
}

func (f *fault) Error() string { return fmt.Sprintf("row %d %s: %v", f.row, f.column, f.err) }

// ours is one of our tables, recognised by the columns that no other has.
type ours struct {
	name   string
	marked []string // all of them
	needed []string // in addition
	read   func(*parquet.File) (keep func(*Reader, string), err error)
}

func allOurs() []ours {
	return []ours{
		{"runs", []string{"id", "kind", "accepted", "start_s"}, []string{"bike", "setup", "bearing_deg"}, reading(checkRun, (*Reader).addRun)},
		{"marks", []string{"run", "mark", "rollout_s"}, []string{"bike", "kind", "setup", "s", "se_s", "rollout_se_s"}, reading(checkMark, (*Reader).addMark)},
		{"passes", []string{"pass", "over", "mean_mps"}, []string{"bike", "setup", "accepted", "distance_m", "apart_s", "there_mps", "there_se_mps", "back_mps", "back_se_mps", "mean_se_mps", "half_difference_mps", "half_difference_se_mps"}, reading(checkPass, (*Reader).addPass)},
		{"road-load", []string{"cda_m2", "crr"}, []string{"bike", "setup", "cda_se_m2", "crr_se", "cda_noise_se_m2", "crr_noise_se", "air_density_kgpm3"}, reading(checkLoad, (*Reader).addLoad)},
		{"comparisons", []string{"a", "b", "quantity"}, []string{"bike", "delta", "delta_se"}, reading(checkComparison, (*Reader).addComparison)},
		{"samples", []string{"t_s", "speed_se_mps"}, nil, nil},
		{"power", []string{"power_w", "gear"}, nil, nil},
	}
}

// tableOf returns which of our tables a file is, nil for none, and a column
// that it lacks.
func tableOf(f *parquet.File) (t *ours, lacks string) {
	var names []string
	for _, field := range f.Schema().Fields() {
		names = append(names, field.Name())
	}
	for _, t := range allOurs() {
		has := func(c string) bool { return slices.Contains(names, c) }
		if !has("ride") || !all(t.marked, has) {
			continue
		}
		for _, c := range t.needed {
			if !has(c) {
				return &t, c
			}
		}
		return &t, ""
	}
	return nil, ""
}

func all(list []string, is func(string) bool) bool {
	return !slices.ContainsFunc(list, func(s string) bool { return !is(s) })
}

// reading reads and checks all rows of a table, and returns the function that
// stores them.
func reading[R any](check func(R) string, add func(*Reader, string, R)) func(*parquet.File) (func(*Reader, string), error) {
	return func(f *parquet.File) (func(*Reader, string), error) {
		reader := parquet.NewGenericReader[R](f)
		defer reader.Close()
		var rows []R
		buffer := make([]R, 256)
		for {
			n, err := reader.Read(buffer)
			for _, r := range buffer[:n] {
				if column := check(r); column != "" {
					return nil, &fault{row: len(rows) + 1, column: column}
				}
				rows = append(rows, r)
			}
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				return nil, &fault{row: len(rows) + 1, err: err}
			}
			if n == 0 || len(rows) > mostRows {
				return nil, &fault{row: len(rows) + 1, err: io.ErrUnexpectedEOF}
			}
			clear(buffer)
		}
		return func(g *Reader, folder string) {
			for _, r := range rows {
				add(g, folder, r)
			}
		}, nil
	}
}

// usable reports whether a number is one, or is missing.
func usable(x *float64) bool { return x == nil || !math.IsNaN(*x) && !math.IsInf(*x, 0) }

// spread reports whether a standard error is valid or missing.
func spread(x *float64) bool { return usable(x) && (x == nil || *x >= 0) }
