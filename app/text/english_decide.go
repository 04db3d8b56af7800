package text

func englishWorth() Worth {
	return Worth{
		Title: "What that means on the road", At: "At",
		AirShare: "%s %% of it for the air", PowerName: "Power at %s",
		Slower: "Slower on the same power", Faster: "Faster on the same power",
		Longer: "Longer over %s", Shorter: "Shorter over %s",
		FuelName:  "Fuel at %s",
		RangeName: "Range on %s", RangeFrom: "instead of %s",
		TopName: "Top speed, %s", TopByPower: "where power and resistance meet", TopByGear: "the engine's highest speed ends it",
		TopBeyond: "at least: the pulls ended there, and nothing is guessed beyond",
		Share:     "Fuel is taken to follow power by a share of 0.8 ± 0.1, as engines at part load do.",
		FuelHow:   "Tell your own consumption at a steady speed with the bike, and fuel and range follow.",
		NoTop:     "For top speed, ride full-throttle pulls up to it with both setups. On a closed course.",

		LimitTitle: "What limits the certainty", LimitLead: "%s: most of it is %s.",
		LimitWords: "± %s %%", LimitHint: "Each bar: how much of the ± of CdA stays from this alone.",
		Gusts: "gusts", Wind: "wind from pair to pair", Receiver: "the satellite receiver", Road: "bumps and dips of the road",
		Slope: "the slope of the road", Mass: "the weight", Air: "the density of the air",
		GustsHelp:    "A calmer hour helps most, early in the morning or late. Longer rolls help too.",
		WindHelp:     "More pairs, each there and back within minutes, or a calmer hour.",
		ReceiverHelp: "Open sky over the phone, and longer rolls. A receiver with more fixes a second helps.",
		RoadHelp:     "Roll the same stretch each time, and look for a smoother one.",
		SlopeHelp:    "Look for a more level stretch, and roll it both ways from the same points.",
		MassHelp:     "Weigh bike and rider as ridden, on a truck scale.",
		AirHelp:      "Tell temperature and pressure of the hour, or let the barometer measure.",
		Days:         "what differs from day to day", DaysHelp: "Ride both setups on one day, A, B, B, A on the same road: then days cancel.",
		SameAir:    "What a steady speed takes is told in the air of %s for all; top speeds each in the air of their own day.",
		PowerTitle: "Power at the road", TimesTitle: "Times",
		Which: "Rides compared", WhichHint: "Within one ride, road and wind are shared and cancel. Across rides that is not so: the answer is weaker.",
		WhichDone: "Compare these", WhichNone: "No other ride was measured yet. Open a ride in Results first.",
		DaysWeaker: "From different rides: weaker than A/B/B/A on one day.", Within: "Within %s",
		Reading: "Measuring the rides", CannotDo: "This cannot be compared: %s",
	}
}

func englishPlan() Plan {
	return Plan{
		Title: "Plan a test", Lead: "Before you ride: can this test see what you want to know?",
		Open: "How many coast-downs, in which order, on how long a road",
		What: "What change matters?", Drag: "Drag", TopSpeed: "Top speed", TopField: "It goes about", Faster: "Faster by",
		Wind: "Wind", Winds: [3]string{"Calm", "Light", "Breezy"},
		WindHint:  "Calm: smoke rises straight. Light: felt on the face. Breezy: leaves move all the time.",
		WindWords: "Reckoned: along the road it differs by %s m/s from pair to pair.",
		From:      "Roll from", To: "Down to", Setups: "How many setups?", Chance: "See it with a chance of",
		Basis:      "Reckoned with CdA %s m², Crr %s and %s.",
		BasisUsual: "No ride told your bike's drag yet, so a middling one is taken: CdA %s m², Crr %s, %s.",
		Answer:     "%d pairs with each setup will do", AnswerNot: "It cannot be done like this: even %d pairs with each setup are too few",
		ChanceWords: "It is seen with a chance of %s %%.", Known: "The difference will be known to ± %s %%.",
		Smallest: "Seen with a chance of %s %%: changes from %s %% on.",
		Road:     "Road, straight and level, with room to stop", Time: "Time, about",
		Order: "In this order", Block: "%s: %d pairs", BlockOne: "%s: 1 pair",
		OrderHint: "A pair is there and back. In this order a drift of wind, tyres or oil falls on all setups alike.",
		Help:      "What would help", HelpWith: "Then the chance is %s %%, and changes from %s %% on are seen.",
		Law:         "Local law and the traffic come before any plan. A closed road is best. If unsure, ask someone qualified.",
		Calmer:      "A calmer day, with half the wind",
		FasterStart: "Starting at %s %s, where law and road allow it", MorePairs: "%d pairs with each setup instead of %d",
		Often: "A receiver with ten fixes a second", CannotPlan: "This cannot be planned: %s", Reckoning: "Reckoning",
	}
}

func englishPower() Power {
	return Power{
		Title: "Power at the road", Open: "Curves, peak, standard air",
		Lead:    "What arrives at the rear tyre on full throttle, in still air on the level.",
		NoBench: "This is power at the road, from weight, acceleration and drag. It is no replacement for a dynamometer.",
		Peak:    "at %s %s", PeakRPM: "at %s %s, %s rpm",
		AtEnd: "The pulls ended there: the true peak may lie beyond.", PullsOne: "from 1 pull", Pulls: "from %d pulls",
		SpeedAxis: "Speed, %s", RPMAxis: "Engine speed, rpm", PowerAxis: "Power, %s",
		Over: "Over", OverSpeed: "Road speed", OverRPM: "Engine speed", NoRPM: "Tell the gears with the bike, and it stands over engine speed too.",
		Correction: "Air", AsRidden: "As ridden", ToSAE: "SAE J1349", ToISO: "ISO 1585",
		Factor:     "Taken to standard air: every figure × %s.",
		FactorFar:  "The day was further from standard air than the standard is meant for (7 %).",
		NoFactor:   "In the air of the day, as ridden.",
		AirAssumed: "The air of the day was not told, so the factor is a guess.",
		Bandwidth:  "Smoothed: dips and bumps quicker than %s Hz do not show.",
		GearKnown:  "gear %s", GearUnknown: "gear not known",
		RevsVibration: "engine speed from vibration", RevsSound: "engine speed from sound", RevsBoth: "engine speed from vibration and sound",
		Spoken:    "Power curve",
		PullTitle: "What this setup puts on the road", SetupAs: "as ridden",
		StopTitle: "Stopping distances", StopRow: "shortest of %d", StopHint: "From the first bite of the brake. What you ride while you react comes on top.",
	}
}
