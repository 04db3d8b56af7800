// Package formats makes the files that the phone app offers of a ride beside the
// recording itself: each format of package export, as one file to hand over.
//
// A file travels further than one thinks. Whatever is made here is without the
// first and last 200 m of the ride and without every place near them, which show
// where somebody lives; what was computed from those stretches stays, since it
// holds no places (package export/share).
package formats

import (
	"archive/zip"
	"bytes"
	"errors"
	"io"
	"time"

	"stillair/export/geojson"
	"stillair/export/gpx"
	"stillair/export/report"
	"stillair/export/share"
	"stillair/export/shown"
	"stillair/export/table"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/plain"
)

// Ride is what files are made of.
type Ride struct {
	Title    string // the rider's name for it
	Started  time.Time
	Log      *sensors.Log
	Result   *runs.Result // nil if there are no results
	Units    shown.System
	Language shown.Language // of the report
	Program  string
}

// Kind names a format.
type Kind string

// The formats.
const (
	Report  Kind = "report"  // HTML
	Tables  Kind = "tables"  // CSV in a zip
	Columns Kind = "columns" // Parquet in a zip
	Track   Kind = "track"   // GPX
	Lines   Kind = "lines"   // GeoJSON
	Samples Kind = "samples" // plain log: CSV in a zip
)

// Format is one way to write a ride.
type Format struct {
	Kind          Kind
	Ending, Media string
	Computed      bool // it contains results
	Places        bool // it needs places
	write         func(io.Writer, Ride) error
}

const zipped = "application/zip"

// Formats are those there are on this device.
func Formats() []Format {
	return append([]Format{
		{Kind: Report, Ending: ".html", Media: "text/html", Computed: true, write: writeReport},
		{Kind: Tables, Ending: "-tables.zip", Media: zipped, Computed: true, write: writeTables},
		{Kind: Samples, Ending: "-samples.zip", Media: zipped, write: func(w io.Writer, r Ride) error { return plain.WriteZip(w, r.Log) }},
		{Kind: Track, Ending: ".gpx", Media: "application/gpx+xml", Computed: true, Places: true,
			write: func(w io.Writer, r Ride) error { return gpx.Write(w, r.Log, r.Result, r.Title) }},
		{Kind: Lines, Ending: ".geojson", Media: "application/geo+json", Computed: true, Places: true,
			write: func(w io.Writer, r Ride) error { return geojson.Write(w, r.Log, r.Result, r.Title) }},
	}, more()...)
}

// Of gives the format of a kind; one that there is not on this device writes nothing.
func Of(k Kind) Format {
	for _, f := range Formats() {
		if f.Kind == k {
			return f
		}
	}
	return Format{}
}

// What a ride may lack for a format.
var (
	ErrNoPlace     = errors.New("the recording holds no places")
	ErrNothingLeft = errors.New("nothing is left of the ride without its first and last 200 m")
	ErrNoResult    = errors.New("nothing was computed from the recording")
)

// Make writes the ride, and tells when what is given of it began, the zero time
// where that is not known. The ride itself is not changed.
func (f Format) Make(r Ride) (data []byte, began time.Time, err error) {
	if f.Computed && r.Result == nil {
		return nil, began, ErrNoResult
	}
	cut := share.Default()
	whole := r.Log
	r.Log = share.Apply(whole, cut)
	if len(r.Log.Motion)+len(r.Log.Fixes) == 0 {
		return nil, began, ErrNothingLeft
	}
	if r.Result != nil {
		r.Result = share.Result(r.Result, whole, cut)
	}
	if f.Places && !anyPlace(r.Log) {
		return nil, began, ErrNoPlace
	}
	_, r.Started = share.WindowOf(whole, cut).Began(whole.Begin(), r.Started, cut.Date)
	var b bytes.Buffer
	err = f.write(&b, r)
	return b.Bytes(), r.Started, err
}

func anyPlace(log *sensors.Log) bool {
	for _, f := range log.Fixes {
		if f.HasPosition() {
			return true
		}
	}
	return false
}

func writeReport(w io.Writer, r Ride) error {
	return report.Write(w, r.Result, report.Options{Units: r.Units, Language: r.Language, Name: r.Title, Started: r.Started, Program: r.Program})
}

// part is one file of an archive.
type part struct {
	name  string
	write func(io.Writer) error
}

func writeTables(w io.Writer, r Ride) error {
	var parts []part
	for _, t := range table.Tables(r.Result) {
		parts = append(parts, part{t.Name, t.Write})
	}
	return archive(w, r.Started, parts)
}

// archive writes a zip; its files carry the date of the ride.
func archive(w io.Writer, date time.Time, parts []part) error {
	z := zip.NewWriter(w)
	for _, p := range parts {
		f, err := z.CreateHeader(&zip.FileHeader{Name: p.name, Method: zip.Deflate, Modified: date})
		if err != nil {
			return err
		}
		if err := p.write(f); err != nil {
			return err
		}
	}
	return z.Close()
}
