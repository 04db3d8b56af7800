package text

// Drive is what is asked and said about a bike's drive, and what stands in the place
// of the guide to coast-downs where it never lets the wheel go.
type Drive struct {
	Name, Hint  string
	Kinds       [3]string // as sensors.Drives
	Title       string
	Belt, Motor string
	CanTitle    string
	Can         [3]string
	Limits      string
	NoPlan      string
}

func englishDrive() Drive {
	return Drive{
		Name: "Drive", Hint: "Only a bike with a clutch rolls free. For the others launches, roll-ons and power are measured, and no drag.",
		Kinds: [3]string{"Clutch", "Scooter belt", "Electric"},
		Title: "What this bike can be measured by",
		Belt: "The belt of a scooter cannot be let free: when you roll, the drive holds the wheel back as well as air and tyres. " +
			"How hard it does is not known, so no drag area and no rolling resistance come out.",
		Motor: "The motor of an electric bike turns with the wheel and may brake by itself: when you roll, it holds you back as well as air and tyres, even with regeneration set to none. " +
			"How hard it does is not known, so no drag area and no rolling resistance come out.",
		CanTitle: "What works",
		Can: [3]string{
			"Launches: from a standstill on full throttle to 60 km/h (40 mph) or more. Three at least.",
			"Roll-ons: full throttle from a steady speed on, at least twice each way.",
			"Power at the road: from roll-ons over a wide range of speeds. Air and tyres are those of an average bike, so the ± is wide; a change between two setups is seen more sharply.",
		},
		Limits: "Use a closed road, and leave your bike's safety systems as they are: switch nothing off to make it roll.",
		NoPlan: "This bike never rolls free, so its drag cannot be measured by coast-downs. Plan for power or times.",
	}
}

func germanDrive() Drive {
	return Drive{
		Name: "Antrieb", Hint: "Nur eine Maschine mit Kupplung rollt frei. Bei den anderen werden Starts, Durchzüge und Leistung gemessen, kein Luftwiderstand.",
		Kinds: [3]string{"Kupplung", "Rollerriemen", "Elektro"},
		Title: "Was sich an dieser Maschine messen lässt",
		Belt: "Der Riemen eines Rollers lässt sich nicht trennen: Beim Rollen bremst neben Luft und Reifen auch der Antrieb. " +
			"Wie stark, ist nicht bekannt; deshalb gibt es weder Luft- noch Rollwiderstand.",
		Motor: "Der Motor einer Elektromaschine dreht sich mit dem Rad und bremst oft von selbst: Beim Rollen bremst neben Luft und Reifen auch er, selbst wenn die Rekuperation auf null steht. " +
			"Wie stark, ist nicht bekannt; deshalb gibt es weder Luft- noch Rollwiderstand.",
		CanTitle: "Was geht",
		Can: [3]string{
			"Starts: aus dem Stand mit Vollgas bis 60 km/h oder mehr. Mindestens drei.",
			"Durchzüge: Vollgas aus gleichmäßigem Tempo, in jede Richtung mindestens zweimal.",
			"Leistung an der Straße: aus Durchzügen über viele Geschwindigkeiten. Luft und Reifen sind die einer durchschnittlichen Maschine, das ± ist deshalb groß; ein Unterschied zwischen zwei Aufbauten zeigt sich schärfer.",
		},
		Limits: "Nimm eine gesperrte Strecke und lass die Sicherheitssysteme der Maschine, wie sie sind: nichts abschalten, damit sie rollt.",
		NoPlan: "Diese Maschine rollt nie frei, ihr Luftwiderstand lässt sich nicht durch Ausrollen messen. Plane Leistung oder Zeiten.",
	}
}
