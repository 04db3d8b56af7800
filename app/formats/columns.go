//go:build !js

package formats

import (
	"io"

	"stillair/export/columns"
)

// more are the formats beside those that every device has.
func more() []Format {
	return []Format{{Kind: Columns, Ending: "-parquet.zip", Media: zipped, Computed: true, write: writeColumns}}
}

// writeColumns writes a file for each table, with the ride's title in every row.
func writeColumns(w io.Writer, r Ride) error {
	var parts []part
	for _, t := range columns.Tables() {
		parts = append(parts, part{t.Name + ".parquet", func(w io.Writer) error { return t.Write(w, columns.Ride{Name: r.Title, Started: r.Started}, r.Result) }})
	}
	return archive(w, r.Started, parts)
}
