// Package geojson writes a ride as GeoJSON (RFC 7946): a FeatureCollection with
// the ride as a MultiLineString and each accepted run as a LineString of its
// own, whose properties hold what was measured.
//
// Coordinates are longitude and latitude, as the standard asks; altitude is left
// to formats that carry it with less doubt. Properties have their
// unit at the end of their names.
package geojson

import (
	"encoding/json"
	"io"
	"math"

	"stillair/runs"
	"stillair/sensors"
)

// longestHole is the longest time between two fixes of one line, s.
const longestHole = 5

type collection struct {
	Type     string    `json:"type"`
	Features []feature `json:"features"`
}

type feature struct {
	Type       string         `json:"type"`
	Geometry   geometry       `json:"geometry"`
	Properties map[string]any `json:"properties"`
}

type geometry struct {
	Type        string `json:"type"`
	Coordinates any    `json:"coordinates"`
}

// position is longitude and latitude in degrees, in this order.
type position [2]float64

func newFeature(lines [][]position, properties map[string]any) feature {
	g := geometry{Type: "MultiLineString", Coordinates: lines}
	if len(lines) == 1 {
		g = geometry{Type: "LineString", Coordinates: lines[0]}
	}
	return feature{Type: "Feature", Geometry: g, Properties: properties}
}

// Write writes the ride. The result may be nil, for the ride alone.
func Write(w io.Writer, log *sensors.Log, res *runs.Result, name string) error {
	properties := map[string]any{"kind": "ride"}
	if name != "" {
		properties["name"] = name
	}
	c := collection{Type: "FeatureCollection", Features: []feature{newFeature(lines(log.Fixes), properties)}}
	if res != nil {
		for _, r := range res.Runs {
			if ls := lines(within(log.Fixes, r)); r.Accepted() && len(ls) > 0 {
				c.Features = append(c.Features, newFeature(ls, about(r)))
			}
		}
	}
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	return e.Encode(c)
}

// lines leaves out lines of a single point: RFC 7946, 3.1.4 asks for two.
func lines(fixes []sensors.Fix) [][]position {
	out := [][]position{}
	var line []position
	flush := func() {
		if len(line) > 1 {
			out = append(out, line)
		}
		line = nil
	}
	last := math.Inf(-1)
	for _, f := range fixes {
		if !f.HasPosition() {
			continue
		}
		if f.T-last > longestHole {
			flush()
		}
		last = f.T
		line = append(line, position{round(f.LonDeg), round(f.LatDeg)})
	}
	flush()
	return out
}

// round keeps a centimetre: RFC 7946, section 11.2 warns of needless digits.
func round(deg float64) float64 { return math.Round(deg*1e7) / 1e7 }

func within(fixes []sensors.Fix, r runs.Run) []sensors.Fix {
	var out []sensors.Fix
	for _, f := range fixes {
		if f.T >= r.Start && f.T <= r.End {
			out = append(out, f)
		}
	}
	return out
}

func about(r runs.Run) map[string]any {
	p := map[string]any{
		"id": r.ID, "kind": string(r.Kind), "setup": r.Setup,
		"start_s": r.Start, "end_s": r.End, "from_mps": r.FromMPS, "to_mps": r.ToMPS,
	}
	var marks []map[string]any
	for _, m := range r.Marks {
		if m.Time.Known() {
			marks = append(marks, map[string]any{"mark": m.Name, "s": m.Time.X, "se_s": m.Time.SE})
		}
	}
	if marks != nil {
		p["marks"] = marks
	}
	return p
}
