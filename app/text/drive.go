package text

// Drive is the question about a bike's drive, and what replaces the guide to
// coast-downs for a bike that never rolls free.
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
		Name: "Drive", Hint: "Only a bike with a clutch rolls free. For the others launches, roll-ons and power are measured, but not drag.",
		Kinds: [3]string{"Clutch", "Scooter belt", "Electric"},
		Title: "What can be measured on this bike",
		Belt: "The belt drive of a scooter cannot be disengaged: when you roll, it slows the wheel in addition to air and tyres. " +
			"By how much is not known, so neither drag area nor rolling resistance can be measured.",
		Motor: "The motor of an electric bike turns with the wheel and may brake by itself: when you roll, it slows you in addition to air and tyres, even with regeneration set to none. " +
			"By how much is not known, so neither drag area nor rolling resistance can be measured.",
		CanTitle: "What works",
		Can: [3]string{
			"Launches: from a standstill on full throttle to 60 km/h (40 mph) or more. At least three.",
			"Roll-ons: full throttle from a steady speed, at least twice each way.",
			"Power at the road: from roll-ons over a wide range of speeds. Air and tyres are those of an average bike, so the ± is wide; a difference between two setups shows more clearly.",
		},
		Limits: "Use a closed road, and leave your bike's safety systems as they are: do not switch anything off to make it roll.",
		NoPlan: "This bike never rolls free, so its drag cannot be measured by coast-downs. Plan for power or times.",
	}
}

func germanDrive() Drive {
	return Drive{
		Name: "Antrieb", Hint: "Nur eine Maschine mit Kupplung rollt frei. Bei den anderen werden Starts, Durchzüge und Leistung gemessen, aber kein Luftwiderstand.",
		Kinds: [3]string{"Kupplung", "Rollerriemen", "Elektro"},
		Title: "Was sich an dieser Maschine messen lässt",
		Belt: "Der Riemen eines Rollers lässt sich nicht trennen: Beim Rollen bremst neben Luft und Reifen auch der Antrieb. " +
			"Wie stark, ist nicht bekannt; deshalb lassen sich weder Luft- noch Rollwiderstand messen.",
		Motor: "Der Motor einer Elektromaschine dreht sich mit dem Rad und bremst oft von selbst: Beim Rollen bremst neben Luft und Reifen auch er, selbst wenn die Rekuperation auf null steht. " +
			"Wie stark, ist nicht bekannt; deshalb lassen sich weder Luft- noch Rollwiderstand messen.",
		CanTitle: "Was geht",
		Can: [3]string{
			"Starts: aus dem Stand mit Vollgas bis 60 km/h oder mehr. Mindestens drei.",
			"Durchzüge: Vollgas aus gleichmäßigem Tempo, in jede Richtung mindestens zweimal.",
			"Leistung an der Straße: aus Durchzügen über viele Geschwindigkeiten. Luft und Reifen sind die einer durchschnittlichen Maschine, das ± ist deshalb groß; ein Unterschied zwischen zwei Aufbauten zeigt sich deutlicher.",
		},
		Limits: "Nimm eine gesperrte Strecke und lass die Sicherheitssysteme der Maschine, wie sie sind: nichts abschalten, damit sie rollt.",
		NoPlan: "Diese Maschine rollt nie frei, ihr Luftwiderstand lässt sich nicht durch Ausrollen messen. Plane Leistung oder Zeiten.",
	}
}
