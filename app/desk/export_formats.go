package main

import (
	"fmt"
	"io"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"stillair/app/input"
	"stillair/export/columns"
	"stillair/export/geojson"
	"stillair/export/gpx"
	"stillair/export/report"
	"stillair/export/results"
	"stillair/export/session"
	"stillair/export/share"
	"stillair/export/table"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/plain"
)

// format is one way to write a recording.
type format struct {
	name, about string
	results     bool // needs results
	places      bool // is nothing without them
	ride        bool // needs what is left of the ride itself
	files       func(x *exported) []file
}

// file is one file of a format.
type file struct {
	path  string // below the folder of all exports
	write func(io.Writer) error
}

// exported is a recording as it is exported.
type exported struct {
	name   string // of its files
	log    *sensors.Log
	result *runs.Result // nil if no format needs it
	rec    *session.Recording
	id     session.ID // of the session file that is written
	window share.Window
	order  *order
}

func formats() []format {
	return []format{
		{"gpx", "GPX 1.1 with the track, and the runs as waypoints", true, true, true, gpxFiles},
		{"geojson", "GeoJSON (RFC 7946) with the track and the runs as lines", true, true, true, geojsonFiles},
		{"csv", "tables (RFC 4180): track, and what was computed", true, false, true, csvFiles},
		{"parquet", "Apache Parquet: samples, and what was computed", true, false, true, parquetFiles},
		{"session", "a session file, as the phone app records", false, false, true, sessionFiles},
		{"plain", "a plain log: a zip of CSV files", false, false, true, plainFiles},
		{"results", "the results as JSON", true, false, false, resultsFiles},
		{"report", "a page with plots to read or print (HTML)", true, false, false, reportFiles},
	}
}

func formatNamed(name string) (format, bool) {
	all := formats()
	i := slices.IndexFunc(all, func(f format) bool { return f.name == name })
	if i < 0 {
		return format{}, false
	}
	return all[i], true
}

func formatLines() string {
	var b strings.Builder
	for _, f := range formats() {
		fmt.Fprintf(&b, "  %-9s %s\n", f.name, f.about)
	}
	return b.String()
}

func gpxFiles(x *exported) []file {
	return []file{{x.name + ".gpx", func(w io.Writer) error { return gpx.Write(w, x.log, x.result, x.title()) }}}
}

func geojsonFiles(x *exported) []file {
	return []file{{x.name + ".geojson", func(w io.Writer) error { return geojson.Write(w, x.log, x.result, x.title()) }}}
}

func csvFiles(x *exported) []file {
	var out []file
	for _, t := range table.Tables(x.result) {
		out = append(out, file{filepath.Join(x.name, t.Name), t.Write})
	}
	return out
}

// parquetFiles lie in a folder for each table, so that one pattern names the
// tables of all rides.
func parquetFiles(x *exported) []file {
	var out []file
	ride := columns.Ride{Name: x.name, Started: x.began()}
	for _, t := range columns.Tables() {
		out = append(out, file{filepath.Join(t.Name, x.name+".parquet"), func(w io.Writer) error { return t.Write(w, ride, x.result) }})
	}
	return out
}

func sessionFiles(x *exported) []file {
	return []file{{x.name + ".jsonl.gz", func(w io.Writer) error { return session.WriteRecording(unsynced{w}, x.recording()) }}}
}

func plainFiles(x *exported) []file {
	return []file{{x.name + ".zip", func(w io.Writer) error { return plain.WriteZip(w, x.log) }}}
}

func resultsFiles(x *exported) []file {
	return []file{{x.name + ".json", func(w io.Writer) error {
		d := results.From(x.result)
		d.Began(x.began())
		return results.Write(w, d)
	}}}
}

func reportFiles(x *exported) []file {
	return []file{{x.name + ".html", func(w io.Writer) error {
		s := &study{ride: &input.Ride{Log: x.log, Session: x.recording()}, result: x.result}
		return report.Write(w, x.result, s.reportOptions(x.order.style))
	}}}
}

// title is what the rider calls the ride, the name of its files where no name
// was given.
func (x *exported) title() string {
	if x.rec != nil && x.rec.Name != "" {
		return x.rec.Name
	}
	return x.name
}

// began is when the ride began, as far as that may be disclosed.
func (x *exported) began() time.Time { return x.recording().Header.Started }

// recording is the session file's content as far as it is exported.
func (x *exported) recording() *session.Recording {
	out := &session.Recording{Header: session.Header{ID: x.id, Start: x.log.Begin(), Program: program}, Log: x.log}
	if x.rec == nil {
		return out
	}
	h := x.rec.Header
	out.Name = x.rec.Name
	out.Header.Device, out.Header.Origin = h.Device, h.Origin
	if math.IsNaN(h.Start) {
		h.Start = x.rec.Log.Begin()
	}
	out.Header.Start, out.Header.Started = x.window.Began(h.Start, h.Started, x.order.choice.Date)
	for _, r := range x.rec.Remarks {
		if x.window.Has(r.T) {
			r.T = x.window.Time(r.T)
			out.Remarks = append(out.Remarks, r)
		}
	}
	return out
}

// give removes from a recording what must not be exported.
func (o *order) give(name string, ride *input.Ride, result *runs.Result) *exported {
	x := &exported{name: name, log: share.Apply(ride.Log, o.choice), rec: ride.Session, window: share.WindowOf(ride.Log, o.choice), order: o}
	if result != nil {
		x.result = share.Result(result, ride.Log, o.choice)
	}
	return x
}
