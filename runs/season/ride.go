package season

import (
	"math"
	"slices"
	"strings"
	"time"

	"stillair/runs/measure"
)

// Ride is what one ride of a bike measured.
type Ride struct {
	Name    string
	Started time.Time // zero: not known
	Bike    string
	Density float64 // of the air, kg/m³; 0: not known
	Loads   []Load
	Apart   []Difference
	Times   []Time
	Passes  []Pass
}

// Load is the road load of one setup.
type Load struct {
	Setup    string
	CdA, Crr measure.Value // m² and 1
	// Of the standard uncertainty of CdA, m²: what is noise, and what is the same
	// for all setups of a day and differs between days (mass, air, cross-wind).
	// The rest is common to all rides of the bike.
	Noise, Day float64
	CrrNoise   float64
}

// Common is the uncertainty of the drag area from assumptions common to all
// rides.
func (l Load) Common() float64 {
	return math.Sqrt(math.Max(0, l.CdA.SE*l.CdA.SE-l.Noise*l.Noise-l.Day*l.Day))
}

// Difference is the difference of the drag areas of two setups of a ride, b −
// a, m²; known better than either.
type Difference struct {
	A, B string
	CdA  measure.Value
}

// Time is one time of a run.
type Time struct {
	Mark    string
	Kind    string // of the run
	Setup   string
	Gear    string // "": not known
	Rollout bool   // from 0.3048 m after first movement
	Run     int
	Start   float64       // s on the ride's clock
	Bearing float64       // degrees; NaN: not known
	Time    measure.Value // s
}

// Pass is the speed over one distance of a flying pass that counts.
type Pass struct {
	Setup                   string
	Over                    string        // "1 km"
	Distance                float64       // m
	Apart                   float64       // s, between the two directions
	There, Back, Mean, Half measure.Value // m/s, as in package pass
}

// Parts are what a setup's name lists between plus signs.
func Parts(setup string) []string {
	var out []string
	for _, p := range strings.Split(setup, "+") {
		if p = strings.TrimSpace(p); p != "" && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// apart is the difference b − a or, if the ride does not have it, that of two
// road loads with only the day in common.
func (r *Ride) apart(a, b Load) measure.Value {
	for _, d := range r.Apart {
		switch {
		case d.A == a.Setup && d.B == b.Setup:
			return d.CdA
		case d.A == b.Setup && d.B == a.Setup:
			return measure.Value{X: -d.CdA.X, SE: d.CdA.SE}
		}
	}
	return measure.Value{X: b.CdA.X - a.CdA.X, SE: math.Hypot(a.Noise, b.Noise)}
}
