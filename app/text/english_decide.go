package text

func englishEffects() Effects {
	return Effects{
		Title: "What that means on the road", At: "At",
		AirShare: "%s %% of it for air drag", PowerName: "Power at %s",
		Slower: "Slower with the same power", Faster: "Faster with the same power",
		Longer: "Longer over %s", Shorter: "Shorter over %s",
		FuelName:  "Fuel at %s",
		RangeName: "Range on %s", RangeFrom: "instead of %s",
		TopByPower: "where power and resistance balance", TopByGear: "limited by the engine's highest speed",
		TopBeyond: "at least: the pulls ended there, and higher speeds are not estimated",
		Share:     "For each 1 % of power, fuel is assumed to change by 0.8 ± 0.1 %, as usual for engines at part load.",
		AboutFuel: "Petrol at %s, about", FuelHow: "Petrol is calculated for engines in general. Enter your consumption at a steady speed with the bike to see your own, and the range.",
		NoTop: "For top speed, ride full-throttle pulls up to it with both setups. On a closed course.",

		LimitLead:  "%s: mostly %s.",
		LimitWords: "± %s %%", LimitHint: "Each bar: how much of the ± of CdA comes from this alone.",
		SameAir:    "The power for a steady speed is given in the air of %s for all; each top speed in the air of its own day.",
		TimesTitle: "Times",
		Which:      "Rides compared", WhichHint: "Within one ride, road and wind are shared and cancel. Across rides they do not: the answer is weaker.",
		WhichDone: "Compare these", WhichNone: "No other ride has been measured yet. Open a ride in Results first.",
		Within:  "Within %s",
		Reading: "Measuring the rides", CannotDo: "This cannot be compared: %s",
	}
}

func englishPlan() Plan {
	return Plan{
		Title: "Plan a test", Lead: "Before you ride: can this test show what you want to know?",
		Open: "How many runs, in which order, on how long a road",
		What: "What change matters?", TopField: "Top speed so far, about", Faster: "Faster by",
		Wind: "Wind", Winds: [3]string{"Calm", "Light", "Breezy"},
		WindHint:  "Calm: smoke rises straight. Light: felt on the face. Breezy: leaves move all the time.",
		WindWords: "Calculated with a wind along the road that changes by %s from pair to pair.",
		From:      "Roll from", To: "Down to", Setups: "How many setups?", Chance: "How sure?",
		Basis:      "Calculated with CdA %s m², Crr %s and %s.",
		BasisUsual: "Your bike's drag is not measured yet, so an average bike's is used: CdA %s m², Crr %s, %s.",
		Answer:     "%d pairs with each setup will do", AnswerNot: "This plan cannot show it, even with %d pairs for each setup",
		ChanceWords: "The change shows up in %s %% of tests.",
		ChanceDays:  "The change shows up in %s %% of tests: in %s %% on a gusty day, in %s %% on a calm one.", Known: "The difference will be known to ± %s.",
		Smallest: "In %s %% of tests a change of %s or more shows up.",
		Road:     "Road, straight and level, with room to stop", Time: "Time, about",
		Order: "In this order", Block: "%s: %d pairs", BlockOne: "%s: 1 pair",
		OrderHint: "A pair is there and back. In this order a drift of wind, tyres or oil falls on all setups alike.",
		Help:      "What would help", HelpWith: "Then it shows up in %s %% of tests. Smallest change the test can show: %s.",
		AnswerOne: "%d pairs will do", KnownOne: "From noise alone CdA will be known to ± %s.", WholeOne: "Assumptions about tyres, cross-wind and posture make it ± %s in all; more pairs do not change that.",
		Card: "Test card to print", CardHint: "Order, speeds, road with margins, checks, room for notes",
		Like:       "Calculated with gusts, road and receiver as in the ride that is open: for a day and a road like those.",
		CannotPlan: "This cannot be planned: %s.", Calculating: "Calculating",
		Times: "Time", Over: "Which time?",
		Unsteady:     "With nothing changed, your pulls differ by",
		UnsteadyHint: "How warm the engine is, when the throttle is open. With a warm engine 1 % is usual.",
		Repeats:      "With nothing changed, your times differ by",
		RepeatsHint:  "Clutch, gear changes, throttle. With practice 0.1 s is usual for a launch, 0.05 s for a roll-on. Ride four and see.",
		RiddenCoasts: "Rolling free, clutch in, there and back.", RiddenPulls: "Full throttle in one gear from %s to %s %s, there and back.",
		RiddenLaunches: "Launches, %s, there and back, timed after 1 ft.", RiddenRollOns: "Full throttle in one gear, %s, there and back.",
		BasisPower: "With %s at the road, as measured.", BasisPowerUsual: "With about %s at the road (not measured yet).",
	}
}

func englishPower() Power {
	return Power{
		Open: "Curves, peak, standard air",
		Peak: "at %s %s", PeakRPM: "at %s %s, %s rpm",
		AtEnd: "The pulls ended there: the true peak may lie beyond.", PullsOne: "from 1 pull", Pulls: "from %d pulls",
		RPMAxis: "Engine speed, rpm", Over: "Over", OverSpeed: "Road speed", OverRPM: "Engine speed", NoRPM: "Enter the gears with the bike to see it over engine speed too.",
		Correction: "Air", ToSAE: "SAE J1349", ToISO: "ISO 1585",
		Factor:      "Corrected to standard air: every figure × %s.",
		NoFactor:    "In the air of the day, as ridden.",
		AirAssumed:  "The air of the day was not entered, so the factor is an estimate.",
		Bandwidth:   "Smoothed: variations faster than %s Hz do not show.",
		GearUnknown: "gear not known",
		RevsFrom:    "engine speed from %s",
		Spoken:      "Power curve",
		PullTitle:   "Power of this setup at the road", StopTitle: "Stopping distances", StopRow: "shortest of %d", StopHint: "From the moment the brake bites. The distance ridden during the reaction time comes on top.",
	}
}
