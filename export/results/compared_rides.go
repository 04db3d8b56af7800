package results

import (
	"io"

	"stillair/export/words"
	"stillair/runs"
)

// Compared is the comparisons of one ride or several, in the form that
// Document gives them.
type Compared struct {
	Version int            `json:"version"`
	Rides   []ComparedRide `json:"rides"`
	Across  []Comparison   `json:"across"` // between setups of different rides: less certain
}

// ComparedRide holds the figures of one ride's setups.
type ComparedRide struct {
	Name        string       `json:"name"`
	RoadLoad    []RoadLoad   `json:"road_load"`
	Comparisons []Comparison `json:"comparisons"`
	Power       []Power      `json:"power"`
	Defaults    []string     `json:"defaults"`
	Warnings    []string     `json:"warnings,omitempty"`
}

// WriteCompared writes comparisons, indented so that a person can read them too.
func WriteCompared(w io.Writer, rides []runs.Named, across []runs.Comparison) error {
	d := Compared{Version: Version, Rides: []ComparedRide{}, Across: []Comparison{}}
	for _, ride := range rides {
		doc := From(ride.Result)
		d.Rides = append(d.Rides, ComparedRide{Name: ride.Name, RoadLoad: doc.RoadLoad, Comparisons: doc.Comparisons,
			Power: doc.Power, Defaults: doc.Defaults, Warnings: doc.Warnings})
	}
	say := words.ForMachines()
	for _, c := range across {
		d.Across = append(d.Across, fromComparison(say, c))
	}
	return encode(w, d)
}
