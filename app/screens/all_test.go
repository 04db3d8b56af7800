package screens_test

import (
	"math"
	"time"

	"fyne.io/fyne/v2"

	"stillair/app/formats"
	"stillair/app/platform"
	"stillair/app/recorder"
	"stillair/app/relabel"
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/trial"
	"stillair/app/view"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// picture is one screen in one state.
type picture struct {
	name string
	make func(screens.Screens) fyne.CanvasObject
}

func nothing() {}

func tabs(s screens.Screens, at screens.Place, page fyne.CanvasObject) fyne.CanvasObject {
	return s.WithTabs(page, at, func(screens.Place) {}, nil)
}

func allScreens() []picture {
	list := append(append(append(rideScreens(), resultScreens()...), seasonScreens()...), decideScreens()...)
	return append(list, otherScreens()...)
}

func readyActions() screens.ReadyActions {
	return screens.ReadyActions{Start: nothing, Permit: nothing, Bike: nothing, Guide: nothing, Air: nothing, Dismiss: nothing, Tick: func(int) {}}
}

// inventedTrial is the result of a phone on which most things work.
func inventedTrial() *trial.Result {
	return &trial.Result{Kind: trial.ResultKind, Lines: []trial.Line{
		{Topic: trial.Storage, Verdict: trial.Works, Numbers: map[string]float64{trial.Seconds: 0.03, trial.Megabytes: 41230}},
		{Topic: trial.Motion, Verdict: trial.Works, Numbers: map[string]float64{trial.Rate: 399.8, trial.Longest: 0.01}},
		{Topic: trial.Fixes, Verdict: trial.Untried},
		{Topic: trial.Axes, Verdict: trial.Differs, Numbers: map[string]float64{trial.X: 0.12, trial.Y: -0.2, trial.Z: -9.79}},
		{Topic: trial.Service, Verdict: trial.Works, Numbers: map[string]float64{trial.Seconds: 0.2}},
		{Topic: trial.Dark, Verdict: trial.Fails, Numbers: map[string]float64{trial.Seconds: 31, trial.Longest: 12.4, trial.FixLongest: 29}},
	}}
}

func rideScreens() []picture {
	bike := inventedBikes()[0]
	return []picture{
		{"ready", func(s screens.Screens) fyne.CanvasObject {
			v := s.C.Ready(view.ReadyState{Bike: &bike, Setup: "panniers off", Senses: goodSenses(), Free: 40 << 30, NoGuide: true,
				Ticked: [6]bool{true, true, true, true, true, true}})
			return tabs(s, screens.PlaceRide, s.Ready(v, screens.NoticeText{}, readyActions()))
		}},
		{"ready first time", func(s screens.Screens) fyne.CanvasObject {
			senses := goodSenses()
			senses[2] = recorder.Sense{Sensor: sensors.SensorFix, Condition: sensors.Working, Rate: 1, HSD: 18, Gaps: 2, Longest: 4.1, Count: 9}
			senses[0].Condition = sensors.Asking
			warm := 18.0
			st := view.ReadyState{Senses: senses, Free: -1, Coarse: true, Permit: true, Ticked: [6]bool{true, true},
				Air: store.Air{Temperature: &warm}, AirOld: true, AirEntered: inventedSession().About.Started}
			v := s.C.Ready(st)
			title, hint := s.C.Recovered(store.Recovered{Seconds: 2040})
			return tabs(s, screens.PlaceRide, s.Ready(v, screens.NoticeText{Title: title, Text: hint}, readyActions()))
		}},
		{"ready with obstacles", func(s screens.Screens) fyne.CanvasObject {
			v := s.C.Ready(view.ReadyState{Bike: &bike, Senses: goodSenses(), Free: 40 << 30, NoGuide: true,
				Obstacles: []platform.Obstacle{platform.NoNotifications, platform.SavingBattery, platform.Restricted}})
			return tabs(s, screens.PlaceRide, s.Ready(v, screens.NoticeText{}, readyActions()))
		}},
		{"trial", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceRide, s.Trial(s.C.Trial(inventedTrial(), ""), screens.Handing{},
				screens.TrialActions{Back: nothing, Begin: nothing, Share: nothing}))
		}},
		{"trial running", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceRide, s.Trial(s.C.Trial(inventedTrial(), trial.SwitchOff), screens.Handing{}, screens.TrialActions{Back: nothing}))
		}},
		{"ready denied", func(s screens.Screens) fyne.CanvasObject {
			senses := goodSenses()
			senses[2].Condition, senses[0].Condition = sensors.Denied, sensors.Missing
			v := s.C.Ready(view.ReadyState{Bike: &bike, Setup: "panniers on", Senses: senses, Free: 50 << 20, NoGuide: true})
			return tabs(s, screens.PlaceRide, s.Ready(v, screens.NoticeText{}, readyActions()))
		}},
		{"riding", func(s screens.Screens) fyne.CanvasObject {
			return s.Riding(s.C.Riding(movingStatus()), ridingActions()).Root
		}},
		{"riding sensor silent", func(s screens.Screens) fyne.CanvasObject {
			st := movingStatus()
			st.Senses[0].Condition = sensors.Silent
			st.Noticed = nil
			st.Unsaved = 12
			return s.Riding(s.C.Riding(st), ridingActions()).Root
		}},
		{"standing", func(s screens.Screens) fyne.CanvasObject {
			st := movingStatus()
			st.Phase = recorder.Standing
			st.Leg = &runs.Result{Runs: inventedResult().Runs[:5], Track: inventedResult().Track}
			return s.Riding(s.C.Riding(st), ridingActions()).Root
		}},
		{"standing so far", func(s screens.Screens) fyne.CanvasObject {
			return s.Riding(s.C.Riding(haltStatus(inventedUnclear())), ridingActions()).Root
		}},
		{"weight", func(s screens.Screens) fyne.CanvasObject {
			return s.AskWeight("panniers on", []kit.Field{{Name: s.C.Book.Riding.WeightField, Unit: "kg", Example: "287"}}, nothing, nothing, nothing)
		}},
		{"standing after a hole", func(s screens.Screens) fyne.CanvasObject {
			st := movingStatus()
			st.Phase = recorder.Standing
			st.Holes = []sensors.Hole{{From: 100, To: 139, Why: finding.New("browser.was_hidden")}}
			return s.Riding(s.C.Riding(st), ridingActions()).Root
		}},
		{"pocket", func(s screens.Screens) fyne.CanvasObject { return s.Pocket(s.C.Riding(movingStatus()), nothing) }},
		{"pick setup", func(s screens.Screens) fyne.CanvasObject {
			rows := s.C.Bikes(inventedBikes(), "1", "panniers off")[0].Setups
			return s.PickSetup(rows, func(string) {}, nothing)
		}},
	}
}

