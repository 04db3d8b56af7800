package view

import (
	"math"
	"strings"
	"testing"

	"stillair/app/store"
	"stillair/app/text"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/power"
	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// invented is a ride in air of 1.2 kg/m³ with a known difference of drag.
func invented() *runs.Result {
	v := func(x, se float64) measure.Value { return measure.Value{X: x, SE: se} }
	return &runs.Result{Gravity: 9.80665,
		RoadLoads: []runs.RoadLoad{{Setup: "bare", CdA: v(0.5, 0.01), Crr: v(0, 0), Mass: 290, Density: 1.2,
			Limits: []runs.Limit{{Cause: runs.ByWind, SE: 0.01}, {Cause: runs.ByMass, SE: 0.005}, {Cause: runs.ByAir, SE: 0.0001}}}},
		Compared: []runs.Comparison{{A: "bare", B: "boxes", CdA: &compare.Verdict{Finding: compare.Differs, Percent: 10, CIPercent: [2]float64{6, 14}},
			Load: &effect.Change{CdA: v(0.05, 0.01)}}}}
}

// TestEffectsByHand compares with a calculation by hand. At 30 m/s,
// ½·1.2·0.05·30³ = 810 W more, with a standard uncertainty of a fifth of it: ±
// 1.96·162 W. Without rolling resistance v ∝ P^(−⅓)·…, so 10 % more drag costs
// 30·0.1/3 = 1 m/s = 3.6 km/h, and 100 km then take 100 000/30 · 1/30 = 111 s
// longer, to first order.
func TestEffectsByHand(t *testing.T) {
	c := english()
	res := invented()
	w := c.Effects(res, 30, nil)
	if len(w) != 1 || len(w[0].Lines) != 4 {
		t.Fatalf("got %+v", w)
	}
	for i, want := range []EffectLine{
		{Name: "Power at 108 km/h", Reading: Reading{"+0.8", "0.3", "kW"}},
		{Name: "Slower with the same power", Reading: Reading{"3.6", "1.4", "km/h"}},
		{Name: "Longer over 100 km", Reading: Reading{"110", "40", "s"}},
		{Name: "Petrol at 108 km/h, about", Reading: Reading{"+0.26", "0.12", "l/100 km"}}, // 810 W for 3333 s at a third of 32 MJ a litre
	} {
		if w[0].Lines[i] != want {
			t.Errorf("line %d is %+v, want %+v", i, w[0].Lines[i], want)
		}
	}
	if len(w[0].Notes) != 1 || w[0].Notes[0] != c.Book.Effects.FuelHow {
		t.Errorf("without consumption it says %q", w[0].Notes)
	}
}

// TestFuelByHand: 10 % more power at a share of 0.8 makes 5 l/100 km 5.4, and
// a tank of 20 l reaches 370 km instead of 400.
func TestFuelByHand(t *testing.T) {
	w := english().Effects(invented(), 30, &store.Fuel{LitresPer100Km: 5, SpeedMPS: 30, Tank: 20})
	lines := w[0].Lines
	if got := lines[3].Reading; got.Number != "+0.40" || got.Unit != "l/100 km" || got.Spread == "" {
		t.Errorf("fuel %+v", got)
	}
	if got := lines[4]; got.Name != "Range on 20 l" || got.Reading.Number != "370" || got.Words != "instead of 400 km" {
		t.Errorf("range %+v", got)
	}
}

func TestLimits(t *testing.T) {
	c := english()
	v := c.Limits(invented().RoadLoads[0])
	if v == nil || v.Lead != "bare: mostly wind from pair to pair." || v.Help != "More pairs, each there and back within minutes, or a calmer hour." {
		t.Fatalf("got %+v", v)
	}
	// ± 1.96 · 0.01 of 0.5 m²; the air, a hundredth of the longest, is left out.
	if len(v.Bars) != 2 || v.Bars[0].Text != "± 3.9 %" || v.Bars[1].Share != 0.5 {
		t.Errorf("bars %+v", v.Bars)
	}
	if c.Limits(runs.RoadLoad{}) != nil {
		t.Error("bars of nothing")
	}
	for _, cause := range []runs.Cause{runs.ByGusts, runs.ByWind, runs.ByReceiver, runs.ByRoad, runs.BySlope, runs.ByPosture, runs.ByMass, runs.ByAir, runs.ByAssumed} {
		if _, help := c.cause(cause); help == "" {
			t.Errorf("nothing helps against %q", cause)
		}
	}
}

// TestPlans makes real plans: one that is sufficient and one that cannot succeed.
func TestPlans(t *testing.T) {
	for _, tt := range []struct {
		name    string
		asked   func(*Asked)
		grade   Grade
		help    bool
		trouble bool
	}{
		{name: "a tenth of the drag", asked: func(a *Asked) { a.Change = 2 }, grade: Fine},
		{name: "a fiftieth on a breezy day", asked: func(a *Asked) { a.Change, a.Wind = 0, 2 }, grade: Bad, help: true},
		{name: "top speed", asked: func(a *Asked) { a.What, a.Faster = TopMatters, 2 }, grade: Fine},
		{name: "power", asked: func(a *Asked) { a.What, a.Stronger = PowerMatters, 1 }, grade: Fine},
		{name: "a launch", asked: func(a *Asked) { a.What, a.Quicker = TimeMatters, 1 }, grade: Fine},
		{name: "a launch of a rider without practice", asked: func(a *Asked) { a.What, a.Quicker, a.Repeats = TimeMatters, 0, 3 }, grade: Bad, help: true},
		{name: "a roll-on", asked: func(a *Asked) { a.What, a.Over, a.Quicker, a.Wind = TimeMatters, 3, 3, 0 }, grade: Fine},
		{name: "no mass", asked: func(a *Asked) { a.Load.Mass = 0 }, trouble: true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			for _, book := range text.All() {
				for _, system := range []shown.System{shown.Metric, shown.Imperial} {
					c, a := Context{Book: book, System: system}, UsualAsked()
					tt.asked(&a)
					made, err := c.MakePlan(a)
					v := c.Plan(made, err, a)
					if v.Grade != tt.grade && !tt.trouble || (v.Trouble != "") != tt.trouble || (len(v.Help) > 0) != tt.help {
						t.Errorf("%s: %+v", book.Tag, v)
					}
					for _, h := range v.Help {
						if book.Tag == "de" && strings.Contains(h.What, "setup") {
							t.Errorf("not in German: %q", h.What)
						}
						if system == shown.Imperial && strings.Contains(h.What, "km/h") {
							t.Errorf("not in mph: %q", h.What)
						}
					}
				}
			}
		})
	}
}

