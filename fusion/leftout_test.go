package fusion_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion"
	"stillair/fusion/opendrive"
	"stillair/sensors"
	"stillair/sensors/sim"
)

// leftOut is a recording with every fifth fix left out, in three variants.
type leftOut struct {
	name string
	log  func() (*sensors.Log, *sim.Truth, error)
}

func leftOuts() []leftOut {
	var out []leftOut
	for _, every := range []int{1, 5, 10, 20} {
		out = append(out, leftOut{fmt.Sprintf("open-drive, a fix every %.1f s", float64(every)/10), func() (*sensors.Log, *sim.Truth, error) {
			d, err := opendrive.Read("../testdata", every)
			if err != nil {
				return nil, nil, err
			}
			return &d.Log, nil, nil
		}})
	}
	if testing.Short() {
		return out
	}
	for _, c := range []struct {
		name   string
		change func(*sim.Scenario)
		spoil  func(*sensors.Log)
	}{
		{"town and launches", func(*sim.Scenario) {}, nil},
		{"without gyroscope", func(sc *sim.Scenario) { sc.Phone.Gyro.Absent = true }, nil},
		{"harsh", func(sc *sim.Scenario) { sc.Phone.Shake.RMS = 18 }, nil},
		{"10 Hz fixes", func(sc *sim.Scenario) { sc.Receiver.Rate = 10 }, nil},
		{"hills", func(sc *sim.Scenario) { sc.Road.RoughSD, sc.Road.RoughLength = 0.04, 60 }, nil},
		{"in the hand for a while", func(*sim.Scenario) {}, inTheHand},
	} {
		out = append(out, leftOut{c.name, func() (*sensors.Log, *sim.Truth, error) {
			sc := sim.DefaultScenario(sim.Naked())
			c.change(&sc)
			sc.Plan = append([]sim.Act{sim.Town{Minutes: 4}}, sim.Launches(2, 90/3.6, 0)...)
			ride, err := sim.Run(sc, 17)
			if err == nil && c.spoil != nil {
				c.spoil(ride.Log)
			}
			if err != nil {
				return nil, nil, err
			}
			return ride.Log, ride.Truth, nil
		}})
	}
	return out
}

// inTheHand moves the phone for a minute, as in the hand of somebody who shows
// pictures on it.
func inTheHand(log *sensors.Log) {
	rng := rand.New(rand.NewPCG(1, 2))
	var by r3.Vec
	for i := range log.Motion {
		m := &log.Motion[i]
		if m.T < log.Motion[0].T+90 || m.T > log.Motion[0].T+150 {
			continue
		}
		by = r3.Add(r3.Scale(0.98, by), r3.Vec{X: 0.6 * rng.NormFloat64(), Y: 0.6 * rng.NormFloat64(), Z: 0.6 * rng.NormFloat64()})
		m.Force = r3.Add(m.Force, by)
	}
}

// TestLeftOut actually leaves fixes out and compares the error of the speed there,
// with the accelerometer and without it. In an invented ride the truth is the
// reference: a receiver's errors last for seconds, and at ten fixes a second a
// track that follows them is closer to the next fix and farther from the truth.
func TestLeftOut(t *testing.T) {
	const folds, rounds = 5, 3
	for _, c := range leftOuts() {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			var with, alone, n float64
			parts := 0
			for fold := range rounds {
				log, truth, err := c.log()
				if err != nil {
					t.Fatal(err)
				}
				var kept, left []sensors.Fix
				for i, f := range log.Fixes {
					if i%folds == fold && i > 0 && i+1 < len(log.Fixes) {
						left = append(left, f)
					} else {
						kept = append(kept, f)
					}
				}
				log.Fixes = kept
				tr, err := fusion.Smooth(log, fusion.Options{})
				if err != nil {
					t.Fatal(err)
				}
				without := *log
				without.Motion = nil
				bare, err := fusion.Smooth(&without, fusion.Options{})
				if err != nil {
					t.Fatal(err)
				}
				parts += len(tr.GNSSOnly)
				for _, f := range left {
					want := f.Speed
					if truth != nil {
						want = truth.V(f.T - truth.Lag)
					}
					a, b := tr.At(f.T-tr.Lag.At(f.T)).V-want, bare.At(f.T-bare.Lag.Seconds).V-want
					with, alone, n = with+a*a, alone+b*b, n+1
				}
			}
			ratio := math.Sqrt(with / alone)
			t.Logf("%.3f m/s with the accelerometer, %.3f without: %.2f; %d parts without it", math.Sqrt(with/n), math.Sqrt(alone/n), ratio, parts)
			if ratio > 1.05 {
				t.Errorf("%.2f times the error of the satellites alone", ratio)
			}
		})
	}
}
