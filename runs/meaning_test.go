package runs

import (
	"errors"
	"math"
	"slices"
	"testing"

	"stillair/runs/compare"
	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// invented is a result with one setup's road load, for the calculations by hand below.
func invented(setup string, cda float64) *Result {
	return &Result{Gravity: 9.81, RoadLoads: []RoadLoad{{
		Setup: setup, Pairs: 5, Mass: 290, CdA: measure.Value{X: cda, SE: 0.008}, Crr: measure.Value{X: 0.018, SE: 0.0004},
		Cov: -2e-6, DoF: 20, Density: 1.2,
	}}}
}

// TestAtSpeed compares with a calculation by hand for 30 m/s: air
// ½·1.2·0.55·900 = 297 N, tyres 290·9.81·0.018·1.12 = 57.35 N, together 354.4 N
// and 10.63 kW.
func TestAtSpeed(t *testing.T) {
	got := invented("bare", 0.55).AtSpeed(30)
	if len(got) != 1 || math.Abs(got[0].Force.X-354.35) > 0.05 || math.Abs(got[0].Power.X-10630.6) > 2 || math.Abs(got[0].AirShare-0.838) > 0.001 {
		t.Errorf("got %+v", got)
	}
}

// TestAcross checks that comparisons of rides of different days include the
// differences between days, and are marked as less certain.
func TestAcross(t *testing.T) {
	got, err := Across([]Named{{"May", invented("bare", 0.55)}, {"June", invented("panniers", 0.66)}}, Asked{})
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != 1 || got[0].A != "bare (May)" || got[0].B != "panniers (June)" {
		t.Fatalf("got %+v", got)
	}
	want := math.Sqrt(2*0.008*0.008 + 0.55*0.55*dayToDayCdA*dayToDayCdA)
	if v := got[0].CdA; v.Finding != compare.Differs || math.Abs(v.Delta.SE-want) > 1e-12 || math.Abs(v.Percent-20) > 1e-9 {
		t.Errorf("drag: %+v, want ± %v", v, want)
	}
	if b := got[0].Base; b == nil || b.CdA.X != 0.55 || b.Check() != nil {
		t.Errorf("A's own load is %+v", b)
	}
	for i := 1; i < len(got[0].Limits); i++ {
		if got[0].Limits[i].SE > got[0].Limits[i-1].SE {
			t.Errorf("limits are not in order: %v", got[0].Limits)
		}
	}
	if i := slices.IndexFunc(got[0].Limits, func(l Limit) bool { return l.Cause == ByDays }); i < 0 || math.Abs(got[0].Limits[i].SE-0.55*dayToDayCdA) > 1e-12 {
		t.Errorf("what days differ in is not among %v", got[0].Limits)
	}
	if len(got[0].Notes) == 0 || !got[0].Notes[0].Is(codeOtherDay) {
		t.Errorf("notes %v do not say that it is weaker", got[0].Notes)
	}
	if _, err := Across([]Named{{"May", invented("bare", 0.55)}, {"June", &Result{}}}, Asked{}); err == nil {
		t.Error("a ride without road load was compared")
	}
}

func TestLoadOfUnknownSetup(t *testing.T) {
	if _, err := invented("bare", 0.55).LoadOf("tall screen"); err == nil || !errors.Is(err, finding.Fail(codeNotMeasured)) {
		t.Errorf("got %v", err)
	}
}
