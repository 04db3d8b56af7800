package text

// Passes is what is said about flying passes.
type Passes struct {
	Title, Safety, Hint string
	Legs                string // the two directions with their speeds, and the unit
	Apart, Best         string
	NotCounted          string
	Found, OneFound     string
}

func englishPasses() Passes {
	return Passes{
		Title:  "Flying passes, mean of both directions",
		Safety: "Leave the phone alone while you ride.",
		Hint:   "The same road both ways at a steady speed.",
		Legs:   "%s there, %s back", Apart: "%s apart", Best: "fastest of %d",
		NotCounted: "Not counted", Found: "%d flying passes", OneFound: "1 flying pass",
	}
}

func germanPasses() Passes {
	return Passes{
		Title:  "Messfahrten mit fliegendem Start, Mittel beider Richtungen",
		Safety: "Das Telefon bleibt unterwegs unberührt.",
		Hint:   "Dieselbe Straße in beiden Richtungen mit gleichbleibendem Tempo.",
		Legs:   "hin %s, zurück %s", Apart: "%s auseinander", Best: "schnellste von %d",
		NotCounted: "Zählt nicht", Found: "%d Messfahrten", OneFound: "1 Messfahrt",
	}
}
