package text

// Relabel is the setups of a ride, named and weighed after it.
type Relabel struct {
	Title, Open, Hint, Span, AsRide, NoWeight, AskWeight    string // "%s to %s"; weight
	AtHalt, AtTime, Halt, When, WhenHint, WhenExample       string // "Standing, %s to %s"
	NoTime, Outside, Taken                                  string
	Tyres, TyresHint, Notes, WeightHint, Remove, RemoveHint string
}

func englishRelabel() Relabel {
	return Relabel{
		Title: "Setups of this ride", Open: "Name, split and weigh them",
		Hint: "What the bike was ridden with, and from when. The recording itself stays as it is; results are calculated with what you enter here.",
		Span: "%s to %s", AsRide: "%s, as entered for the ride", NoWeight: "weight not entered",
		AskWeight: "Did the weight change? 10 kg more that nobody entered looks like about 3 % less drag.",
		AtHalt:    "Another setup from a stop", AtTime: "Another setup from a given time", Halt: "Stood from %s to %s",
		When: "From, since the start", WhenHint: "Minutes and seconds", WhenExample: "12:30",
		NoTime: "Write minutes and seconds, as in 12:30.", Outside: "The recording does not go that far.", Taken: "A setup begins there already.",
		Tyres: "Tyres", TyresHint: "Which, at which pressure. Setups with the same entry are assumed to have the same rolling resistance.", Notes: "Notes",
		WeightHint: "Bike, rider, fuel and luggage with it. Empty: as entered for the ride.",
		Remove:     "Merge with the setup before", RemoveHint: "This setup is removed; the one before it continues.",
	}
}

func germanRelabel() Relabel {
	return Relabel{
		Title: "Aufbauten dieser Fahrt", Open: "Benennen, teilen, wiegen",
		Hint: "Womit gefahren wurde und ab wann. Die Aufzeichnung behält ihre Angaben; gerechnet wird mit dem, was hier steht.",
		Span: "%s bis %s", AsRide: "%s, wie für die Fahrt angegeben", NoWeight: "Gewicht nicht angegeben",
		AskWeight: "Hat sich das Gewicht geändert? 10 kg mehr, die niemand angibt, sehen aus wie rund 3 % weniger Luftwiderstand.",
		AtHalt:    "Anderer Aufbau ab einem Halt", AtTime: "Anderer Aufbau ab einer Zeit", Halt: "Gestanden von %s bis %s",
		When: "Ab, seit dem Start", WhenHint: "Minuten und Sekunden", WhenExample: "12:30",
		NoTime: "Schreib Minuten und Sekunden, wie 12:30.", Outside: "So weit reicht die Aufzeichnung nicht.", Taken: "Dort beginnt schon ein Aufbau.",
		Tyres: "Reifen", TyresHint: "Welche, mit welchem Druck. Für Aufbauten mit gleicher Angabe gilt derselbe Rollwiderstand.", Notes: "Notizen",
		WeightHint: "Motorrad, Fahrer, Benzin und Gepäck damit. Leer: wie für die Fahrt angegeben.",
		Remove:     "Mit dem Aufbau davor zusammenlegen", RemoveHint: "Dieser Aufbau entfällt; der davor gilt weiter.",
	}
}
