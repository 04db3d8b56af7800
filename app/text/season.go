package text

// Season is the joint result of all rides of a bike.
type Season struct {
	Title, Open, Empty, EmptyHint, Bike, NoBike                    string
	Rides, OneRide, Runs, OneRun                                   string
	PartsTitle, PartsHint, MostDrag, NoneSure, Unclear, OneSetup   string
	MoreRides, OneMoreRide, SideBySide                             string
	SetupsTitle, Mean, Best, Repeats, Trend, NoTrend, Luck, NoLuck string
	DragOver, NameParts, Day, Band, ByRide                         string
	TwoWayTitle, TwoWayHint, Apart, BestOf                         string
	BatteryTitle, BatteryHint, RangeOf                             string
	RidesTitle, Density, LeftTitle, Left                           string
}

func englishSeason() Season {
	return Season{
		Title: "Season", Open: "Repeatability, trends and the drag of each part, from all your rides",
		Empty: "Nothing measured yet", EmptyHint: "Record rides with coast-downs, launches or roll-ons. What they show together then appears here.",
		Bike: "Bike", NoBike: "Bike without a name",
		Rides: "%d rides", OneRide: "1 ride", Runs: "%d runs", OneRun: "1 run",
		PartsTitle: "What each part costs",
		PartsHint:  "Compared with %s (CdA %s). All rides count together, so parts never ridden on the same ride are compared through others.",
		MostDrag:   "What the parts cost in drag", NoneSure: "No part makes a sure difference yet.", Unclear: "Not clear yet: %s",
		OneSetup:  "To see what a part costs, ride with and without it on one day.",
		MoreRides: "About %d more rides with it needed.", OneMoreRide: "About one more ride with it needed.",
		SideBySide:  "Riding with and without it on one day helps more than further rides.",
		SetupsTitle: "Measured with each setup", Mean: "Mean (%s)", Best: "Best %s, typical %s",
		Repeats: "Spread between measurements: %s (1 standard deviation), expected %s.",
		Trend:   "Trend: %s in 30 days (%s)", NoTrend: "No trend visible (%s)", Luck: "p = %s", NoLuck: "p < %s",
		DragOver: "CdA, %s", NameParts: "Name a setup by its parts, with plus signs between: “tall screen + panniers”.", Day: "%d %s", Band: "95 % band", ByRide: "from differences between rides",
		TwoWayTitle: "Both directions, mean of two", TwoWayHint: "Two runs in opposite directions within an hour: most of the wind and the slope cancel in their mean.",
		Apart: "runs %d and %d, %s apart", BestOf: "best of %d",
		BatteryTitle: "From the battery at a steady %s",
		BatteryHint:  "On the level in still air, from the latest ride with each setup. It is assumed that %s of the battery's energy reaches the road; lights and heated grips are not included.",
		RangeOf:      "%s from %s",
		RidesTitle:   "The rides", Density: "Density altitude %s", LeftTitle: "Left out", Left: "%s: %s",
	}
}

func germanSeason() Season {
	return Season{
		Title: "Saison", Open: "Wiederholbarkeit, Trends und der Luftwiderstand jedes Teils, aus allen Fahrten",
		Empty: "Noch nichts gemessen", EmptyHint: "Zeichne Fahrten mit Ausrollen, Starts oder Durchzügen auf. Was sie zusammen zeigen, steht dann hier.",
		Bike: "Maschine", NoBike: "Maschine ohne Namen",
		Rides: "%d Fahrten", OneRide: "1 Fahrt", Runs: "%d Läufe", OneRun: "1 Lauf",
		PartsTitle: "Was jedes Teil kostet",
		PartsHint:  "Verglichen mit %s (CdA %s). Alle Fahrten zählen zusammen; Teile, die nie auf derselben Fahrt dabei waren, werden über andere verglichen.",
		MostDrag:   "Was die Teile an Luftwiderstand kosten", NoneSure: "Noch macht kein Teil einen sicheren Unterschied.", Unclear: "Noch unklar: %s",
		OneSetup:  "Um zu sehen, was ein Teil kostet: an einem Tag mit ihm und ohne es fahren.",
		MoreRides: "Etwa %d weitere Fahrten damit nötig.", OneMoreRide: "Etwa eine weitere Fahrt damit nötig.",
		SideBySide:  "An einem Tag mit und ohne zu fahren hilft mehr als weitere Fahrten.",
		SetupsTitle: "Mit jedem Aufbau gemessen", Mean: "Mittel (%s)", Best: "Bester Wert %s, typisch %s",
		Repeats: "Streuung zwischen den Messungen: %s (1 Standardabweichung), erwartet %s.",
		Trend:   "Trend: %s in 30 Tagen (%s)", NoTrend: "Kein Trend zu sehen (%s)", Luck: "p = %s", NoLuck: "p < %s",
		DragOver: "CdA, %s", NameParts: "Nenne einen Aufbau nach seinen Teilen, mit Pluszeichen dazwischen: „hohe Scheibe + Koffer“.", Day: "%d. %s", Band: "95-%-Band", ByRide: "durch Unterschiede zwischen Fahrten",
		TwoWayTitle: "Beide Richtungen, Mittel aus zweien", TwoWayHint: "Zwei Läufe in Gegenrichtung innerhalb einer Stunde: Wind und Gefälle heben sich in ihrem Mittel größtenteils auf.",
		Apart: "Läufe %d und %d, %s auseinander", BestOf: "bestes von %d",
		BatteryTitle: "Aus der Batterie bei gleichbleibend %s",
		BatteryHint:  "Auf ebener Straße ohne Wind, aus der letzten Fahrt mit jedem Aufbau. Angenommen ist, dass %s der Energie auf die Straße kommen; Licht und Heizgriffe sind nicht dabei.",
		RangeOf:      "%s mit %s",
		RidesTitle:   "Die Fahrten", Density: "Dichtehöhe %s", LeftTitle: "Ausgelassen", Left: "%s: %s",
	}
}
