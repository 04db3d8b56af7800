package runs

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"stillair/fusion"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/power"
	"stillair/runs/roadload"
	"stillair/sensors/sim"
)

// powerBound is the Cramér-Rao bound of the power at a speed, W: the band of a
// curve through the true motion, with the smallest possible covariance of a
// smoother, the smallest uncertainty of road load, and the true sizes of all
// errors. The motion is that of the detected pulls: the uncertainty of the
// times at which the throttle moves is not included.
func powerBound(t *testing.T, sc sim.Scenario, ride *sim.Ride, result *Result, speed float64) float64 {
	track := knownTrack(sc, ride)
	load := loadBound(t, sc, ride)
	bike := power.Bike{MassSD: sc.Entered.MassSD, RotatingMass: sc.Bike.RotatingMass, Load: effect.Load{
		CdA: measure.Value{X: sc.Bike.CdA, SE: math.Sqrt(load.At(0, 0))}, Crr: measure.Value{X: sc.Bike.Crr, SE: math.Sqrt(load.At(1, 1))},
		Cov: load.At(0, 1), K: sc.Bike.CrrSlope, Mass: sc.Bike.Mass, Density: sc.Air.Density, Gravity: sc.Road.Gravity}}
	day := power.Day{WindSD: sc.Wind.SD, GustSD: sc.Wind.GustRatio * sc.Wind.SD, GustTime: sc.Wind.GustTau, GradeSD: math.Abs(sc.Road.Grade)}
	var pulls []power.Stretch
	for _, r := range result.Runs {
		if r.Kind != Pull || !r.Accepted() {
			continue
		}
		n := len(pulls)
		pulls = append(pulls, power.Stretch{From: r.Start + opening, To: r.End - closing, Dir: float64(1 - 2*(n%2)), Pair: n/2 + 1})
	}
	c, err := power.Bound(track, pulls, bike, day)
	if err != nil {
		t.Fatal(err)
	}
	return c.At(speed).SE
}

// knownTrack is the true motion with the smallest covariance. The engine's
// orders are left out: if known, they could be separated from the motion.
func knownTrack(sc sim.Scenario, ride *sim.Ride) *fusion.Track {
	k := fusion.Known{WhiteSD: sc.Receiver.WhiteSD, DriftSD: sc.Receiver.CorrSD, DriftTime: sc.Receiver.CorrTau,
		BiasWalk: 2 * sc.Phone.Accel.DriftSD * sc.Phone.Accel.DriftSD / sc.Phone.Accel.DriftTau}
	shake, noise := sc.Phone.Shake, sc.Phone.Accel.NoiseSD
	m := ride.Truth.Moments
	for i := 0; i+1 < len(m); i++ {
		road := shake.RMS * math.Sqrt((1-shake.EngineShare)/3) * m[i].V / shake.RefSpeed
		k.T, k.V = append(k.T, m[i].T), append(k.V, m[i].V)
		k.Vibration = append(k.Vibration, (road*road+noise*noise)/sc.Phone.Rate)
	}
	for _, f := range ride.Log.Fixes {
		if at := f.T - ride.Truth.Lag; at > k.T[0] && at < k.T[len(k.T)-1] {
			k.Fixes = append(k.Fixes, at)
		}
	}
	return fusion.Bound(k)
}

// loadBound is the smallest possible covariance of the road load from the
// ride's coast-downs.
func loadBound(t *testing.T, sc sim.Scenario, ride *sim.Ride) *mat.SymDense {
	opts := roadload.DefaultOptions(sc.Wind.SD)
	opts.Slope.SE, opts.Gravity = 0, sc.Road.Gravity
	n := &opts.Noise
	n.GustSD, n.GustTime, n.RoadSD = sc.Wind.GustRatio*sc.Wind.SD, sc.Wind.GustTau, 0
	n.WhiteSD, n.DriftSD, n.DriftTime = sc.Receiver.WhiteSD, sc.Receiver.CorrSD, sc.Receiver.CorrTau
	var input []roadload.Run
	for i, d := range ride.Truth.Of(sim.KindCoastDown) {
		run := roadload.Run{ID: i + 1, Pair: d.Pair, Dir: -1, Mass: sc.Bike.Mass,
			Inertia: sc.Bike.Mass + sc.Bike.RotatingMass, Density: sc.Air.Density}
		if d.Out {
			run.Dir = 1
		}
		for _, f := range ride.Log.Fixes {
			if at := f.T - ride.Truth.Lag; at >= d.Start && at <= d.End {
				run.T, run.V = append(run.T, at), append(run.V, ride.Truth.V(at))
			}
		}
		input = append(input, run)
	}
	cov, err := roadload.Bound(input, []roadload.Design{{CdA: sc.Bike.CdA, Crr: sc.Bike.Crr}}, opts)
	if err != nil {
		t.Fatal(err)
	}
	return cov
}