func TestAPlanThatIsWrong(t *testing.T) {
	v := Context{Book: text.German()}.Plan(nil, finding.Fail("plan.speeds", finding.Speed("from", 50/3.6), finding.Speed("to", 50/3.6), finding.Speed("least", 20/3.6)), UsualAsked())
	if !strings.Contains(v.Trouble, "von 50 km/h bis 50 km/h ist zu wenig") {
		t.Errorf("it says %q", v.Trouble)
	}
}

// powered is a ride with one curve of 40 kW at most, in the air of the table.
func powered(day sensors.Air) *runs.Result {
	c := &power.Curve{Speed: []float64{20, 30, 40}, Power: []measure.Value{{X: 30e3, SE: 300}, {X: 40e3, SE: 400}, {X: 35e3, SE: 350}}, Pulls: []int{3, 4}, BothWays: true}
	return &runs.Result{Ride: sensors.Ride{Air: day}, Powers: []runs.PowerCurve{{Setup: "bare", Gear: "4", RPMPerMPS: 200, Curve: c}}}
}

// TestCorrection uses dry air, so that the factor can be calculated by hand
// from the formulas of the standards: 25 °C and 99 kPa are their reference,
// where each is 1.
func TestCorrection(t *testing.T) {
	hot := 1.180*(99000/95000.0)*math.Sqrt(308.0/298) - 0.18
	for _, tt := range []struct {
		name string
		day  sensors.Air
		std  Standard
		want float64
	}{
		{"reference, SAE J1349", sensors.Air{Temperature: 25, Pressure: 99000}, SAEJ1349, 1},
		{"reference, ISO 1585", sensors.Air{Temperature: 25, Pressure: 99000}, ISO1585, 1},
		{"hot and high, SAE J1349", sensors.Air{Temperature: 35, Pressure: 95000}, SAEJ1349, hot},
		{"as ridden", sensors.Air{Temperature: 35, Pressure: 95000}, AsRidden, 1},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := english()
			v := c.Power(powered(tt.day), tt.std, false)
			if got := v.Plot.Lines[0].Y[1]; math.Abs(got-40*tt.want) > 1e-3 {
				t.Errorf("peak of %.3f kW, want %.3f", got, 40*tt.want)
			}
			if want := c.Number(40*tt.want, 1); v.Peaks[0].Reading.Number != want {
				t.Errorf("the peak reads %q, want %q", v.Peaks[0].Reading.Number, want)
			}
		})
	}
}

func TestPowerOverEngineSpeed(t *testing.T) {
	c := english()
	res := powered(sensors.Air{Temperature: 25, Pressure: 99000})
	v := c.Power(res, AsRidden, true)
	if x := v.Plot.Lines[0].X[1]; x != 6000 { // 200 · 30
		t.Errorf("the peak stands at %g rpm", x)
	}
	res.Powers[0].RPMPerMPS = math.NaN()
	if v := c.Power(res, AsRidden, true); v.Gears || v.Plot.Lines[0].X[1] != 30/units.KMH {
		t.Errorf("without a gear: %+v", v.Plot.Lines[0].X)
	}
	if p, ok := c.pullPower(res, 3); !ok || len(p.Lines) != 1 {
		t.Error("a pull does not open to its curve")
	}
	if _, ok := c.pullPower(res, 9); ok {
		t.Error("a pull of another curve opens to it")
	}
}

