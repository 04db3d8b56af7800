package text

func germanEffects() Effects {
	return Effects{
		Title: "Was das auf der Straße heißt", At: "Bei",
		AirShare: "%s %% davon für den Luftwiderstand", PowerName: "Leistung bei %s",
		Slower: "Langsamer bei gleicher Leistung", Faster: "Schneller bei gleicher Leistung",
		Longer: "Länger auf %s", Shorter: "Kürzer auf %s",
		FuelName:  "Verbrauch bei %s",
		RangeName: "Reichweite mit %s", RangeFrom: "statt %s",
		TopByPower: "wo Leistung und Widerstand gleich sind", TopByGear: "begrenzt durch die höchste Drehzahl",
		TopBeyond: "mindestens: dort endeten die Versuche, höhere Geschwindigkeiten werden nicht geschätzt",
		Share:     "Angenommen ist, dass sich der Verbrauch je 1 % Leistung um 0,8 ± 0,1 % ändert, wie bei Motoren in Teillast üblich.",
		AboutFuel: "Benzin bei %s, etwa", FuelHow: "Der Benzinverbrauch ist für Motoren im Allgemeinen gerechnet. Gib bei der Maschine deinen Verbrauch bei gleichbleibendem Tempo ein, dann stehen hier dein eigener und die Reichweite.",
		NoTop: "Für das Höchsttempo mit beiden Aufbauten Vollgas bis dorthin. Auf gesperrter Strecke.",

		LimitLead:  "%s: vor allem %s.",
		LimitWords: "± %s %%", LimitHint: "Jeder Balken: wie viel vom ± bei CdA allein daher kommt.",
		SameAir:    "Die Leistung für gleichmäßiges Tempo gilt für alle in der Luft von %s; Höchstgeschwindigkeiten gelten jeweils in der Luft ihres Tages.",
		TimesTitle: "Zeiten",
		Which:      "Verglichene Fahrten", WhichHint: "Innerhalb einer Fahrt sind Straße und Wind gleich und heben sich auf. Zwischen Fahrten nicht: Die Antwort ist schwächer.",
		WhichDone: "Diese vergleichen", WhichNone: "Noch keine andere Fahrt ist ausgewertet. Öffne erst eine unter Ergebnisse.",
		Within:  "Innerhalb von %s",
		Reading: "Die Fahrten werden ausgewertet", CannotDo: "Das lässt sich nicht vergleichen: %s",
	}
}

