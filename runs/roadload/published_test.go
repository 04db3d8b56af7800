package roadload

import (
	"math"
	"testing"

	"stillair/runs/measure"
)

// TestRollingDownhill: a rider who rolls from rest down a hill of 0.05 rad has
// 12.66 m/s after 60 s (Human Power eJournal, editor's note to article 10, with
// these inputs). The note rounds intermediate results; the exact value is
// 12.64.
func TestRollingDownhill(t *testing.T) {
	run := Run{ID: 1, Dir: 1, Mass: 102, Inertia: 102, Density: 1.05}
	for i := range 61 {
		run.T, run.V = append(run.T, float64(i)), append(run.V, 0)
	}
	opts := DefaultOptions(1.5)
	opts.Slope, opts.Gravity = measure.Value{}, 9.81
	s := newSystem([]*coast{newCoast(run, 0)}, opts)
	s.state.beta[cdaAt(0)], s.state.beta[crrAt(0)] = 0.5, 0.005
	s.state.beta[s.lay.grade] = -math.Sin(0.05)
	s.runs[0].integrate(s.lay, &s.state)
	if v := s.runs[0].v[60]; math.Abs(v-12.66) > 0.025 {
		t.Errorf("%.3f m/s after 60 s, want 12.66", v)
	}
}

// TestHeavyVehicle: in the worked example of 40 CFR 1037.528 and 1066.310(b)(7) a
// vehicle of 16 108 kg on 18 tyres, each with an inertia of 56.7 kg, has an
// effective mass of 17 129 kg and slows from 31.28 to 26.77 m/s between 3.05 and
// 19.11 s. The force of that mass times the loss of speed over the time gives that
// time.
func TestHeavyVehicle(t *testing.T) {
	const mass, tyres, effective, took = 16108.0, 18 * 56.7, 17129.0, 19.11 - 3.05
	if math.Abs(mass+tyres-effective) > 0.5 {
		t.Errorf("effective mass %.1f kg, want %.0f", mass+tyres, effective)
	}
	force := effective * (31.28 - 26.77) / took
	load := Load{Crr: measure.Value{X: force / (mass * 9.80665)}}
	got := load.CoastTime(31.28, 26.77, Vehicle{Mass: mass, Inertia: mass + tyres, Density: 1.17, Gravity: 9.80665})
	if math.Abs(got-took) > 0.001 {
		t.Errorf("%.3f s, want %.2f", got, took)
	}
}

// TestThermometer fits the line of GUM example H.3 (JCGM 100:2008, its readings from
// memory): intercept −0.1712 ± 0.0029 °C and slope 0.00218 ± 0.00067 about 20 °C,
// correlated by −0.930.
func TestThermometer(t *testing.T) {
	reading := []float64{21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511}
	correction := []float64{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160}
	var l line
	for i, x := range reading {
		l.add(1, x-20, correction[i])
	}
	got, ok := l.solve()
	if !ok {
		t.Fatal("no line")
	}
	for _, c := range []struct {
		name            string
		got, want, half float64
	}{
		{"intercept", got.CdA.X, -0.1712, 0.00005}, {"its uncertainty", got.CdA.SE, 0.0029, 0.00005},
		{"slope", got.Crr.X, 0.00218, 0.000005}, {"its uncertainty", got.Crr.SE, 0.00067, 0.000005},
		{"correlation", got.Cov / (got.CdA.SE * got.Crr.SE), -0.930, 0.0005},
	} {
		if math.Abs(c.got-c.want) > c.half {
			t.Errorf("%s %.6f, want %v", c.name, c.got, c.want)
		}
	}
}