// TestStops checks that the shortest of the stops that count is shown.
func TestStops(t *testing.T) {
	stop := func(d float64, reasons ...finding.Finding) runs.Run {
		return runs.Run{Kind: runs.Stop, Reasons: reasons, Marks: []runs.Mark{{Name: "100-0 km/h", Distance: measure.Value{X: d, SE: 0.4}},
			{Name: "60-0 mph", Distance: measure.Value{X: d, SE: 0.4}}}}
	}
	v := english().stops([]runs.Run{stop(44), stop(41.2), stop(30, finding.New("coast.disturbed"))})
	if len(v) != 1 || v[0].Reading.Number != "41.2" || v[0].Name != "100–0 km/h" || v[0].Words != "shortest of 2" {
		t.Errorf("got %+v", v)
	}
}

// TestAcrossRides checks that a comparison between rides is marked as one, and
// says as much as one within a ride: its effect is calculated with A's load in
// the air of its ride, the same 810 W more at 30 m/s as in TestEffectsByHand,
// and a steady speed in one air for all.
func TestAcrossRides(t *testing.T) {
	may, june := invented(), invented()
	june.RoadLoads[0].Setup, june.RoadLoads[0].Density, june.RoadLoads[0].CdA.X = "boxes", 1.0, 0.55
	base := may.RoadLoads[0].Load(may.Gravity)
	x := may.Compared[0]
	x.A, x.B, x.Base = "bare (May)", "boxes (June)", &base
	x.Limits = []runs.Limit{{Cause: runs.ByDays, SE: 0.0075}, {Cause: runs.ByWind, SE: 0.003}}
	c := english()
	v := c.DecideAcross([]runs.Named{{Name: "May", Result: may}, {Name: "June", Result: june}}, []runs.Comparison{x}, CompareAsk{})
	if v.Empty() || !v.Weaker || len(v.Groups) != 1 {
		t.Fatalf("got %+v", v)
	}
	if len(v.Effects) != 1 || v.Effects[0].Pair != "boxes (June), against bare (May)" {
		t.Fatalf("effects %+v", v.Effects)
	}
	at80 := 0.5 * 1.2 * 0.05 * math.Pow(80*units.KMH, 3) / 1000
	if got := v.Effects[0].Lines[0].Reading.Number; got != "+"+c.Number(at80, 2) && got != "+"+c.Number(at80, 1) {
		t.Errorf("more power %s, want %.3f kW", got, at80)
	}
	// ½·1.2·(0.5 and 0.55)·(80/3.6)³: both in the first ride's air.
	if len(v.Steady) != 2 || v.Steady[0].Reading.Number[:3] != "3.2" && v.Steady[0].Reading.Number[:3] != "3.3" || v.Steady[1].Reading.Number[:3] != "3.6" {
		t.Errorf("steady %+v", v.Steady)
	}
	if len(v.Limits) != 1 || !strings.Contains(v.Limits[0].Lead, "from day to day") || v.Limits[0].Bars[1].Share != 0.4 {
		t.Errorf("limits %+v", v.Limits)
	}
	if within := c.Decide(may, "x", CompareAsk{}); within.Weaker {
		t.Error("a comparison within a ride passes for one between rides")
	}
}

// TestOneScale checks that the bands of a group share a scale.
func TestOneScale(t *testing.T) {
	all := []runs.Comparison{
		{A: "a", B: "b", CdA: &compare.Verdict{Finding: compare.Differs, Delta: measure.Value{X: 0.061, SE: 0.01}, CI: [2]float64{0.036, 0.086}, Percent: 11, CIPercent: [2]float64{6, 16}}},
		{A: "a", B: "c", CdA: &compare.Verdict{Finding: compare.NoneShown, Percent: 1, CIPercent: [2]float64{-2, 4}}},
	}
	rows := english().Compare(all, "").Groups[0].Rows
	if rows[0].Band.Low != -20 || rows[1].Band.Low != -20 || rows[1].Band.High != 20 {
		t.Errorf("scales %+v and %+v", rows[0].Band, rows[1].Band)
	}
	if got, want := rows[0].Delta, (Reading{"+0.061", "0.025", "m²"}); got != want {
		t.Errorf("difference %+v, want %+v", got, want)
	}
	if rows[1].Delta.Number != "" {
		t.Errorf("a difference out of nowhere: %+v", rows[1].Delta)
	}
}
