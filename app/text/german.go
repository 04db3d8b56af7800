package text

// German is the second complete book.
func German() *Book {
	return &Book{
		Tag: "de", Language: "Deutsch", DateTime: "Mon 2. Jan, 15:04",
		Days:       [7]string{"So", "Mo", "Di", "Mi", "Do", "Fr", "Sa"},
		Months:     [12]string{"Jan", "Feb", "Mär", "Apr", "Mai", "Jun", "Jul", "Aug", "Sep", "Okt", "Nov", "Dez"},
		Horsepower: "PS",
		Common: Common{
			Back: "Zurück", Next: "Weiter", Done: "Fertig", Save: "Sichern", Undo: "Rückgängig",
			Close: "Schließen", More: "Mehr",
			TabRide: "Fahrt", TabResults: "Ergebnisse", TabBikes: "Maschinen", TabCompare: "Vergleich", TabMore: "Mehr",
			Unknown: "unbekannt",
			Minutes: "%d min", Hours: "%d h %02d min", Seconds: "%s s",
			PlusMinus: "± ist der Bereich, in dem der wahre Wert in 95 von 100 Fällen liegt.",
			Invented:  "Erfundene Fahrt, zum Ausprobieren",
		},
		Ready:      germanReady(),
		Senses:     germanSenses(),
		Hearing:    germanHearing(),
		Background: germanBackground(),
		Trial:      germanTrial(),
		Riding:     germanRiding(),
		Rides:      germanRides(),
		Ride:       germanRide(),
		Run:        germanRun(),
		Load:       germanLoad(),
		Bikes:      germanBikes(),
		Compare:    germanCompare(),
		Guide:      germanGuide(),
		Advice:     germanAdvice(),
		More:       germanMore(),
		Worth:      germanWorth(),
		Plan:       germanPlan(),
		Power:      germanPower(),
		Parts:      germanParts(),
		Relabel:    germanRelabel(),
		Deleted:    germanDeleted(),
		Offer:      germanOffer(),
		Trouble:    germanTrouble(),
		said:       germanSaid(),
	}
}
