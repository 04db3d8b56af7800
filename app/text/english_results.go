package text

func englishRides() Rides {
	return Rides{
		Title: "Results", Empty: "No rides yet", EmptyHint: "Record one, and it appears here.",
		CutOff: "cut off, saved up to then", Deleted: "Ride deleted",
		Launches: "%d launches", RollOns: "%d roll-ons", CoastDowns: "%d coast-downs", Pairs: "%d pairs",
		OneLaunch: "1 launch", OneRollOn: "1 roll-on", OneCoastDown: "1 coast-down", OnePair: "1 pair",
		NotAnalysed: "not measured yet", Demo: "Look at an invented ride", DemoName: "Invented ride",
		Name: "Name", NamePlaceholder: "Panniers on, Sunday", Note: "Notes", Edit: "Name, notes, share",
		Share: "Share or save", ShareRide: "The recording as it is",
		ShareAway: "The recording, without the place", ShareAwayHint: "Moved elsewhere on Earth, first and last 200 m cut off. Runs in the cut parts are gone.", ShareResults: "The results",
		ShareHint: "The recording opens in any tool that reads gzip and JSON. The results are one JSON file.",
		Delete:    "Delete this ride", DeleteHint: "It stays under “Deleted rides” for 7 days and can be brought back.",
		Length: "%s, %s", SharePositions: "It shows where you rode, and where you live.", NothingFound: "nothing found",
	}
}

func englishRide() Ride {
	return Ride{
		Analysing: "Measuring the ride", RunsTitle: "What was found", RejectedTitle: "Found, but not counted",
		CoarseTiming: "Recorded in a browser, whose timing is coarser than the app's: launches can be off by about a tenth of a second.",
		Pairs:        "%d pairs, both directions", OnePair: "1 pair, both directions",
		NoPairs: "For drag, coast down on the same road in both directions.",
		NoRuns:  "Nothing to measure in this ride",
		NoRunsHint: "Stillair looks for full-throttle launches and roll-ons, hard stops, and rolling freely with the clutch in. " +
			"Ride a roll-on at least twice in the same gear. The guide shows how a coast-down goes.",
		NotesTitle: "About this recording",
		NoPair:     "no partner in the other direction", Towards: "heading %s", From: "%s to %s %s",
		Compass: [8]string{"north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"},
	}
}

func englishRun() Run {
	return Run{
		TimeAxis: "seconds", Measured: "measured", Fitted: "fitted: drag and rolling resistance",
		MarksTitle: "Times in seconds", FromMoving: "from moving off", AfterFoot: "after 1 ft",
		FootHint:   "“After 1 ft” starts the clock one foot (30 cm) on, as drag strips do.",
		SpeedThere: "%s %s there",
		Cautions:   "Use with caution", WhyNot: "Why it is not counted", Residual: "Residual: measured minus fitted",
		StillKept:   "It is kept, but no result uses it.",
		PullHint:    "Full throttle in one gear. Power at the road comes from these.",
		StopCaution: "The distance this bike needed to stop here. Never rely on it.",
	}
}

func englishLoad() Load {
	return Load{
		AllRuns: "All coast-downs", DragMeans: "How much air you push aside. At %s %s that takes %s.",
		RollingMeans: "The share of the weight lost to rolling: %s for %s.",
		SureOf:       "95 %% sure: %s to %s",
		PowerNeeded:  "Holding %s %s on the level in still air takes %s at the rear tyre.",
		RollScale:    "of the weight",
		CurvesHint:   "Each line is one coast-down, from the moment it passed %s %s. Dashed: calculated from the two values above.",
		MoreTitle:    "Are more pairs worth it?",
		MorePairs:    "Now ± %s %%. With %d more pairs about ± %s %%.",
		MorePair:     "Now ± %s %%. With one more pair about ± %s %%.",
		EnoughPairs: "± %s %% already. More pairs would hardly change that; " +
			"a calmer day or a higher starting speed would.",
		OnlyOne:    "One pair alone says little: wind looks just like drag. Two more pairs help a lot.",
		ShareTitle: "Force over speed", Notes: "Good to know",
		Setup: "Setup: %s", SinceSpeed: "seconds since %s %s", AirShare: "air and tyres", RollShare: "tyres alone",
		Assumed: "Air %s kg/m³, mass %s.",
	}
}

func englishCompare() Compare {
	return Compare{
		Title: "Compare", Empty: "Nothing to compare yet",
		EmptyHint: "Two setups of one bike, each with coast-downs in both directions on the same road, and this page shows which one has less drag.",
		HowTitle:  "How to make it count",
		How1:      "Change one thing only. The phone stays where it is.",
		How2:      "Ride A/B/B/A rather than A/A/B/B. Wind and tyres drift.",
		How3:      "Six pairs for each setup within an hour or so: three with the one, six with the other, three with the first.",
		How4:      "Name the setup while standing still: “Other setup now”.",
		Scale:     "change in %", Against: "%s, against %s", Delta: "absolute",
		MoreBy: "%s %% more", LessBy: "%s %% less", MoreDrag: "%s %% more drag", LessDrag: "%s %% less drag",
		MorePower: "%s %% more power", LessPower: "%s %% less power",
		NoneMatters: "No difference that matters", NotClear: "Not clear yet", NeverClear: "Not clear",
		Sure: "Sure (95 %%: %s to %s %%)", Estimate: "Estimate %s %% (95 %%: %s to %s %%)",
		MorePairs: "About %d more pairs needed.", OneMorePair: "About one more pair needed.", CalmerDay: "A calmer day helps more than more pairs.",
	}
}
