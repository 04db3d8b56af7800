package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"stillair/export/report"
	"stillair/export/results"
	"stillair/export/session"
	"stillair/export/shown"
	"stillair/export/table"
	"stillair/runs"
	"stillair/sensors"
)

// program is what files say about who wrote them.
const program = "Stillair desk"

// save writes a file through write, making its folder where it is missing. A
// file that could not be written whole does not stay behind under its name. What
// is there already is only replaced where it is a regular file: a link, a device
// or a pipe stays as it is.
func save(path string, write func(io.Writer) error) error {
	if err := replaceable(path); err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err != nil {
		return err
	}
	buffered := bufio.NewWriterSize(f, 1<<16)
	err = write(buffered)
	if err == nil {
		err = buffered.Flush()
	}
	err = errors.Join(err, f.Close())
	if err == nil {
		err = os.Chmod(f.Name(), 0o644)
	}
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		return errors.Join(err, os.Remove(f.Name()))
	}
	return nil
}

// replaceable returns an error where something is at path that is not a regular
// file.
func replaceable(path string) error {
	if there, err := os.Lstat(path); err == nil && !there.Mode().IsRegular() {
		return fmt.Errorf("%s is not a regular file and is not replaced; choose another place", path)
	}
	return nil
}

// unsynced is a session's store on a file that save syncs by renaming it.
type unsynced struct{ io.Writer }

func (u unsynced) Append(p []byte) error {
	_, err := u.Write(p)
	return err
}

func (u unsynced) Sync() error { return nil }

func saveSession(path string, log *sensors.Log, header session.Header) error {
	return save(path, func(out io.Writer) error { return session.Write(unsynced{out}, log, header) })
}

// document is the results of a study, with its date.
func (s *study) document() *results.Document {
	d, o := results.From(s.result), s.reportOptions(shown.Style{})
	d.Invented = o.Invented
	d.Began(o.Started)
	return d
}

func saveResults(path string, s *study) error {
	return save(path, func(out io.Writer) error { return results.Write(out, s.document()) })
}

func saveReport(path string, s *study, style shown.Style) error {
	o := s.reportOptions(style)
	if results.HasTest(s.result) {
		t, err := testOf([]*study{s}, nil)
		if err != nil {
			return err
		}
		o.Test = t
	}
	return save(path, func(out io.Writer) error { return report.Write(out, s.result, o) })
}

// reportOptions says on the report what the session file knows of the ride.
func (s *study) reportOptions(style shown.Style) report.Options {
	o := report.Options{Units: style.System, Language: style.Language, Program: program}
	if rec := s.ride.Session; rec != nil {
		o.Name, o.Started, o.Invented = rec.Name, rec.Header.Started, rec.Header.Origin == originSimulated
		for _, r := range rec.Remarks {
			o.Remarks = append(o.Remarks, report.Remark{T: r.T, Text: r.Text})
		}
	}
	if o.Started.IsZero() && len(s.ride.Log.Fixes) > 0 {
		o.Started = s.ride.Log.Fixes[0].UTC
	}
	return o
}

// saveTables writes the CSV files into dir and returns their paths.
func saveTables(dir string, r *runs.Result) ([]string, error) {
	var paths []string
	for _, t := range table.Tables(r) {
		path := filepath.Join(dir, t.Name)
		if err := save(path, t.Write); err != nil {
			return nil, err
		}
		paths = append(paths, path)
	}
	return paths, nil
}
