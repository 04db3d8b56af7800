package screens_test

import (
	"fmt"
	"math"

	"fyne.io/fyne/v2"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/view"
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/runs/effect"
	"stillair/runs/plan"
	"stillair/runs/power"
	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

func compareActions() screens.CompareActions {
	return screens.CompareActions{Guide: nothing, Plan: nothing, Rides: nothing, Speed: func(int) {}}
}

// inventedCompared is the invented ride with panniers and with a low screen.
func inventedCompared() *runs.Result {
	res := inventedResult()
	res.Gravity = 9.81
	l := res.RoadLoads[0]
	l.Limits = []runs.Limit{{Cause: runs.ByGusts, SE: 0.0071}, {Cause: runs.ByMass, SE: 0.0057}, {Cause: runs.ByWind, SE: 0.0031},
		{Cause: runs.ByReceiver, SE: 0.0018}, {Cause: runs.BySlope, SE: 0.0008}, {Cause: runs.ByAir, SE: 0.0001}}
	on := l
	on.Setup, on.CdA, on.Mass = "panniers on", val(0.612, 0.0101), 302
	on.Limits = []runs.Limit{{Cause: runs.ByWind, SE: 0.0081}, {Cause: runs.ByGusts, SE: 0.0067}, {Cause: runs.ByMass, SE: 0.0059}}
	res.RoadLoads = []runs.RoadLoad{l, on}
	res.Compared = []runs.Comparison{
		{A: "panniers off", B: "panniers on", Load: &effect.Change{CdA: val(0.061, 0.0125), Crr: val(0.0002, 0.0006), Cov: -4e-6},
			CdA:   &compare.Verdict{Finding: compare.Differs, Delta: val(0.061, 0.0125), CI: [2]float64{0.035, 0.086}, Percent: 11, CIPercent: [2]float64{6.4, 15.6}},
			Crr:   &compare.Verdict{Finding: compare.CannotTell, Percent: 1.1, CIPercent: [2]float64{-8.2, 10.4}, MorePairs: 3},
			Notes: []finding.Finding{finding.New("compare.tyres_alike")}},
		{A: "panniers off", B: "low screen", CdA: &compare.Verdict{Finding: compare.NoneShown, Percent: -1.2, CIPercent: [2]float64{-3.9, 1.5}, Unlikely: 3.6}},
	}
	return res
}

func inventedDecision(c view.Context) view.Compare {
	return c.Decide(inventedCompared(), "Panniers, closed road", view.CompareAsk{Speed: 1, LimitRPM: math.Inf(1),
		Fuel: &store.Fuel{LitresPer100Km: 4.6, SpeedMPS: 100 * units.KMH, Tank: 15}})
}

// inventedPowers are curves of an engine of constant force that fades.
func inventedPowers() *runs.Result {
	curve := func(setup string, most float64) runs.PowerCurve {
		c := &power.Curve{Pulls: []int{2, 5}, Bandwidth: 0.9, BothWays: true}
		for v := 18.0; v <= 42; v += 0.5 {
			x := most * (1 - math.Pow((v-38)/32, 2))
			c.Speed, c.Power = append(c.Speed, v), append(c.Power, val(x, 0.009*x))
		}
		return runs.PowerCurve{Setup: setup, Gear: "4", RPMPerMPS: 235, Curve: c}
	}
	res := inventedResult()
	res.Ride.Air = sensors.Air{Temperature: 31, Pressure: 97500, Humidity: 0.4}
	res.Defaults = nil
	res.Powers = []runs.PowerCurve{curve("as bought", 49.5e3), curve("other silencer", 51.8e3)}
	return res
}

// inventedRides are two rides of different days, one with panniers.
func inventedRides() ([]runs.Named, []runs.Comparison, view.CompareAsk) {
	may, june := inventedCompared(), inventedCompared()
	may.RoadLoads, june.RoadLoads = may.RoadLoads[:1], june.RoadLoads[1:]
	rides := []runs.Named{{Name: "May", Result: may}, {Name: "June", Result: june}}
	base := may.RoadLoads[0].Load(may.Gravity)
	return rides, []runs.Comparison{{A: rides[0].Call("panniers off"), B: rides[1].Call("panniers on"), Base: &base,
			Load: &effect.Change{CdA: val(0.039, 0.024), Crr: val(0.0003, 0.0011), Cov: -9e-6},
			CdA:  &compare.Verdict{Finding: compare.CannotTell, Delta: val(0.039, 0.024), CI: [2]float64{-0.011, 0.089}, Percent: 7, CIPercent: [2]float64{-2, 16}, MorePairs: 4},
			Crr:  &compare.Verdict{Finding: compare.NoneShown, Delta: val(0.0003, 0.0006), CI: [2]float64{-0.0010, 0.0016}, Percent: 1.7, CIPercent: [2]float64{-5.7, 9.1}, Unlikely: 9.1},
			Limits: []runs.Limit{{Cause: runs.ByWind, SE: 0.0141}, {Cause: runs.ByGusts, SE: 0.0118}, {Cause: runs.ByDays, SE: 0.0083}, {Cause: runs.ByMass, SE: 0.0081},
				{Cause: runs.ByReceiver, SE: 0.0026}},
			Notes: []finding.Finding{finding.New("compare.other_day")}}},
		view.CompareAsk{Speed: 1, LimitRPM: math.Inf(1), Fuel: &store.Fuel{LitresPer100Km: 4.6, SpeedMPS: 100 * units.KMH, Tank: 15}}
}

func planView(s screens.Screens, a view.Asked, made *plan.Plan, err error) screens.PlanView {
	w := s.C.PlanChoices()
	pick := func(options []string, at int) screens.Choice {
		return screens.Choice{Options: options, Chosen: at, Pick: func(int) {}}
	}
	p := s.C.Plan(made, err, a)
	v := screens.PlanView{What: pick(w.What, int(a.What)), Change: pick(w.Changes, a.Change), Wind: pick(w.Winds, a.Wind), From: pick(w.From, a.From),
		To: pick(w.To, a.To), Setups: pick(w.Setups, a.Setups), Chance: pick(w.Chances, a.Sure), FullThrottle: a.What.Pushes(),
		Basis: s.C.PlanBasis(a), WindWords: s.C.PlanWind(a), Cautions: s.C.PlanCautions(a), Plan: &p}
	switch a.What {
	case view.TopMatters:
		v.Change = pick(w.Faster, a.Faster)
		v.Top = &kit.Field{Name: s.C.Book.Plan.TopField, Text: s.C.Number(s.C.Speed(s.C.UsualTop()), 0), Unit: s.C.SpeedUnit()}
	case view.PowerMatters:
		unsteady := pick(w.Unsteady, a.Unsteady)
		v.Change, v.Repeats = pick(w.Stronger, a.Stronger), &unsteady
		v.RepeatsName, v.RepeatsHint = s.C.Book.Plan.Unsteady, s.C.Book.Plan.UnsteadyHint
	case view.TimeMatters:
		over, repeats := pick(w.Over, a.Over), pick(w.Repeats, a.Repeats)
		v.Change, v.Over, v.Repeats = pick(w.Quicker, a.Quicker), &over, &repeats
		v.RepeatsName, v.RepeatsHint = s.C.Book.Plan.Repeats, s.C.Book.Plan.RepeatsHint
	}
	return v
}

func decideScreens() []picture {
	good := &plan.Plan{Pairs: 4, Blocks: []plan.Block{{Setup: 0, Pairs: 2}, {Setup: 1, Pairs: 4}, {Setup: 0, Pairs: 2}}, RoadLength: 1370, Seconds: 2700,
		SE: 0.016, Half: 0.033, Chance: 0.83, Gusty: 0.67, Calm: 0.94, Smallest: 0.048, Enough: true}
	pushed := *good
	pushed.Gusty, pushed.Calm = 0, 0
	poor := &plan.Plan{Pairs: 8, Blocks: []plan.Block{{Setup: 0, Pairs: 4}, {Setup: 1, Pairs: 8}, {Setup: 0, Pairs: 4}}, RoadLength: 1370, Seconds: 5100,
		SE: 0.014, Half: 0.028, Chance: 0.27, Gusty: 0.16, Calm: 0.41, Smallest: 0.043, Advice: []plan.Advice{{Change: finding.New("plan.calmer"), Chance: 0.55, Smallest: 0.028},
			{Change: finding.New("plan.faster", finding.Speed("from", 130*units.KMH)), Chance: 0.31, Smallest: 0.039}, {Change: finding.New("plan.more_pairs", finding.Count("pairs", 16), finding.Count("instead", 8)), Chance: 0.49, Smallest: 0.029}}}
	compared := func(name string, v func(view.Context) view.Compare) picture {
		return picture{name, func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceCompare, s.Compare(v(s.C), compareActions()))
		}}
	}
	planned := func(name string, a view.Asked, made *plan.Plan, err error) picture {
		return picture{name, func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceCompare, s.Plan(planView(s, a, made, err), nothing, nothing))
		}}
	}
	top, measured, stronger, quicker := view.UsualAsked(), view.UsualAsked(), view.UsualAsked(), view.UsualAsked()
	top.What, stronger.What, quicker.What = view.TopMatters, view.PowerMatters, view.TimeMatters
	short := &plan.Plan{Pairs: 8, Blocks: poor.Blocks, RoadLength: 220, Seconds: 2980, SE: 0.052, Half: 0.106, Chance: 0.48, Smallest: 0.149,
		Advice: []plan.Advice{{Change: finding.New("plan.repeats_alike"), Chance: 0.83, Smallest: 0.096}, {Change: finding.New("plan.more_pairs", finding.Count("pairs", 16), finding.Count("instead", 8)), Chance: 0.79, Smallest: 0.102}}}
	measured.Measured, measured.Change, quicker.Quicker = true, 0, 0
	return []picture{
		compared("compare across", func(c view.Context) view.Compare {
			return c.DecideAcross(inventedRides())
		}),
		{"pick rides", func(s screens.Screens) fyne.CanvasObject {
			a, b := inventedSession(), inventedSession()
			b.ID, b.About.Name = "other", "Bare, the week before"
			return tabs(s, screens.PlaceCompare, s.PickRides(s.C.Rides([]store.Session{a, b}), map[string]bool{"other": true}, "", func(string) {}, nothing, nothing))
		}},
		planned("plan", view.UsualAsked(), good, nil), planned("plan cannot", measured, poor, nil), planned("plan top speed", top, good, nil),
		planned("plan power", stronger, &pushed, nil), planned("plan time", quicker, short, nil),
		planned("plan wrong", view.UsualAsked(), nil, finding.Fail("plan.speeds", finding.Speed("from", 50/3.6), finding.Speed("to", 50/3.6), finding.Speed("least", 20/3.6))),
		powered("power", view.AsRidden, false), powered("power corrected", view.SAEJ1349, true),
		{"conditions", func(s screens.Screens) fyne.CanvasObject {
			t := s.C.Book
			return tabs(s, screens.PlaceRide, s.Conditions([]kit.Field{{Name: t.More.Temperature, Text: "18", Unit: "°C"}, {Name: t.More.Pressure, Unit: "hPa"},
				{Name: t.More.Humidity, Text: "60", Unit: "%"}, {Name: t.Plan.Wind, Hint: t.Parts.WindHint, Text: "0.5", Unit: "m/s"}},
				[]kit.Field{{Name: t.Parts.StationWind, Text: "4", Unit: "m/s"}, {Name: t.Parts.StationFrom, Hint: t.Parts.StationFromHint, Unit: "°"}},
				s.C.AirOld(inventedSession().About.Started), screens.ConditionsActions{Back: nothing, Still: nothing, Empty: nothing}))
		}},
		{"values", func(s screens.Screens) fyne.CanvasObject {
			t, q := s.C.Book, s.C.MassQuantity(60, 1500)
			gear := func(n, typed string) kit.Field {
				return kit.Field{Name: s.C.GearNamed(n), Example: "5830", Text: typed, Unit: s.C.GearLabel()}
			}
			groups := []screens.FormGroup{{Hint: t.Parts.ValuesHint, Fields: []kit.Field{{Name: t.Bikes.Mass, Text: s.C.Write(ptr(286), q), Unit: q.Unit, Hint: t.Bikes.MassHint}}},
				{Hint: t.Parts.FromBikeHint, Add: fmt.Sprintf(t.Parts.FromBike, "blue naked 700"), OnAdd: nothing},
				{Title: t.Bikes.Gears, Hint: t.Bikes.GearsHint, Add: t.Bikes.AddGear, OnAdd: nothing, Fields: []kit.Field{gear("4", ""), gear("5", "4960"),
					{Name: t.Parts.Limit, Example: "10500", Unit: s.C.LimitQuantity().Unit, Text: "x", Fault: t.Bikes.NotNumber}}}}
			return tabs(s, screens.PlaceResults, s.Form(t.Parts.ValuesTitle, groups, "", nothing, nothing, nothing, t.Parts.Recorded, t.Parts.RecordedHint))
		}},
		{"pull", func(s screens.Screens) fyne.CanvasObject {
			res := inventedPowers()
			r := res.Runs[2]
			r.Kind, r.ID, r.Marks = runs.Pull, 2, nil
			return tabs(s, screens.PlaceResults, s.Run(s.C.Run(res, r), nothing))
		}},
	}
}

func powered(name string, std view.Standard, overRPM bool) picture {
	return picture{name, func(s screens.Screens) fyne.CanvasObject {
		t, over := s.C.Book.Power, 0
		if overRPM {
			over = 1
		}
		return tabs(s, screens.PlaceResults, s.Power(screens.PowerView{Power: s.C.Power(inventedPowers(), std, overRPM),
			Standard: screens.Choice{Options: s.C.Standards(), Chosen: int(std), Pick: func(int) {}},
			Over:     screens.Choice{Options: []string{t.OverSpeed, t.OverRPM}, Chosen: over, Pick: func(int) {}}}, nothing))
	}}
}
