package roadload_test

import (
	"math"
	"testing"

	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/sensors/units"
)

// cfrRow is a row of figure F98-9 of 40 CFR 86.529-98: F = A + C·V² with V in
// km/h, and the time to slow from 70 to 60 km/h.
type cfrRow struct{ inertia, a, c, force65, seconds float64 }

var cfrRows = []cfrRow{
	{100, 0.0, .0224, 94.8, 2.95}, {110, 0.82, .0227, 96.8, 3.18}, {120, 1.70, .0230, 98.8, 3.39},
	{130, 2.57, .0233, 100.9, 3.60}, {140, 3.44, .0235, 102.9, 3.80}, {150, 4.32, .0238, 104.9, 3.99},
	{160, 5.19, .0241, 107.0, 4.10}, {170, 6.06, .0244, 109.0, 4.36}, {180, 6.94, .0246, 111.0, 4.53},
	{190, 7.81, .0249, 113.1, 4.69}, {200, 8.69, .0252, 115.1, 4.85}, {210, 9.56, .0255, 117.1, 5.00},
	{220, 10.43, .0257, 119.2, 5.15}, {230, 11.31, .0260, 121.2, 5.30}, {240, 12.18, .0263, 123.2, 5.43},
	{250, 13.06, .0266, 125.3, 5.57}, {260, 13.93, .0268, 127.3, 5.70}, {270, 14.80, .0271, 129.3, 5.82},
	{280, 15.68, .0274, 131.4, 5.95}, {290, 16.55, .0277, 133.4, 6.06}, {300, 17.43, .0279, 135.4, 6.18},
	{310, 18.30, .0282, 137.5, 6.29}, {320, 19.17, .0285, 139.5, 6.40}, {330, 20.05, .0288, 141.6, 6.50},
	{340, 20.92, .0290, 143.6, 6.60},
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

// TestRegulationTimes: the fit's own equation of motion gives the table's times
// from A, C and the inertia, within the tolerances that the figure prints beside
// them; those rows whose tolerances are not at hand to 0.015 s, which is their
// rounding and that of A and C.
func TestRegulationTimes(t *testing.T) {
	printed := map[float64][2]float64{100: {2.8, 3.1}, 160: {4.0, 4.4}, 290: {5.8, 6.3}, 340: {6.4, 6.8}}
	for _, r := range cfrRows {
		load := r.load()
		got := load.CoastTime(70*units.KMH, 60*units.KMH, r.vehicle())
		within, known := printed[r.inertia]
		if !known {
			within = [2]float64{r.seconds - 0.015, r.seconds + 0.015}
		}
		if got < within[0] || got > within[1] {
			t.Errorf("%v kg: %.3f s, want %.3f to %.3f", r.inertia, got, within[0], within[1])
		}
	}
}

func (r cfrRow) vehicle() roadload.Vehicle {
	return roadload.Vehicle{Mass: r.inertia, Inertia: r.inertia, Density: 1.2, Gravity: 9.80665}
}

// load turns A and C into a drag area and a rolling resistance.
func (r cfrRow) load() roadload.Load {
	return roadload.Load{
		CdA: measure.Value{X: 2 * r.c / (units.KMH * units.KMH) / 1.2},
		Crr: measure.Value{X: r.a / (r.inertia * 9.80665)},
	}
}

// TestRegulationFit: from exact solutions of the rows' equation the fit finds
// A and C again.
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
