// Package gpx reads tracks with times in GPX, versions 1.0 and 1.1 (Topografix):
// the open format of hand-held receivers, phones and route planners.
//
// A track point has a position and, to be useful here, a time. GPX 1.0 has a
// speed in m/s, and 1.1 has none, so programs write it under extensions, as an
// element "speed" in their own namespace. If most points have one it is used,
// and compared with the positions; otherwise speeds are calculated from the
// positions, with a standard deviation from the positions' own scatter
// (repair.SpeedFromWay).
//
// The log has only fixes, on a clock that begins at the first of them; a fix is
// assumed to arrive when it was measured.
package gpx

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"time"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/repair"
)

// Limits for the memory of a malformed file.
const (
	mostPoints = 500_000
	mostBytes  = 256 << 20
	mostDepth  = 50
)

// reading is the state of the parser.
type reading struct {
	name    string
	path    []string // of open elements, by their local names
	text    strings.Builder
	point   sensors.Fix
	inside  bool // a track point
	fixes   []sensors.Fix
	spoken  int // points with a speed
	untimed int
}

// Read reads the tracks of a file; name is for people.
func Read(in io.Reader, name string) (*sensors.Log, error) {
	r := &reading{name: name}
	d := xml.NewDecoder(io.LimitReader(in, mostBytes))
	var damaged error
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		line, _ := d.InputPos()
		if err != nil {
			if len(r.fixes) == 0 {
				return nil, sensors.Unreadable(name, line, err)
			}
			damaged = err
			break
		}
		if err := r.take(token, line); err != nil {
			return nil, err
		}
	}
	return r.log(damaged)
}

func (r *reading) take(token xml.Token, line int) error {
	switch x := token.(type) {
	case xml.StartElement:
		r.path = append(r.path, x.Name.Local)
		r.text.Reset()
		if len(r.path) > mostDepth || len(r.fixes) > mostPoints {
			return &sensors.InputError{File: r.name, Line: line, What: finding.New("input.too_many", finding.Count("most", mostPoints)), Remedy: finding.New("input.shorter")}
		}
		if x.Name.Local == "trkpt" {
			r.begin(x)
		}
	case xml.CharData:
		if r.inside && r.text.Len() < 100 {
			r.text.Write(x[:min(len(x), 100)])
		}
	case xml.EndElement:
		r.end(x.Name.Local)
		r.path = r.path[:max(len(r.path)-1, 0)]
		r.text.Reset()
	}
	return nil
}

func (r *reading) begin(x xml.StartElement) {
	r.point, r.inside = sensors.NewFix(math.NaN(), math.NaN()), true
	for _, a := range x.Attr {
		switch a.Name.Local {
		case "lat":
			r.point.LatDeg = number(a.Value, 90)
		case "lon":
			r.point.LonDeg = number(a.Value, 180)
		}
	}
}

func (r *reading) end(element string) {
	if !r.inside {
		return
	}
	text := r.text.String()
	switch strings.ToLower(element) {
	case "time":
		if t, err := time.Parse(time.RFC3339, strings.TrimSpace(text)); err == nil {
			r.point.UTC = t.UTC()
			r.point.T = float64(t.Unix()) + 1e-9*float64(t.Nanosecond())
		}
	case "speed", "speed_mps":
		if v := number(text, 1000); v >= 0 && math.IsNaN(r.point.Speed) {
			r.point.Speed = v
			r.spoken++
		}
	case "ele":
		r.point.Alt = number(text, 20_000)
	case "course":
		if b := number(text, 360); b >= 0 {
			r.point.BearingDeg = math.Mod(b, 360)
		}
	case "trkpt":
		r.inside = false
		if math.IsNaN(r.point.T) || !r.point.HasPosition() {
			r.untimed++
			return
		}
		r.fixes = append(r.fixes, r.point)
	}
}

// number reads a number up to a limit, else NaN.
func number(text string, most float64) float64 {
	v, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil || !(math.Abs(v) <= most) {
		return math.NaN()
	}
	return v
}

// log makes a log of the points.
func (r *reading) log(damaged error) (*sensors.Log, error) {
	log := &sensors.Log{Ride: sensors.UnknownRide()}
	say := func(count int, what finding.Finding) {
		log.Notes = append(log.Notes, sensors.Note{File: r.name, Count: count, What: what})
	}
	if damaged != nil {
		say(1, sensors.Damaged(damaged))
	}
	if r.untimed > 0 {
		say(r.untimed, finding.New("track.no_time"))
	}
	if err := repair.Track(log, r.name, r.fixes, r.spoken); err != nil {
		return nil, err
	}
	return log, nil
}