// haltStatus is a halt in the middle of a test.
func haltStatus(soFar *runs.Result) recorder.Status {
	st := movingStatus()
	st.Phase, st.SoFar = recorder.Standing, soFar
	st.Leg = &runs.Result{Runs: inventedResult().Runs[:5], Track: inventedResult().Track}
	return st
}

func ridingActions() screens.RidingActions {
	return screens.RidingActions{End: nothing, Say: nothing, Setup: nothing, Pocket: nothing, Read: nothing}
}

func movingStatus() recorder.Status {
	return recorder.Status{Phase: recorder.Moving, Seconds: 1460, Speed: 27.4, Distance: 21_000, Setup: "panniers off", Senses: goodSenses(),
		Noticed: []recorder.Notice{{Kind: runs.Launch, From: 0, To: 45.8}, {Kind: runs.CoastDown, From: 31.9, To: 8.4}, {Kind: runs.CoastDown, From: 31.8, To: 8.3}},
		Kept:    recorder.Kept{Free: -1}, Unsaved: 0.6}
}

func resultScreens() []picture {
	res, ses := inventedResult(), inventedSession()
	on := screens.RideActions{Back: nothing, Edit: nothing, Advice: nothing, Power: nothing, Run: func(int) {}, Load: func(int) {}}
	run := func(i int) func(screens.Screens) fyne.CanvasObject {
		return func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceResults, s.Run(s.C.Run(res, res.Runs[i]), nothing))
		}
	}
	return []picture{
		{"rides", func(s screens.Screens) fyne.CanvasObject {
			cut := inventedSession()
			cut.About.Name, cut.About.Stage, cut.About.Found = "", store.CutOff, store.Found{CoastDowns: 2, Pairs: 1}
			fresh := inventedSession()
			fresh.About.Name, fresh.About.Measured = "", fresh.About.Deleted
			on := ridesActions()
			on.Season = nothing
			page := s.Rides(s.C.Rides([]store.Session{ses, cut, fresh}), 1, on)
			return s.WithTabs(page, screens.PlaceResults, func(screens.Place) {}, s.UndoBar(s.C.Book.Rides.Deleted, nothing))
		}},
		{"deleted", func(s screens.Screens) fyne.CanvasObject {
			now := ses.About.Started.Add(96 * time.Hour)
			a, b := inventedSession(), inventedSession()
			a.About.Deleted, b.About.Deleted = now.Add(-time.Hour), now.Add(-6*24*time.Hour-time.Hour)
			b.ID, b.About.Name = "other", "Wet road"
			on := screens.DeletedActions{Back: nothing, BringBack: func(string) {}, Remove: func(string) {}}
			return tabs(s, screens.PlaceResults, s.Deleted(s.C.Deleted([]store.Session{a, b}, now), "other", on))
		}},
		{"rides empty", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceResults, s.Rides(nil, 0, ridesActions()))
		}},
		{"edit ride", func(s screens.Screens) fyne.CanvasObject {
			a := screens.EditActions{Back: nothing, Report: nothing, ShareAway: nothing, ShareRide: nothing, ShareResults: nothing, Others: nothing,
				Delete: nothing, Values: nothing, Setups: nothing}
			return tabs(s, screens.PlaceResults, s.EditRide(ses.About.Name, "", screens.Handing{}, a))
		}},
		{"setups of a ride", func(s screens.Screens) fyne.CanvasObject {
			table := &relabel.Table{From: 0, To: 1475, Mass: 287, Halts: []relabel.Halt{{From: 604, To: 655}, {From: 1204, To: 1250}},
				Setups: []sensors.Setup{{Name: "panniers off", Mass: math.NaN(), Tyres: "2.5 bar"}, {From: 630, Name: "panniers on", Mass: math.NaN()}, {From: 1230, Name: "panniers off", Mass: math.NaN()}}}
			return tabs(s, screens.PlaceResults, s.Relabel(s.C.Relabel(table), screens.RelabelActions{Back: nothing, Save: nothing, Time: nothing,
				Setup: func(int) {}, Halt: func(int) {}}))
		}},
		{"formats", func(s screens.Screens) fyne.CanvasObject {
			h := screens.Handing{Making: s.C.Book.Formats.Making}
			return tabs(s, screens.PlaceResults, s.Formats(formats.Formats(), h, func(formats.Format) {}, nothing))
		}},
		{"ride", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceResults, s.Ride(s.C.Ride(ses, res, rideSenses(), true), on))
		}},
		{"ride two setups", func(s screens.Screens) fyne.CanvasObject { return rideAnswered(s, inventedCompared()) }},
		{"ride not clear", func(s screens.Screens) fyne.CanvasObject { return rideAnswered(s, inventedUnclear()) }},
		{"ride without runs", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceResults, s.Ride(s.C.Ride(ses, &runs.Result{}, nil, false), on))
		}},
		{"measuring", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceResults, s.Busy(ses.About.Name, 0.4, nothing))
		}},
		{"failed", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceResults, s.Failed(ses.About.Name, s.C.Book.Trouble.NoRide, nothing, nothing))
		}},
		{"launch", run(0)}, {"stop", run(1)}, {"roll-on", run(2)}, {"coast-down", run(3)}, {"rejected", run(12)},
		{"road load", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceResults, s.Load(s.C.Load(res, res.RoadLoads[0]), nothing))
		}},
		{"advice", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceResults, s.Advice(s.C.Advice(res), nothing))
		}},
	}
}

