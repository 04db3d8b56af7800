// Package gpx writes a ride as GPX 1.1, the open format that maps and route
// planners read (Topografix, GPX 1.1 Schema Documentation, 2004).
//
// The ride is one track, cut into segments where fixes are missing for longer
// than a few seconds. Accepted runs stand beside it as waypoints, with what was
// measured as their description. GPX 1.1 has no element for speed; it is
// written under extensions in a namespace of our own, in m/s, where readers
// that do not know it ignore it.
package gpx

import (
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"time"

	"stillair/runs"
	"stillair/sensors"
)

// Namespace is that of the extension elements.
const Namespace = "urn:stillair:track:1"

// longestHole is the longest time between two fixes of one segment, s.
const longestHole = 5

type document struct {
	XMLName   xml.Name   `xml:"gpx"`
	Version   string     `xml:"version,attr"`
	Creator   string     `xml:"creator,attr"`
	Space     string     `xml:"xmlns,attr"`
	Own       string     `xml:"xmlns:s,attr"`
	Waypoints []waypoint `xml:"wpt"`
	Track     track      `xml:"trk"`
}

type waypoint struct {
	point
	Name string `xml:"name"`
	Desc string `xml:"desc,omitempty"`
	Type string `xml:"type,omitempty"`
}

type track struct {
	Name     string    `xml:"name,omitempty"`
	Segments []segment `xml:"trkseg"`
}

type segment struct {
	Points []trackPoint `xml:"trkpt"`
}

type point struct {
	Lat  string `xml:"lat,attr"`
	Lon  string `xml:"lon,attr"`
	Ele  string `xml:"ele,omitempty"`
	Time string `xml:"time,omitempty"`
}

type trackPoint struct {
	point
	Speed *speed `xml:"extensions"`
}

type speed struct {
	MPS string `xml:"s:speed_mps"`
}

// Write writes the ride. The result may be nil: then there are no waypoints.
// name is the rider's name for the ride and may be empty.
func Write(w io.Writer, log *sensors.Log, res *runs.Result, name string) error {
	d := document{Version: "1.1", Creator: "Stillair", Space: "http://www.topografix.com/GPX/1/1", Own: Namespace,
		Track: track{Name: name, Segments: segments(log.Fixes)}}
	if res != nil {
		d.Waypoints = waypoints(res.Runs, log.Fixes)
	}
	if _, err := io.WriteString(w, xml.Header); err != nil {
		return err
	}
	e := xml.NewEncoder(w)
	e.Indent("", " ")
	if err := e.Encode(d); err != nil {
		return err
	}
	_, err := io.WriteString(w, "\n")
	return err
}

func segments(fixes []sensors.Fix) []segment {
	var out []segment
	last := math.Inf(-1)
	for _, f := range fixes {
		if !f.HasPosition() {
			continue
		}
		if f.T-last > longestHole {
			out = append(out, segment{})
		}
		last = f.T
		s := &out[len(out)-1]
		s.Points = append(s.Points, trackPoint{pointOf(f), &speed{decimal(f.Speed, 3)}})
	}
	return out
}

func pointOf(f sensors.Fix) point {
	p := point{Lat: decimal(f.LatDeg, 8), Lon: decimal(f.LonDeg, 8)}
	if !math.IsNaN(f.Alt) {
		p.Ele = decimal(f.Alt, 2)
	}
	if !f.UTC.IsZero() {
		p.Time = f.UTC.UTC().Format(time.RFC3339Nano)
	}
	return p
}

func decimal(x float64, digits int) string { return fmt.Sprintf("%.*f", digits, x) }

func waypoints(found []runs.Run, fixes []sensors.Fix) []waypoint {
	var out []waypoint
	for _, r := range found {
		if !r.Accepted() {
			continue
		}
		if f, ok := fixAt(fixes, r.Start); ok {
			out = append(out, waypoint{point: pointOf(f), Name: fmt.Sprintf("%s %d", r.Kind, r.ID), Desc: describe(r), Type: string(r.Kind)})
		}
	}
	return out
}

// fixAt is the first fix with a place from t on, if there is one soon.
func fixAt(fixes []sensors.Fix, t float64) (sensors.Fix, bool) {
	for _, f := range fixes {
		if f.T >= t && f.HasPosition() {
			return f, f.T < t+longestHole
		}
	}
	return sensors.Fix{}, false
}

func describe(r runs.Run) string {
	s := fmt.Sprintf("%.0f to %.0f km/h in %.1f s", r.FromMPS*3.6, r.ToMPS*3.6, r.End-r.Start)
	for _, m := range r.Marks {
		if m.Time.Known() {
			s += fmt.Sprintf("; %s %.2f ± %.2f s", m.Name, m.Time.X, m.Time.SE)
		}
	}
	return s
}