func germanPlan() Plan {
	return Plan{
		Title: "Versuch planen", Lead: "Vor der Fahrt: Kann dieser Versuch zeigen, was du wissen willst?",
		Open: "Wie viele Versuche, in welcher Reihenfolge, auf wie langer Straße",
		What: "Welcher Unterschied zählt?", TopField: "Höchsttempo bisher, etwa", Faster: "Schneller um",
		Wind: "Wind", Winds: [3]string{"Still", "Leicht", "Frisch"},
		WindHint:  "Still: Rauch steigt gerade auf. Leicht: im Gesicht zu spüren. Frisch: Blätter bewegen sich dauernd.",
		WindWords: "Gerechnet mit Wind längs der Straße, der sich von Paar zu Paar um %s ändert.",
		From:      "Rollen ab", To: "Bis", Setups: "Wie viele Aufbauten?", Chance: "Wie sicher?",
		Basis:      "Gerechnet mit CdA %s m², Crr %s und %s.",
		BasisUsual: "Der Luftwiderstand deiner Maschine ist noch nicht gemessen, gerechnet wird mit einem durchschnittlichen: CdA %s m², Crr %s, %s.",
		Answer:     "%d Paare mit jedem Aufbau genügen", AnswerNot: "Dieser Plan kann es nicht zeigen, auch nicht mit %d Paaren je Aufbau",
		ChanceWords: "Der Unterschied zeigt sich in %s %% der Versuche.",
		ChanceDays:  "Der Unterschied zeigt sich in %s %% der Versuche: bei böigem Wind in %s %%, bei gleichmäßigem in %s %%.", Known: "Der Unterschied ist danach auf ± %s genau bekannt.",
		Smallest: "In %s %% der Versuche zeigt sich ein Unterschied ab %s.",
		Road:     "Straße, gerade und eben, mit Platz zum Anhalten", Time: "Dauer, etwa",
		Order: "In dieser Reihenfolge", Block: "%s: %d Paare", BlockOne: "%s: 1 Paar",
		OrderHint: "Ein Paar ist hin und zurück. In dieser Reihenfolge treffen Änderungen von Wind, Reifen und Öl alle Aufbauten gleich.",
		Help:      "Was helfen würde", HelpWith: "Dann zeigt er sich in %s %% der Versuche. Kleinster Unterschied, den der Versuch zeigen kann: %s.",
		AnswerOne: "%d Paare genügen", KnownOne: "Vom Rauschen her ist CdA danach auf ± %s genau bekannt.", WholeOne: "Was zu Reifen, Seitenwind und Haltung angenommen ist, macht daraus ± %s; daran ändern mehr Paare nichts.",
		Card: "Versuchskarte zum Drucken", CardHint: "Reihenfolge, Tempo, Straße mit Reserve, Prüfliste, Platz für Notizen",
		Like:       "Gerechnet mit Böen, Straße und Empfang der geöffneten Fahrt: für einen Tag und eine Straße wie dort.",
		CannotPlan: "Das lässt sich nicht planen: %s.", Calculating: "Wird gerechnet",
		Times: "Zeit", Over: "Welche Zeit?",
		Unsteady:     "Ohne Änderung streuen deine Versuche um",
		UnsteadyHint: "Wie warm der Motor ist, wann das Gas offen ist. Mit warmem Motor ist 1 % üblich.",
		Repeats:      "Ohne Änderung streuen deine Zeiten um",
		RepeatsHint:  "Kupplung, Schalten, Gas. Mit Übung sind 0,1 s beim Start üblich, 0,05 s beim Durchzug. Fahr vier und sieh nach.",
		RiddenCoasts: "Ausrollen mit gezogener Kupplung, hin und zurück.", RiddenPulls: "Vollgas in einem Gang von %s bis %s %s, hin und zurück.",
		RiddenLaunches: "Starts, %s, hin und zurück, gezählt nach 1 Fuß.", RiddenRollOns: "Vollgas in einem Gang, %s, hin und zurück.",
		BasisPower: "Mit %s an der Straße, wie gemessen.", BasisPowerUsual: "Mit etwa %s an der Straße (noch nicht gemessen).",
	}
}

func germanPower() Power {
	return Power{
		Open: "Kurven, Spitze, Normluft",
		Peak: "bei %s %s", PeakRPM: "bei %s %s, %s 1/min",
		AtEnd: "Dort endeten die Versuche: Die wahre Spitze kann darüber liegen.", PullsOne: "aus 1 Versuch", Pulls: "aus %d Versuchen",
		RPMAxis: "Drehzahl, 1/min", Over: "Über", OverSpeed: "Tempo", OverRPM: "Drehzahl", NoRPM: "Gib bei der Maschine die Gänge ein, dann steht sie auch über der Drehzahl.",
		Correction: "Luft", ToSAE: "SAE J1349", ToISO: "ISO 1585",
		Factor:      "Auf Normluft umgerechnet: jede Zahl × %s.",
		NoFactor:    "In der Luft des Tages, wie gefahren.",
		AirAssumed:  "Die Luft des Tages wurde nicht angegeben, der Faktor ist also geschätzt.",
		Bandwidth:   "Geglättet: Was schneller als %s Hz schwankt, ist nicht zu sehen.",
		GearUnknown: "Gang unbekannt",
		RevsFrom:    "Drehzahl aus %s",
		Spoken:      "Leistungskurve",
		PullTitle:   "Leistung dieses Aufbaus an der Straße", StopTitle: "Bremswege", StopRow: "kürzester von %d", StopHint: "Ab dem Moment, in dem die Bremse greift. Der Weg während der Reaktionszeit kommt dazu.",
	}
}
