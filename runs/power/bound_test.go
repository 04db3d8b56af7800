package power_test

import (
	"math"
	"testing"

	"stillair/fusion"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/power"
)

// steadyPulls are two pulls, there and back, at 2 m/s² from 15 to 35 m/s,
// recorded by almost perfect sensors.
func steadyPulls() (*fusion.Track, []power.Stretch) {
	k := fusion.Known{WhiteSD: 1e-3, DriftSD: 1e-4, DriftTime: 4}
	var pulls []power.Stretch
	speed := func(t float64) float64 { return 15 + 2*math.Min(math.Max(math.Mod(t, 40)-10, 0), 10) }
	for t := 0.0; t < 75; t += 0.01 {
		v := speed(t)
		if part := math.Mod(t, 40); part > 25 {
			v = 35 - 20*math.Min((part-25)/10, 1)
		}
		k.T, k.V, k.Vibration = append(k.T, t), append(k.V, v), append(k.Vibration, 1e-7)
	}
	for t := 0.5; t < 74; t += 0.1 {
		k.Fixes = append(k.Fixes, t)
	}
	for i := range 2 {
		at := 10 + 40*float64(i)
		pulls = append(pulls, power.Stretch{From: at, To: at + 10, Dir: float64(1 - 2*i), Pair: 1})
	}
	return fusion.Bound(k), pulls
}

// TestBoundOfWind compares with a calculation by hand: if only the mean wind w
// is unknown, the error of P from one pull is the additional drag times the
// speed, ρ·CdA·v²·w, and pulls in both directions cancel it.
func TestBoundOfWind(t *testing.T) {
	track, pulls := steadyPulls()
	bike := power.Bike{RotatingMass: 12, Load: effect.Load{CdA: measure.Value{X: 0.55}, Crr: measure.Value{X: 0.018}, K: 0.004, Mass: 290, Density: 1.2, Gravity: 9.81}}
	day := power.Day{WindSD: 0.5, GustTime: 5}
	one, err := power.Bound(track, pulls[:1], bike, day)
	if err != nil {
		t.Fatal(err)
	}
	two, err := power.Bound(track, pulls, bike, day)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range []float64{20, 25, 30} {
		want := 1.2 * 0.55 * v * v * 0.5
		if got := one.At(v).SE; math.Abs(got/want-1) > 0.05 {
			t.Errorf("one way at %v m/s: ± %.1f W, want %.1f", v, got, want)
		}
		if got := two.At(v).SE; got > 0.3*want {
			t.Errorf("both ways at %v m/s: ± %.1f W, one way %.1f", v, got, want)
		}
		truth := v * ((290+12)*2 + bike.Load.Force(v).X)
		if got := one.At(v).X; math.Abs(got/truth-1) > 0.01 {
			t.Errorf("at %v m/s: %.0f W, want %.0f", v, got, truth)
		}
	}
	var want float64
	for _, v := range one.Speed {
		want += 1.2 * 0.55 * v * v * 0.5 / float64(len(one.Speed))
	}
	if got := one.Mean().SE; math.Abs(got/want-1) > 0.05 {
		t.Errorf("mean ± %.1f W, want %.1f", got, want)
	}
}
