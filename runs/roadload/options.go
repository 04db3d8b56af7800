package roadload

import (
	"stillair/runs/measure"
	"stillair/runs/usual"
)

// Noise holds the parameters of the errors of a coast-down. In Options they are
// the starting values, in an Estimate the learned ones.
type Noise struct {
	GustSD     float64 // standard deviation of the gusts along the road, m/s
	GustTime   float64 // their correlation time, s
	WhiteSD    float64 // receiver: error of its own in every fix, m/s
	DriftSD    float64 // receiver: slowly wandering error, m/s
	DriftTime  float64 // its correlation time, s
	ShiftSD    float64 // how far the mean wind changes between the two runs of a pair, m/s; 0: not in every pair
	RoadSD     float64 // standard deviation of the slope along the road about its mean, 1 (0.002 is 0.2 %)
	RoadLength float64 // distance over which the slope changes, m
	HeightSD   float64 // barometer: error of its own in every height, m
	HeightWalk float64 // its wandering, m after one second, growing with the root of time
	AltSD      float64 // receiver: error of its own in every altitude, m
	AltWalk    float64 // its wandering, as HeightWalk; both 0: found from the altitudes
}

// Options holds the prior knowledge. Start from DefaultOptions.
type Options struct {
	Slope     measure.Value // k, growth of rolling resistance with speed, s/m
	Rolling   measure.Value // Crr of warm tyres as known without the runs; SE 0: nothing is, and Fit takes that of tyres in general where the runs say less
	MassSD    float64       // relative standard uncertainty of Mass, common to all runs
	DensitySD float64       // relative standard uncertainty of Density, common to all runs
	LoadSD    []float64     // of each setup: relative standard uncertainty of how far its mass differs from what was entered; nil: not
	WindSD    float64       // standard deviation of a pair's mean wind along the road, m/s
	CrossRMS  float64       // root mean square of what is known of the wind across the road, m/s
	GradeSD   float64       // standard deviation of a pair's mean slope, 1
	WarmUpSD  float64       // how much Crr may drift over an hour, relative; 0: not at all
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
		Gravity: 9.80665,
	}
}
