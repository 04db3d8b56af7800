package runs

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/fusion"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/power"
	"stillair/sensors/finding"
)

// pushed is the motion of a bike with constant power at the road minus its road
// load, from one speed to another, in a steady wind: the textbook energy
// balance, integrated here by Heun's method, independent of the simulator.
func pushed(watts, from, to, wind float64, l effect.Load, rotating float64) (t, v []float64) {
	const h = 0.02
	slowing := func(v float64) float64 {
		u := v + wind
		return 0.5*l.Density*l.CdA.X*u*math.Abs(u) + l.Mass*l.Gravity*l.Crr.X
	}
	a := func(v float64) float64 { return (watts/v - slowing(v)) / (l.Mass + rotating) }
	for at, x := 0.0, from; x < to && at < 60; at += h {
		t, v = append(t, at), append(v, x)
		guess := x + h*a(x)
		x += h * (a(x) + a(guess)) / 2
	}
	return t, v
}

func ordinary() power.Bike {
	return power.Bike{RotatingMass: 11, Load: effect.Load{CdA: measure.Value{X: 0.55}, Crr: measure.Value{X: 0.018},
		Mass: 290, Density: 1.2, Gravity: 9.81}}
}

// TestEnvelope pulls bikes of 9 to 120 kW through a range of speeds at full
// throttle in a wind that differs from pull to pull, and at 50 to 85 %: those
// below are separated from those on the envelope, none of which is lost in at
// least 97 of 100 rides.
func TestEnvelope(t *testing.T) {
	rng := rand.New(rand.NewPCG(16, 2))
	day := power.Day{WindSD: 1.2, GustSD: 0.5}
	rides, lost, missed, parts := 0, 0, 0, 0
	for range 200 {
		watts := []float64{9e3, 35e3, 70e3, 120e3}[rng.IntN(4)]
		bike := ordinary()
		top := 14.0 + 9*math.Log10(watts/4e3)
		var group []power.Pull
		full := map[int]bool{}
		for id := 1; id <= 6; id++ {
			share := 1.0
			if full[id] = id <= 3; !full[id] {
				share = 0.5 + 0.35*rng.Float64()
			}
			p := power.Pull{ID: id, Dir: 1}
			p.T, p.V = pushed(watts*share, 10, top, day.WindSD*rng.NormFloat64(), bike.Load, bike.RotatingMass)
			if len(p.T) > 10 && p.V[len(p.V)-1] > 14.5 {
				group = append(group, p)
			}
		}
		on, _ := atFullThrottle(group, bike, day)
		rides++
		kept := 0
		for _, p := range on {
			if full[p.ID] {
				kept++
			} else {
				missed++
			}
		}
		for _, p := range group {
			if !full[p.ID] {
				parts++
			}
		}
		if kept < 3 {
			lost++
		}
	}
	if lost > rides*3/100 {
		t.Errorf("%d of %d rides lost a pull at full throttle", lost, rides)
	}
	if missed > parts*15/100 {
		t.Errorf("%d of %d pulls at part throttle stayed in", missed, parts)
	}
}

// TestWeakRollOnIsCautioned has two roll-ons through the same speeds, one with
// half the power of the other.
func TestWeakRollOnIsCautioned(t *testing.T) {
	bike := ordinary()
	track := &fusion.Track{}
	result := &Result{Track: track}
	for i, watts := range []float64{40e3, 20e3} {
		ts, vs := pushed(watts, 16, 28, 0, bike.Load, bike.RotatingMass)
		start := 100 * float64(i)
		for k := range ts {
			track.T, track.V = append(track.T, start+ts[k]), append(track.V, vs[k])
		}
		result.Runs = append(result.Runs, Run{ID: i + 1, Kind: RollOn, Start: start, End: start + ts[len(ts)-1], BearingDeg: 80 + 4*float64(i)})
	}
	n := len(track.T)
	track.A, track.S, track.VSD, track.ASD = make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	cautionWeakRollOns(result, bike, power.Day{WindSD: 1, GustSD: 0.5})
	if finding.Any(result.Runs[0].Cautions, codeWeakRollOn) || !finding.Any(result.Runs[1].Cautions, codeWeakRollOn) {
		t.Errorf("cautions %v and %v", result.Runs[0].Cautions, result.Runs[1].Cautions)
	}
}
