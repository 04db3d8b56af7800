package text

func englishBikes() Bikes {
	return Bikes{
		Title: "Bikes", Empty: "Which bike do you ride?",
		EmptyHint: "Drag and rolling resistance need its weight as ridden. A name and the weight are enough to begin.",
		New:       "Add a bike", Edit: "Bike", Name: "Name", NameHint: "What you call it",
		Mass: "Weight as ridden", MassHint: "Bike, you in full gear, fuel, luggage. 2 % too heavy makes drag 2 % too high.",
		MassSD: "Weight known to ±", MassSDHint: "A few for a truck scale, ten if added up from papers.",
		Weighed: "How you know", WeighedHint: "Truck scale, papers, guess",
		Rotating: "Wheels, as extra weight", RotatingHint: "The inertia of the spinning wheels. Empty: 4 % of the weight.",
		Gears: "Gears", GearsHint: "Engine speed at a given road speed, for power over engine speed.",
		AddGear: "Add a gear", GearSpeed: "rpm at %s %s",
		SetupsHint: "What you want to compare: panniers on and off, two screens, two jackets.",
		AddSetup:   "Add a setup", NewSetup: "New setup", SetupName: "Name", SetupNameHint: "Panniers on",
		Changed: "What is different", ChangedHint: "So that you still know next year",
		SetupMass: "Weight with this setup", SetupMassHint: "Empty: as the bike.",
		TyreFront: "Front tyre, cold", TyreRear: "Rear tyre, cold", Note: "Notes",
		Remove: "Remove this bike", RemoveHint: "Recorded rides keep their values.",
		NoMass: "no weight entered", NotNumber: "This is not a number.", OutOfRange: "Not possible: it must be from %s to %s.",
		NoName: "It needs a name.", Twice: "Another setup has this name.", Choose: "Ride this one",
		Optional: "Not needed to begin", EditSetup: "Setup",
	}
}

func englishGuide() Guide {
	return Guide{
		Title: "Your first coast-down", Step: "%d of %d",
		WhatTitle: "What happens",
		What: "You ride up to speed, pull the clutch in, and roll. Air and tyres slow you down: fast at first, then slower and slower. " +
			"From this curve Stillair calculates both.",
		RoadTitle: "Where and when",
		Road: "A straight of a kilometre or more, level, smooth, dry, with nobody behind you. A closed road is better. " +
			"Little wind: if leaves move all the time, come back another day.",
		BothTitle: "Why both directions",
		Both: "No road is level and no air is still. Rolled both ways on the same stretch, slope and wind push once for you and once against you, " +
			"and cancel. One way alone cannot be used.",
		DoTitle: "Each roll, step by step",
		Do: [5]string{
			"Sit as you always sit, and stay that way.",
			"Ride 10 km/h (6 mph) faster than the speed you want to roll from, within the limit.",
			"Clutch in, engine running, brake not pulled, two fingers ready on it.",
			"Hold still and straight until you are slow.",
			"Brake gently. Before the clutch comes out, choose the gear for the speed and bring up the revs. Turn round where it is safe and do the same again.",
		},
		StopTitle: "When to stop",
		Stop: "Always when something comes up: traffic, wind, a bad feeling. A roll cut short is simply not counted. " +
			"With the clutch in there is no engine braking: keep two fingers on the brake and leave more room to stop than you think you need. " +
			"If the bars start to wobble: light grip, no hard braking, sit up slowly.",
		AfterTitle: "How many",
		After: "Two pairs are a start. Six with each setup show a change of 5 % in a light wind. If the road is long enough, start each about 200 m farther on than the last, there and back: then bumps and dips are not mistaken for drag. Beyond that, a calmer day helps more. " +
			"The results show what went well, what did not, and whether more are worth it.",
		Caution:    "Rolling in neutral or with the clutch in is not allowed everywhere. If unsure, ask someone qualified.",
		Ready:      "I am ready",
		PictureAir: "air", PictureRoll: "tyres", PictureThere: "there", PictureBack: "and back",
	}
}

func englishAdvice() Advice {
	return Advice{
		Title: "How your coast-downs went", Good: "That worked", GoodHint: "%d of %d rolls count.",
		None: "No coast-down was found", NoneHint: "A roll counts from about ten seconds with the clutch in and no brake.",
		PairsDone: "%d pairs so far", OnePair: "1 pair so far", Unpaired: "%d rolls have no partner", OneUnpaired: "One roll has no partner",
		UnpairedHint: "Roll the same stretch in the other direction as well.",
		MoreWorth:    "%d more pairs are worth it: from ± %s %% to about ± %s %%.",
		OneMoreWorth: "One more pair is worth it: from ± %s %% to about ± %s %%.",
		MoreNot:      "More pairs are hardly worth it.", WentWrong: "What went wrong", DoBetter: "Next time",
		ShortBetter:  "Use a longer road.",
		BrakeBetter:  "Keep off the brake until the end. Begin where there is more room.",
		EngineBetter: "Pull the clutch all the way in. The engine must not brake.",
		SlopeBetter:  "Look for a more level stretch.",
		FixBetter:    "Keep the phone under open sky, not under a bridge or trees.",
		TurnBetter:   "Roll straight ahead. Choose a stretch without bends.",
		OtherBetter:  "Roll the same stretch again, in both directions.",
	}
}

func englishMore() More {
	return More{
		Title: "More", Units: "Units", Metric: "km/h", Imperial: "mph", Language: "Language",
		Look: "Appearance", LookSystem: "Automatic", LookLight: "Light", LookDark: "Dark",
		TextSize: "Text", TextNormal: "Normal", TextLarge: "Large", TextLargest: "Largest",
		Aloud: "Read results aloud", AloudHint: "When you stand, through the speaker or your helmet.", On: "On", Off: "Off",
		AirTitle: "Air today", AirHint: "From a weather report. Empty: a standard day, and results say so.",
		Temperature: "Temperature", Pressure: "Pressure", Humidity: "Humidity", Wind: "how much the wind varies",
		SafetyTitle: "Before anything else",
		Safety: "Riding can hurt you and others. Obey local law, use closed roads for full throttle and for rolling, " +
			"and ask qualified people when unsure. Never look at or touch the phone while moving.",
		PrivacyTitle: "Your data", Privacy: "Everything stays on this phone. Nothing is sent anywhere unless you share it.",
		AboutTitle: "About Stillair", About: "Open source, Apache License 2.0. Files are in open formats that other programs can read.",
		PaletteNote: "Colours by Okabe and Ito, chosen so that people with colour vision deficiency can tell them apart.",
		GuideAgain:  "Guide to the first coast-down", AccuracyTitle: "How accurate is this?",
		Accuracy: "Every figure comes with ±: the range that holds the true value 95 times out of 100, with wind, road, weight and receiver taken into account.",
		System:   "Automatic",
	}
}
