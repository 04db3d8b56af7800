package text

// English is the book the others are translated from.
func English() *Book {
	return &Book{
		Tag: "en", Language: "English", DateTime: "Mon 2 Jan, 15:04",
		Days:       [7]string{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"},
		Months:     [12]string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"},
		Horsepower: "hp",
		Common: Common{
			Back: "Back", Next: "Next", Done: "Done", Save: "Save", Undo: "Undo", Close: "Close",
			More:    "More",
			TabRide: "Ride", TabResults: "Results", TabBikes: "Bikes", TabCompare: "Compare", TabMore: "More",
			Unknown: "unknown",
			Minutes: "%d min", Hours: "%d h %02d min", Seconds: "%s s",
			PlusMinus: "± is the range that holds the true value 95 times out of 100.",
			Invented:  "Invented ride, to try things out",
		},
		Ready:      englishReady(),
		Senses:     englishSenses(),
		Hearing:    englishHearing(),
		Background: englishBackground(),
		Trial:      englishTrial(),
		Riding:     englishRiding(),
		Rides:      englishRides(),
		Ride:       englishRide(),
		Run:        englishRun(),
		Load:       englishLoad(),
		Bikes:      englishBikes(),
		Compare:    englishCompare(),
		Guide:      englishGuide(),
		Advice:     englishAdvice(),
		More:       englishMore(),
		Worth:      englishWorth(),
		Plan:       englishPlan(),
		Power:      englishPower(),
		Parts:      englishParts(),
		Relabel:    englishRelabel(),
		Deleted:    englishDeleted(),
		Offer:      englishOffer(),
		Trouble:    englishTrouble(),
		said:       map[string]string{},
	}
}
