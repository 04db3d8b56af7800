package columns_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/parquet-go/parquet-go"

	"stillair/export/columns"
	"stillair/export/exporttest"
	"stillair/export/table"
)

// cells are the names in a row of the format page, without those in brackets, which are
// explanations.
var (
	cells    = regexp.MustCompile("`([^`]*)`")
	brackets = regexp.MustCompile(`\((?:[^()]|\([^()]*\))*\)`)
)

// pageColumns are the columns that the format page names for a table, in order.
func pageColumns(t *testing.T, page, table string) []string {
	t.Helper()
	for _, line := range strings.Split(page, "\n") {
		if rest, ok := strings.CutPrefix(line, "| "+table+" | "); ok {
			var out []string
			for _, m := range cells.FindAllStringSubmatch(brackets.ReplaceAllString(rest, ""), -1) {
				out = append(out, m[1])
			}
			return out
		}
	}
	t.Errorf("the format page has no table %s", table)
	return nil
}

// TestFormatPage compares the tables of the format page with the written files:
// each column, in order, as Parquet and as CSV.
func TestFormatPage(t *testing.T) {
	text, err := os.ReadFile("../FORMATS.md")
	if err != nil {
		t.Fatal(err)
	}
	page := string(text)
	res := exporttest.Result()
	for _, tt := range columns.Tables() {
		var b bytes.Buffer
		if err := tt.Write(&b, columns.Ride{Name: "loop"}, res); err != nil {
			t.Fatal(err)
		}
		f, err := parquet.OpenFile(bytes.NewReader(b.Bytes()), int64(b.Len()))
		if err != nil {
			t.Fatal(err)
		}
		var names []string
		for _, field := range f.Schema().Fields() {
			names = append(names, field.Name())
		}
		if got := pageColumns(t, page, tt.Name); !slices.Equal(got, names) {
			t.Errorf("%s: the page says\n%q, the file\n%q", tt.Name, got, names)
		}
	}
	for _, tt := range table.Tables(res) {
		var b bytes.Buffer
		if err := tt.Write(&b); err != nil {
			t.Fatal(err)
		}
		header, err := csv.NewReader(&b).Read()
		if err != nil {
			t.Fatal(err)
		}
		if got := pageColumns(t, page, "`"+tt.Name+"`"); !slices.Equal(got, header) {
			t.Errorf("%s: the page says\n%q, the file\n%q", tt.Name, got, header)
		}
	}
}