func ridesActions() screens.RidesActions {
	return screens.RidesActions{Open: func(string) {}, Demo: nothing, Deleted: nothing}
}

func otherScreens() []picture {
	list := []picture{
		{"bikes", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceBikes, s.Bikes(s.C.Bikes(inventedBikes(), "1", "panniers off"), nil, bikesActions()))
		}},
		{"bikes empty", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceBikes, s.Bikes(nil, nil, bikesActions()))
		}},
		{"compare empty", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceCompare, s.Compare(view.Compare{}, compareActions()))
		}},
		{"compare", func(s screens.Screens) fyne.CanvasObject {
			return tabs(s, screens.PlaceCompare, s.Compare(inventedDecision(s.C), compareActions()))
		}},
		{"more", func(s screens.Screens) fyne.CanvasObject { return tabs(s, screens.PlaceMore, s.More(moreView(s))) }},
	}
	for name, drive := range map[string]sensors.Drive{"never rolls belt": sensors.DriveVariator, "never rolls electric": sensors.DriveElectric} {
		list = append(list, picture{name, func(s screens.Screens) fyne.CanvasObject { return s.NeverRolls(drive, nothing, nothing) }})
	}
	for page := range screens.GuideSteps {
		list = append(list, picture{"guide " + string(rune('1'+page)), func(s screens.Screens) fyne.CanvasObject {
			return s.Guide(page, screens.GuideActions{Back: nothing, Next: nothing, Done: nothing})
		}})
	}
	return list
}

func bikesActions() screens.BikesActions {
	return screens.BikesActions{New: nothing, Edit: func(string) {}, Choose: func(_, _ string) {}, AddSetup: func(string) {}, EditSetup: func(_, _ string) {}}
}

func moreView(s screens.Screens) screens.MoreView {
	t := s.C.Book.More
	pick := func(options ...string) screens.Choice {
		return screens.Choice{Options: options, Chosen: 0, Pick: func(int) {}}
	}
	sound := pick(t.Off, t.On)
	return screens.MoreView{Sound: &sound, Units: pick(t.Metric, t.Imperial), Power: pick("kW", s.C.Book.Horsepower), Language: pick(screens.Languages(s.C.Book)...), Look: pick(t.LookSystem, t.LookLight, t.LookDark),
		TextSize: pick(t.TextNormal, t.TextLarge, t.TextLargest), Aloud: pick(t.Off, t.On), HasVoice: true, Guide: nothing,
		Air: []kit.Field{{Name: t.Temperature, Text: "18", Unit: "°C"}, {Name: t.Pressure, Text: "1009", Unit: "hPa"}, {Name: t.Humidity, Unit: "%"}}}
}
