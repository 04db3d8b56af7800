package text

func englishReady() Ready {
	return Ready{
		Title: "Before the ride", BikeNone: "No bike yet", BikeNoneHint: "Enter the weight for accurate results",
		SetupNone: "no setup named", Mass: "%s as ridden",
		PhoneTitle: "The phone", CheckTitle: "You and the road", CheckCount: "%d of %d",
		Place: "A good place", PlaceWhy: "Long, straight, level, dry, with room to stop. A closed road is best.",
		Law: "Allowed here", LawWhy: "Speed limits and local law come before any measurement.",
		Traffic: "Nobody nearby", TrafficWhy: "No traffic behind you when you slow down without a brake light.",
		Weather: "Calm and dry", WeatherWhy: "Wind makes results more uncertain than anything else.",
		Tyres: "Tyres warm", TyresWhy: "Ten minutes of riding first, pressures set cold.",
		Fixed: "Phone firmly fixed", FixedWhy: "On the bars, or tight in a pocket. It must not slip.",
		Start: "Start recording", StartGood: "Then put the phone away. All runs are found automatically.",
		StartRough: "You can start now. Wait where you are until the satellites are good.",
		Permit:     "Let Stillair use the sensors",
		FirstTime:  "Your first coast-down?", FirstTimeHint: "Six short pages, to read before you ride",
	}
}

func englishSenses() Senses {
	return Senses{
		Satellites: "Satellites", Motion: "Motion", Turn: "Turning", Storage: "Storage",
		FixGood: "good: within %s, %s a second", FixFair: "fair: within %s. Wait a little, under open sky",
		FixWait:    "searching. Go under open sky",
		MotionGood: "good: %s a second", MotionCoarse: "%s a second: enough, times a little less accurate",
		MotionFew: "only %s a second: times get less precise. Close other apps and turn battery saving off",
		FixFew:    "only one every %s s: short runs are missed. Turn battery saving off, go under open sky",
		NoMotion:  "Speeds still work, times get less precise", NoFix: "Nothing can be measured",
		MotionWait: "waiting for the first sample", PressureGood: "good", PressureNone: "none. Results do not need it",
		Asking:        "the phone is asking you",
		DeniedFix:     "not allowed. Nothing can be measured without them",
		DeniedMotion:  "not allowed. Speeds still work, times get less precise",
		MissingFix:    "not available on this phone. Nothing can be measured",
		MissingMotion: "not available on this phone. Speeds still work, times get less precise",
		MissingTurn:   "none. Works without one, a little less accurate on slopes",
		StoragePlenty: "room for days of riding",
		MotionSilent:  "no more data. Speeds still work, times get less precise", FixSilent: "no more data. Everything else is still recorded",
		StorageGood: "room for %s of riding", StorageLow: "only room for %s. Delete old rides for good",
		StorageFull: "full. Delete old rides for good", StorageUnknown: "the phone does not say how much room is left",
		Gaps: "%d gaps, the longest %s s", OneGap: "1 gap of %s s", NoGaps: "no gaps", Rate: "%s a second, %s",
		Clocks: "The two clocks", LagFound: "GPS runs %s ± %s s behind the motion sensors. Measured in this ride and corrected.",
		LagAssumed: "How far GPS runs behind the motion sensors could not be measured in this ride; %s s is assumed.",
		LagLive:    "GPS runs %s ± %s s behind the motion sensors", Smoothing: "The receiver itself smooths speed over about %s s.",
	}
}

func englishRiding() Riding {
	return Riding{
		Locked: "Locked while you ride", Standing: "Standing", Searching: "Searching for satellites",
		NoSpeed: "No speed just now", Recorded: "%s recorded", Safe: "safe on the phone",
		Unsafe:       "not saved for %s s",
		NoticedTitle: "Noticed", NothingYet: "Ride as you like. Nothing to do here.",
		SawLaunch: "Launch to %s %s", SawRollOn: "Roll-on %s to %s %s", SawCoast: "Coast-down %s to %s %s",
		SawStop: "Stop from %s %s", LastTitle: "Since your last stop", LastNone: "Nothing measured since your last stop.",
		Say: "Read it aloud", Setup: "Other setup now", End: "Hold to end the ride",
		Closed: "The ride is saved.", ClosedStood: "You stood still for a while, so the recording was ended. It is saved.",
		ClosedNever:  "Nothing moved for an hour, so the recording was ended.",
		ClosedSource: "The sensors stopped. Everything up to then is saved.",
		ClosedRoom:   "The phone is full, so the recording was ended. It is saved.",
		ClosedTorn:   "The recording has ended, but the phone did not store its end. Everything before is kept. Save the file that you are offered now: it holds the whole ride.",
		Copy:         "Save a copy now", CopyApp: "The ride is only in this app: removing the app or clearing its data deletes it.",
		CopyKept:      "The ride is only in this browser. The browser has promised not to delete it on its own, but clearing its data does.",
		CopyClearable: "The ride is only in this browser. It may delete it when the phone runs out of room, Safari also after seven days without a visit unless the app is on the home screen. Clearing the browser's data deletes it too.",
		SpokenLaunch:  "%s in %s seconds.", SpokenCoast: "Coast-down from %s to %s.",
		SoFarTitle: "The test so far", NextDone: "Certain already. One more pair with each would take ± %s to about ± %s %%.",
		NextWorth:  "One more pair with each is worth it: it settles this in about %d of 10 cases (± %s to about ± %s %%).",
		NextNot:    "One more pair with each settles this in only about %d of 10 cases (± %s to about ± %s %%).",
		NextHardly: "One more pair alone will not settle this (± %s to about ± %s %%).",
		WeightAsk:  "Did the weight change with %s?", WeightSame: "No, same weight", WeightOther: "Yes, enter it", WeightField: "Bike, rider, fuel and luggage now",
	}
}

func englishTrouble() Trouble {
	return Trouble{
		Recovered:        "A recording was cut off. %s of it is safe.",
		RecoveredHint:    "It is in the list with all others. Results work as usual.",
		RecoveredDamaged: "%s s inside it are missing.",
		Busy:             "Stillair is already recording, in another window or tab. End that one first.",
		NoRoom:           "There is too little room left on the phone to record a ride. Delete old rides, and remove them for good under “Deleted rides”.",
		StorageFails:     "The phone is not accepting the data right now. It is kept in memory and saving is tried again.",
		StorageLost:      "The phone accepted no data for so long that part of the ride is lost.",
		CannotRecord:     "The phone does not allow the ride to be stored, so it cannot be recorded: %s",
		CannotRead:       "This file cannot be read: %s", SensorsFailed: "The sensors stopped with an error: %s",
		AnalysisFailed: "This ride could not be measured: %s",
		NoRide:         "There is no ride in this recording: it needs satellite speed, and motion if the phone has it.",
		NewerFile:      "A file is left as it is, because it cannot be read: %s",
		ScreenMayGoOff: "The phone may switch its screen off. Set it to stay on, or the recording pauses.",
		ShareFailed:    "Sharing did not work: %s",
	}
}
