package roadload_test

import (
	"math"
	"testing"

	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/sensors/units"
)

// cfrRow is a row of figure F98-9 of 40 CFR 86.529-98: F = A + C·V² with V in
// km/h, the time to slow from 70 to 60 km/h, and the longest and shortest
// permitted time.
type cfrRow struct{ inertia, a, c, force65, seconds, longest, shortest float64 }

var cfrRows = []cfrRow{
	{100, 0.0, .0224, 94.8, 2.95, 3.1, 2.8}, {110, 0.82, .0227, 96.8, 3.18, 3.3, 3.0}, {120, 1.70, .0230, 98.8, 3.39, 3.6, 3.2},
	{130, 2.57, .0233, 100.9, 3.60, 3.8, 3.4}, {140, 3.44, .0235, 102.9, 3.80, 4.0, 3.6}, {150, 4.32, .0238, 104.9, 3.99, 4.2, 3.8},
	{160, 5.19, .0241, 107.0, 4.10, 4.4, 4.0}, {170, 6.06, .0244, 109.0, 4.36, 4.6, 4.2}, {180, 6.94, .0246, 111.0, 4.53, 4.7, 4.3},
	{190, 7.81, .0249, 113.1, 4.69, 4.9, 4.5}, {200, 8.69, .0252, 115.1, 4.85, 5.1, 4.6}, {210, 9.56, .0255, 117.1, 5.00, 5.2, 4.8},
	{220, 10.43, .0257, 119.2, 5.15, 5.4, 4.9}, {230, 11.31, .0260, 121.2, 5.30, 5.5, 5.1}, {240, 12.18, .0263, 123.2, 5.43, 5.7, 5.2},
	{250, 13.06, .0266, 125.3, 5.57, 5.8, 5.4}, {260, 13.93, .0268, 127.3, 5.70, 5.9, 5.5}, {270, 14.80, .0271, 129.3, 5.82, 6.1, 5.6},
	{280, 15.68, .0274, 131.4, 5.95, 6.2, 5.7}, {290, 16.55, .0277, 133.4, 6.06, 6.3, 5.8}, {300, 17.43, .0279, 135.4, 6.18, 6.4, 6.0},
	{310, 18.30, .0282, 137.5, 6.29, 6.5, 6.1}, {320, 19.17, .0285, 139.5, 6.40, 6.6, 6.2}, {330, 20.05, .0288, 141.6, 6.50, 6.7, 6.3},
	{340, 20.92, .0290, 143.6, 6.60, 6.8, 6.4},
}

// speedAfter solves m·dv/dt = −(A + C·v²) in closed form.
func (r cfrRow) speedAfter(v0, t float64) float64 {
	c := r.c / (units.KMH * units.KMH)
	if r.a == 0 {
		return v0 / (1 + c*v0*t/r.inertia)
	}
	q := math.Sqrt(r.a / c)
	return q * math.Tan(math.Atan(v0/q)-math.Sqrt(r.a*c)/r.inertia*t)
}

// TestRegulationTimes: the fit's own equation of motion gives the table's times from
// A, C and the inertia: within the printed tolerances, and to 0.015 s, the rounding
// of times, A and C, except for the row of 160 kg, whose printed time contradicts its
// neighbours. The force at 65 km/h agrees with the printed one within the rounding of
// C, A and itself: 65²·0.00005 + 0.005 + 0.05 N.
func TestRegulationTimes(t *testing.T) {
	for _, r := range cfrRows {
		load := r.load()
		got := load.CoastTime(70*units.KMH, 60*units.KMH, r.vehicle())
		if got < r.shortest || got > r.longest {
			t.Errorf("%v kg: %.3f s, allowed are %v to %v", r.inertia, got, r.shortest, r.longest)
		}
		if math.Abs(got-r.seconds) > 0.015 && r.inertia != 160 {
			t.Errorf("%v kg: %.3f s, printed are %v", r.inertia, got, r.seconds)
		}
		if force := load.Force(65*units.KMH, r.vehicle()); math.Abs(force-r.force65) > 0.27 {
			t.Errorf("%v kg: %.2f N at 65 km/h, printed are %v", r.inertia, force, r.force65)
		}
	}
}

func (r cfrRow) vehicle() roadload.Vehicle {
	return roadload.Vehicle{Mass: r.inertia, Inertia: r.inertia, Density: 1.2, Gravity: 9.80665}
}

// load converts A and C to a drag area and a rolling resistance.
func (r cfrRow) load() roadload.Load {
	return roadload.Load{
		CdA: measure.Value{X: 2 * r.c / (units.KMH * units.KMH) / 1.2},
		Crr: measure.Value{X: r.a / (r.inertia * 9.80665)},
	}
}

// TestRegulationFit: from exact solutions of the rows' equation the fit
// recovers A and C.
func TestRegulationFit(t *testing.T) {
	for _, r := range cfrRows {
		var runs []roadload.Run
		for i, dir := range []float64{1, -1} {
			run := roadload.Run{ID: i + 1, Pair: 1, Dir: dir, Mass: r.inertia, Inertia: r.inertia, Density: 1.2}
			for s := 0.0; ; s++ {
				v := r.speedAfter(110*units.KMH, s)
				if v < 30*units.KMH {
					break
				}
				run.T, run.V = append(run.T, float64(100*i)+s), append(run.V, v)
			}
			runs = append(runs, run)
		}
		opts := roadload.DefaultOptions(1.5)
		opts.Slope = measure.Value{}
		e, err := roadload.Fit(runs, opts)
		if err != nil {
			t.Fatal(err)
		}
		c := e.Loads[0].At(roadload.Reference{Mass: measure.Value{X: r.inertia}, Density: 1.2, Gravity: 9.80665, From: 8, To: 30})
		if math.Abs(c.A.X-r.a) > 0.001*math.Max(r.a, 1) || math.Abs(c.C.X*units.KMH*units.KMH/r.c-1) > 0.001 {
			t.Errorf("%v kg: A %.4f C %.6f, want %v and %v", r.inertia, c.A.X, c.C.X*units.KMH*units.KMH, r.a, r.c)
		}
	}
}
