package main

import (
	"archive/zip"
	"bytes"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"stillair/export/columns"
	"stillair/export/results"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// ridden is a ride with its results.
type ridden struct {
	name string
	doc  *results.Document
}

// Endings of results as Parquet: a table, and the zip of tables that the phone
// makes.
const (
	columnEnding = ".parquet"
	zipEnding    = "-parquet.zip"
)

// seasonInputs lists recordings and results files at a path, whatever is within
// a folder.
func seasonInputs(path string) ([]string, error) {
	info, err := os.Stat(path)
	if err != nil || !info.IsDir() {
		return []string{path}, nil // what is wrong with it is reported in its turn
	}
	found, err := recordingsAt(path)
	within := []string{"*.json", "*" + columnEnding}
	for _, t := range columns.Tables() {
		within = append(within, filepath.Join(t.Name, "*"+columnEnding))
	}
	for _, pattern := range within {
		more, _ := filepath.Glob(filepath.Join(escapeGlob(path), pattern))
		found = append(found, more...)
	}
	if len(found) == 0 {
		return nil, err
	}
	return found, nil
}

// escapeGlob escapes the characters that have a meaning in a pattern.
func escapeGlob(path string) string {
	return strings.NewReplacer(`\`, `\\`, "*", `\*`, "?", `\?`, "[", `\[`).Replace(path)
}

// shortName is a file's own name, or its path where another has that name.
func shortName(path string, among []string) string {
	for _, o := range among {
		if o != path && filepath.Base(o) == filepath.Base(path) {
			return path
		}
	}
	return filepath.Base(path)
}

// columnFiles separates results in Parquet from all others.
func columnFiles(paths []string) (tables, others []string) {
	for _, p := range paths {
		if strings.HasSuffix(p, columnEnding) || strings.HasSuffix(p, zipEnding) {
			tables = append(tables, p)
			continue
		}
		others = append(others, p)
	}
	return tables, others
}

// fromColumns gives the rides in tables, and what is wrong with those that cannot
// be used.
func fromColumns(tables []string) (out []ridden, wrong []error) {
	g := columns.NewReader()
	for _, path := range tables {
		add := addTable
		if strings.HasSuffix(path, zipEnding) {
			add = addZip
		}
		if err := add(g, path); err != nil {
			wrong = append(wrong, err)
		}
	}
	for _, r := range g.Rides() {
		out = append(out, ridden{r.Ride, r.Results})
	}
	return out, wrong
}

func cannotOpen(path string, err error) error {
	return &sensors.InputError{File: path, What: finding.New("input.cannot_open", sensors.Cause(err)), Remedy: finding.New("input.check_name"), Err: err}
}

// addTable adds a table. Those of the same rides lie beside it, or in the folders
// that are named after the tables.
func addTable(g *columns.Reader, path string) error {
	f, err := os.Open(path)
	if err != nil {
		return cannotOpen(path, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return cannotOpen(path, err)
	}
	folder := filepath.Dir(path)
	if slices.ContainsFunc(columns.Tables(), func(t columns.Table) bool { return t.Name == filepath.Base(folder) }) {
		folder = filepath.Dir(folder)
	}
	return g.Add(f, info.Size(), folder, path)
}

// mostUnpacked is how many bytes of a table in a zip are taken.
const mostUnpacked = 256 << 20

// addZip adds the tables of a zip.
func addZip(g *columns.Reader, path string) error {
	z, err := zip.OpenReader(path)
	if err != nil {
		return sensors.Unreadable(path, 0, err)
	}
	defer z.Close()
	for _, entry := range z.File {
		if !strings.HasSuffix(entry.Name, columnEnding) {
			continue
		}
		r, err := entry.Open()
		if err != nil {
			return sensors.Unreadable(path, 0, err)
		}
		data, err := io.ReadAll(io.LimitReader(r, mostUnpacked))
		if r.Close(); err != nil {
			return sensors.Unreadable(path, 0, err)
		}
		if err := g.Add(bytes.NewReader(data), int64(len(data)), path, path+": "+entry.Name); err != nil {
			return err
		}
	}
	return nil
}
