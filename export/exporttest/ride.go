// Package exporttest holds a small invented ride with its results, for the
// tests of every format that Stillair writes.
package exporttest

import (
	"math"
	"time"

	"stillair/fusion"
	"stillair/runs"
	"stillair/runs/marks"
	"stillair/runs/measure"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Start is the receiver's time of the ride's first fix.
func Start() time.Time { return time.Date(2026, 5, 1, 9, 0, 0, 0, time.UTC) }

// Log is a minute on an invented straight road with a tunnel from 20 to 30 s:
// fixes without a place.
func Log() *sensors.Log {
	log := &sensors.Log{Ride: sensors.UnknownRide()}
	for i := range 61 {
		f := sensors.NewFix(float64(i), 20+0.1*float64(i))
		if i <= 20 || i >= 30 {
			f.LatDeg, f.LonDeg, f.Alt = 51+0.0002*float64(i), 9.5+0.0001*float64(i), 120+0.5*float64(i)
		}
		f.UTC = Start().Add(time.Duration(i) * time.Second)
		log.Fixes = append(log.Fixes, f)
	}
	return log
}

// Result is what an analysis might have found in it: an accepted coast-down,
// a rejected one and a launch with a mark.
func Result() *runs.Result {
	nan := math.NaN()
	mark := marks.Mark{Name: "0-100 km/h", Time: measure.Value{X: 4.31, SE: 0.02}, Rollout: measure.Value{X: 4.05, SE: 0.02},
		Speed: measure.Unknown(), Distance: measure.Value{X: 61.2, SE: 0.3}}
	res := &runs.Result{
		Track: &fusion.Track{},
		Runs: []runs.Run{
			{ID: 1, Kind: runs.Launch, Start: 2.5, End: 9, FromMPS: 0, ToMPS: 29, BearingDeg: 17, Setup: "bare", Marks: []runs.Mark{mark}},
			{ID: 2, Kind: runs.CoastDown, Start: 31, End: 44, FromMPS: 29, ToMPS: 9, BearingDeg: 17, Setup: "bare", Pair: 1},
			{ID: 3, Kind: runs.CoastDown, Start: 46, End: 52, FromMPS: 29, ToMPS: 20, BearingDeg: nan, Setup: "bare", Reasons: []finding.Finding{finding.New("coast.braked", finding.Speed("at", 75/3.6))}},
		},
		RoadLoads: []runs.RoadLoad{{Setup: "bare", Pairs: 5, Runs: []int{2}, Mass: 290,
			CdA: measure.Value{X: 0.551, SE: 0.008}, Crr: measure.Value{X: 0.0181, SE: 0.0004}, Cov: -2.1e-6, DoF: 12,
			CdACI: [2]float64{0.534, 0.568}, CrrCI: [2]float64{0.0172, 0.019}, Density: 1.213,
			A: measure.Value{X: 51.5, SE: 1.1}, C: measure.Value{X: 0.334, SE: 0.005}}},
	}
	tr := res.Track
	for i := range 601 {
		t := float64(i) / 10
		tr.T, tr.V, tr.A = append(tr.T, t), append(tr.V, 20+0.1*t), append(tr.A, 0.1)
		tr.S = append(tr.S, 20*t+0.05*t*t)
		tr.VSD, tr.ASD, tr.Yaw = append(tr.VSD, 0.05), append(tr.ASD, 0.02), append(tr.Yaw, nan)
	}
	return res
}
