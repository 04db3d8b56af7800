package runs

import (
	"stillair/fusion"
	"stillair/runs/air"
	"stillair/runs/detect"
	"stillair/runs/marks"
	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Kind is what the rider did in a run.
type Kind = detect.Kind

// The kinds of run.
const (
	Launch    = detect.Launch    // from standstill, full throttle
	RollOn    = detect.RollOn    // through a pair of speeds, full throttle
	Pull      = detect.Pull      // full throttle in one gear
	CoastDown = detect.CoastDown // clutch in, rolling free
	Stop      = detect.Stop      // braking from speed to standstill
)

// Run is one thing the rider did. A run with reasons is rejected: it is kept,
// shown with its reasons and left out of every computed figure.
type Run struct {
	ID         int // from 1, in order of Start
	Kind       Kind
	Start, End float64 // s on the log's clock
	FromMPS    float64 // speed at Start, m/s
	ToMPS      float64 // speed at End, m/s
	BearingDeg float64 // degrees clockwise from north; NaN if unknown
	Setup      string
	Reasons    []finding.Finding // empty: accepted
	Cautions   []finding.Finding // remarks about accepted runs
	Marks      []Mark
	Pair       int       // coast-downs: number of the pair of opposite runs, from 1; 0: none
	Curve      *Curve    // coast-downs that a fit used; nil otherwise
	Air        air.State // coast-downs: at its place and time
	Revs       *Revs     // accepted pulls: what is known of the engine speed; nil otherwise
}

// Accepted reports whether the run counts.
func (r Run) Accepted() bool { return len(r.Reasons) == 0 }

// Curve is a coast-down's measured speed and the fitted one. The slices are
// parallel.
type Curve struct {
	T   []float64 // s on the log's clock
	V   []float64 // measured speed, m/s
	Fit []float64 // fitted speed, m/s; V − Fit is the residual
}

// Value is a number with its standard uncertainty, in the unit that the
// field's doc gives.
type Value = measure.Value

// Mark is one figure measured in a run.
type Mark = marks.Mark

// RoadLoad is the road load of a setup, from all its coast-down pairs together.
type RoadLoad struct {
	Setup string
	Pairs int
	Runs  []int      // IDs
	Mass  float64    // kg as ridden, entered or assumed
	CdA   Value      // drag area, m²
	Crr   Value      // rolling resistance at standstill, dimensionless
	Cov   float64    // covariance of CdA and Crr, m²
	DoF   float64    // degrees of freedom of the t intervals
	CdACI [2]float64 // 95 % interval, m²
	CrrCI [2]float64

	// CdA and Crr depend on assumptions about the growth of either force with
	// speed, cross-wind, posture, warm tyres and mass. Their standard
	// uncertainty has two parts: from noise, which more pairs reduce, and from
	// the assumptions, which they do not.
	CdANoise, CdAAssumed float64 // m²
	CrrNoise, CrrAssumed float64
	CovNoise             float64 // covariance of the parts from noise, m²

	Density float64           // air density, kg/m³
	A       Value             // constant force at the standard's reference conditions, N
	CrrAt20 Value             // rolling resistance corrected to air of 20 °C, to compare days
	AAt20   Value             // A likewise, N
	C       Value             // force per speed squared at the same, N/(m/s)²
	Budget  []roadload.Part   // components of the standard uncertainty of CdA, m²
	Limits  []Limit           // causes of the uncertainty of CdA, largest first
	Notes   []finding.Finding // notes about the figure

	// Stepwise is the road load from Δv/Δt in intervals of 10 km/h, as in the
	// regulations: biased by wind and with too narrow intervals, for comparison
	// with figures made that way; nil if impossible.
	Stepwise *roadload.Load

	fit     *roadload.Estimate // the fit that made it; nil: none
	setup   int                // its index there
	vehicle roadload.Vehicle
}

// Force is the road load on the level in still air at v m/s, N. It is known
// better than its split into CdA and Crr, whose errors are anti-correlated. NaN
// if the road load does not come from a fit.
func (l RoadLoad) Force(v float64) Value {
	if l.fit == nil {
		return measure.Unknown()
	}
	return l.fit.Force(l.setup, v, l.vehicle)
}

// Power is the power needed to hold v m/s on the level in still air, W at the
// tyre.
func (l RoadLoad) Power(v float64) Value { return l.Force(v).Times(v) }

// Prior returns the options of the road-load fit; false if there was no fit.
func (r *Result) Prior() (roadload.Options, bool) {
	if r.coasts == nil {
		return roadload.Options{}, false
	}
	return r.coasts.opts, true
}

// Weighed reports whether the mass of a setup was entered.
func (r *Result) Weighed(setup string) bool { return r.weighed[setup] }

// Result is everything computed from one ride.
type Result struct {
	Track     *fusion.Track
	Ride      sensors.Ride // as entered, with defaults for missing values
	Defaults  []string     // names of ride.json's fields whose default was used
	Runs      []Run
	Passes    []Pass             // flying passes, in addition to the runs and in order of time
	RoadLoads []RoadLoad         // one for each setup with pairs, in order of time
	Estimate  *roadload.Estimate // the fit behind RoadLoads; nil if there are none
	Warnings  []finding.Finding  // about the ride as a whole
	Notes     []sensors.Note     // notes of the log's reader about omissions and corrections
	Powers    []PowerCurve       // power at the road, by setup and gear
	Compared  []Comparison       // every two comparable setups
	Gravity   float64            // at the place of the ride, m/s²
	Air       air.State          // of the ride, entered, measured or assumed

	weighed map[string]bool // setups whose mass was entered
	coasts  *coastData      // input of Estimate, for joint fits of several rides
	pushes  []drive         // the distinct pushes of its runs, to distinguish gears
}
