package roadload

import (
	"stillair/runs/measure"
	"stillair/runs/usual"
	"stillair/sensors/units"
)

// Noise holds the parameters of the errors of a coast-down. In Options they are
// the starting values, in an Estimate the learned ones.
type Noise struct {
	GustSD     float64 // standard deviation of the gusts along the road, m/s
	GustTime   float64 // their correlation time, s
	WhiteSD    float64 // receiver: independent error of each fix, m/s
	DriftSD    float64 // receiver: correlated error, m/s
	DriftTime  float64 // its correlation time, s
	ShiftSD    float64 // change of the mean wind between the two runs of a pair, m/s; 0: not in every pair
	PostureSD  float64 // relative standard deviation of the drag area from run to run, as the rider sits; 0: none
	RoadSD     float64 // standard deviation of the slope along the road about its mean, 1 (0.002 is 0.2 %)
	RoadLength float64 // distance over which the slope changes, m
	HeightSD   float64 // barometer: independent error of each height, m
	HeightWalk float64 // its random walk, m after one second
	AltSD      float64 // receiver: independent error of each altitude, m
	AltWalk    float64 // its random walk, as HeightWalk; both 0: estimated from the altitudes
}

// Options holds the prior knowledge. Start from DefaultOptions.
type Options struct {
	Slope     measure.Value // k, growth of rolling resistance with speed, s/m
	Rolling   measure.Value // prior for Crr of warm tyres; SE 0: none, and Fit uses that of tyres in general if the runs are less certain
	MassSD    float64       // relative standard uncertainty of Mass, common to all runs
	DensitySD float64       // relative standard uncertainty of Density, common to all runs
	LoadSD    []float64     // of each setup: relative standard uncertainty of the difference between its true and entered mass; nil: none
	WindSD    float64       // standard deviation of a pair's mean wind along the road, m/s
	CrossRMS  float64       // root mean square of the expected cross-wind, m/s
	GradeSD   float64       // standard deviation of a pair's mean slope, 1
	WarmUpSD  float64       // prior standard deviation of the drift of Crr over an hour, relative; 0: none
	Noise     Noise
	Gravity   float64 // g, m/s²
}

// DefaultOptions returns the options when nothing was entered, for a pair's
// mean wind along the road of standard deviation windSD, m/s.
func DefaultOptions(windSD float64) Options {
	return Options{
		Slope:   measure.Value{X: usual.Growth, SE: usual.GrowthSD},
		WindSD:  windSD,
		GradeSD: usual.PairGrade, CrossRMS: CrossWindLimit,
		Noise: Noise{
			GustSD: 0.32 * windSD, GustTime: 8,
			WhiteSD: 0.06, DriftSD: 0.07, DriftTime: 4,
			RoadSD: 0.0004, RoadLength: 150,
			HeightSD: 0.1, HeightWalk: 0.05,
		},
		Gravity: units.StandardGravity,
	}
}
