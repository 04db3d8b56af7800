package view_test

import (
	"testing"

	"stillair/app/text"
	"stillair/app/view"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/measure"
)

// TestIntervalHasTheDigitsOfItsReading: both say the same with the same rounding,
// that of the ± (GUM, 7.2.6: an uncertainty has at most two digits, and the estimate
// is rounded to fit).
func TestIntervalHasTheDigitsOfItsReading(t *testing.T) {
	l := runs.RoadLoad{Pairs: 5, DoF: 8, Mass: 290, Density: 1.2, CdA: measure.Value{X: 0.5445, SE: 0.04}, Crr: measure.Value{X: 0.01845, SE: 0.002},
		CdACI: [2]float64{0.459, 0.630}, CrrCI: [2]float64{0.0137, 0.0232}}
	for _, c := range []struct {
		name     string
		system   shown.System
		cda, crr string
	}{
		{"metric", shown.Metric, "95 % sure: 0.46 to 0.63", "95 % sure: 0.014 to 0.023"},
		{"imperial", shown.Imperial, "95 % sure: 4.9 to 6.8", "95 % sure: 0.014 to 0.023"},
	} {
		v := view.Context{Book: text.English(), System: c.system}.Load(&runs.Result{}, l)
		if v.CdASure != c.cda || v.CrrSure != c.crr {
			t.Errorf("%s: %q and %q beside %s and %s, want %q and %q", c.name, v.CdASure, v.CrrSure, v.CdA.Spoken(), v.Crr.Spoken(), c.cda, c.crr)
		}
	}
}
