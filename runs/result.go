package runs

import (
	"stillair/fusion"
	"stillair/runs/measure"
)

// Kind is what the rider did in a run.
type Kind string

// The kinds of run.
const (
	Launch    Kind = "launch"     // from standstill, full throttle
	RollOn    Kind = "roll-on"    // through a pair of speeds, full throttle
	Pull      Kind = "pull"       // full throttle in one gear
	CoastDown Kind = "coast-down" // clutch in, rolling free
	Stop      Kind = "stop"       // braking from speed to standstill
)

// Run is one thing the rider did. A run with reasons is rejected: it is kept,
// shown with its reasons and left out of every computed figure.
type Run struct {
	ID         int // from 1, in order of Start
	Kind       Kind
	Start, End float64 // s on the log's clock
	FromMPS    float64 // speed at Start, m/s
	ToMPS      float64 // speed at End, m/s
	BearingDeg float64 // degrees clockwise from north; NaN where unknown
	Setup      string
	Reasons    []string // in plain words; empty: accepted
	Cautions   []string // accepted, but worth saying, in plain words
	Marks      []Mark
	Pair       int // coast-downs: number of the pair of opposite runs, from 1; 0: none
}

// Accepted reports whether the run counts.
func (r Run) Accepted() bool { return len(r.Reasons) == 0 }

// Value is a number with its standard uncertainty, in the unit that the
// field's doc gives.
type Value = measure.Value

// Mark is one time measured in a run. Fields that do not apply are NaN.
type Mark struct {
	Name    string // "0-100 km/h", "1/4 mile", "60-100 km/h"
	Time    Value  // s from first movement, or from the lower speed
	Rollout Value  // s from one foot (0.3048 m) after first movement
	Speed   Value  // m/s at the mark; for 1/8 and 1/4 mile the mean over the last 66 ft
}

// RoadLoad is what holds a setup back, from all its coast-down pairs together.
type RoadLoad struct {
	Setup   string
	Pairs   int
	Runs    []int      // IDs
	CdA     Value      // drag area, m²
	Crr     Value      // rolling resistance at standstill, dimensionless
	Cov     float64    // covariance of CdA and Crr, m²
	DoF     float64    // degrees of freedom of the t intervals
	CdACI   [2]float64 // 95 % interval, m²
	CrrCI   [2]float64
	Density float64  // air density, kg/m³
	A       Value    // constant force at the standard's reference conditions, N
	C       Value    // force per speed squared at the same, N/(m/s)²
	Notes   []string // what a reader of the figure should know, in plain words
}

// Result is everything computed from one ride.
type Result struct {
	Track     *fusion.Track
	Defaults  []string // names of ride.json's fields whose default was used
	Runs      []Run
	RoadLoads []RoadLoad
	Warnings  []string // about the ride as a whole, in plain words
}
