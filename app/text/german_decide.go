package text

func germanWorth() Worth {
	return Worth{
		Title: "Was das auf der Straße heißt", At: "Bei",
		AirShare: "%s %% davon für die Luft", PowerName: "Leistung bei %s",
		Slower: "Langsamer bei gleicher Leistung", Faster: "Schneller bei gleicher Leistung",
		Longer: "Länger auf %s", Shorter: "Kürzer auf %s",
		FuelName:  "Verbrauch bei %s",
		RangeName: "Reichweite mit %s", RangeFrom: "statt %s",
		TopName: "Höchsttempo, %s", TopByPower: "wo Leistung und Widerstand gleich sind", TopByGear: "die höchste Drehzahl beendet es",
		TopBeyond: "mindestens: dort endeten die Versuche, darüber wird nichts geraten",
		Share:     "Der Verbrauch folgt der Leistung mit einem Anteil von 0,8 ± 0,1, wie bei Motoren in Teillast üblich.",
		FuelHow:   "Nenne bei der Maschine deinen Verbrauch bei gleichbleibendem Tempo, dann stehen hier Verbrauch und Reichweite.",
		NoTop:     "Für das Höchsttempo mit beiden Aufbauten Vollgas bis dorthin. Auf gesperrter Strecke.",

		LimitTitle: "Was die Sicherheit begrenzt", LimitLead: "%s: am meisten macht %s.",
		LimitWords: "± %s %%", LimitHint: "Jeder Balken: wie viel vom ± bei CdA allein daher kommt.",
		Gusts: "Böen", Wind: "Wind von Paar zu Paar", Receiver: "der Satellitenempfang", Road: "Wellen der Straße",
		Slope: "die Neigung der Straße", Mass: "das Gewicht", Air: "die Dichte der Luft",
		GustsHelp:    "Am meisten hilft eine ruhigere Stunde, früh oder spät am Tag. Länger rollen hilft auch.",
		WindHelp:     "Mehr Paare, jedes binnen Minuten hin und zurück, oder eine ruhigere Stunde.",
		ReceiverHelp: "Freier Himmel über dem Telefon und länger rollen. Ein Empfänger mit mehr Werten je Sekunde hilft.",
		RoadHelp:     "In jedem Paar rund 200 m später auskuppeln als im vorigen, hin wie zurück, und mit jedem Aufbau an denselben Stellen. Ein glatteres Stück hilft auch.",
		SlopeHelp:    "Ein ebeneres Stück suchen und in beide Richtungen von denselben Punkten rollen.",
		MassHelp:     "Maschine und Fahrer fahrfertig auf einer Fahrzeugwaage wiegen.",
		AirHelp:      "Temperatur und Luftdruck der Stunde angeben, oder das Barometer messen lassen.",
		Days:         "was von Tag zu Tag anders ist", DaysHelp: "Fahr beide Aufbauten an einem Tag, A, B, B, A auf derselben Straße: dann heben sich die Tage auf.",
		SameAir:    "Was gleichmäßiges Tempo kostet, ist für alle in der Luft von %s gesagt; Höchstgeschwindigkeiten je in der Luft ihres Tages.",
		PowerTitle: "Leistung an der Straße", TimesTitle: "Zeiten",
		Which: "Verglichene Fahrten", WhichHint: "Innerhalb einer Fahrt sind Straße und Wind gleich und heben sich auf. Zwischen Fahrten nicht: Die Antwort ist schwächer.",
		WhichDone: "Diese vergleichen", WhichNone: "Noch keine andere Fahrt ist ausgewertet. Öffne erst eine unter Ergebnisse.",
		DaysWeaker: "Aus verschiedenen Fahrten: schwächer als A/B/B/A an einem Tag.", Within: "Innerhalb von %s",
		Reading: "Die Fahrten werden ausgewertet", CannotDo: "Das lässt sich nicht vergleichen: %s",
	}
}

func germanPlan() Plan {
	return Plan{
		Title: "Versuch planen", Lead: "Vor der Fahrt: Kann dieser Versuch zeigen, was du wissen willst?",
		Open: "Wie viele Versuche, in welcher Folge, auf wie langer Straße",
		What: "Welcher Unterschied zählt?", Drag: "Luftwiderstand", TopSpeed: "Höchsttempo", TopField: "Sie läuft etwa", Faster: "Schneller um",
		Wind: "Wind", Winds: [3]string{"Still", "Leicht", "Frisch"},
		WindHint:  "Still: Rauch steigt gerade auf. Leicht: im Gesicht zu spüren. Frisch: Blätter bewegen sich dauernd.",
		WindWords: "Gerechnet mit Wind längs der Straße, der sich von Paar zu Paar um %s ändert.",
		From:      "Rollen ab", To: "Bis", Setups: "Wie viele Aufbauten?", Chance: "Zu sehen mit einer Chance von",
		Basis:      "Gerechnet mit CdA %s m², Crr %s und %s.",
		BasisUsual: "Noch keine Fahrt zeigt deinen Luftwiderstand, also gilt ein mittlerer: CdA %s m², Crr %s, %s.",
		Answer:     "%d Paare mit jedem Aufbau genügen", AnswerNot: "So geht es nicht: Auch %d Paare mit jedem Aufbau sind zu wenig",
		ChanceWords: "Zu sehen mit einer Chance von %s %%.", Known: "Der Unterschied wird auf ± %s bekannt.",
		Smallest: "Mit einer Chance von %s %% zu sehen: Unterschiede ab %s.",
		Road:     "Straße, gerade und eben, mit Platz zum Anhalten", Time: "Dauer, etwa",
		Order: "In dieser Folge", Block: "%s: %d Paare", BlockOne: "%s: 1 Paar",
		OrderHint: "Ein Paar ist hin und zurück. So trifft, was Wind, Reifen und Öl sich ändern, alle Aufbauten gleich.",
		Help:      "Was helfen würde", HelpWith: "Dann ist die Chance %s %%, und Unterschiede ab %s sind zu sehen.",
		Law:         "Örtliches Recht und der Verkehr gehen jedem Plan vor. Am besten eine gesperrte Strecke. Im Zweifel Leute vom Fach fragen.",
		Calmer:      "Ein ruhigerer Tag mit halb so viel Wind",
		FasterStart: "Ab %s %s rollen, wo Recht und Straße es zulassen", MorePairs: "%d Paare mit jedem Aufbau statt %d",
		Often: "Ein Empfänger mit zehn Werten je Sekunde", CannotPlan: "Das lässt sich nicht planen: %s", Reckoning: "Wird gerechnet",
		Power: "Leistung", Times: "Zeit", Over: "Welche Zeit?",
		Unsteady:     "Ohne Änderung streuen deine Versuche um",
		UnsteadyHint: "Wie warm der Motor ist, wann das Gas offen ist. Mit warmem Motor ist 1 % üblich.",
		Repeats:      "Ohne Änderung streuen deine Zeiten um",
		RepeatsHint:  "Kupplung, Schalten, Gas. Mit Übung sind 0,1 s beim Start üblich, 0,05 s beim Durchzug. Fahr vier und sieh nach.",
		RiddenCoasts: "Ausrollen mit gezogener Kupplung, hin und zurück.", RiddenPulls: "Vollgas in einem Gang von %s bis %s %s, hin und zurück.",
		RiddenLaunches: "Starts, %s, hin und zurück, gezählt nach 1 Fuß.", RiddenRollOns: "Vollgas in einem Gang, %s, hin und zurück.",
		Alike:      "Üben, bis die Versuche halb so weit auseinander liegen",
		BasisPower: "Mit %s an der Straße, wie gemessen.", BasisPowerUsual: "Mit etwa %s an der Straße: Noch keine Fahrt zeigt es.",
		LawFullThrottle: "Vollgas gehört auf eine gesperrte Strecke, mit Leuten vom Fach in der Nähe. Örtliches Recht geht jedem Plan vor.",
	}
}

func germanPower() Power {
	return Power{
		Title: "Leistung an der Straße", Open: "Kurven, Spitze, Normluft",
		Lead:    "Was bei Vollgas am Hinterreifen ankommt, ohne Wind auf ebener Straße.",
		NoBench: "Das ist Leistung an der Straße, aus Gewicht, Beschleunigung und Luftwiderstand. Sie ersetzt keinen Prüfstand.",
		Peak:    "bei %s %s", PeakRPM: "bei %s %s, %s 1/min",
		AtEnd: "Dort endeten die Versuche: Die wahre Spitze kann darüber liegen.", PullsOne: "aus 1 Versuch", Pulls: "aus %d Versuchen",
		SpeedAxis: "Tempo, %s", RPMAxis: "Drehzahl, 1/min", PowerAxis: "Leistung, %s",
		Over: "Über", OverSpeed: "Tempo", OverRPM: "Drehzahl", NoRPM: "Nenne die Gänge bei der Maschine, dann steht sie auch über der Drehzahl.",
		Correction: "Luft", AsRidden: "Wie gefahren", ToSAE: "SAE J1349", ToISO: "ISO 1585",
		Factor:     "Auf Normluft umgerechnet: jede Zahl × %s.",
		FactorFar:  "Der Tag lag weiter von Normluft weg, als die Norm gedacht ist (7 %).",
		NoFactor:   "In der Luft des Tages, wie gefahren.",
		AirAssumed: "Die Luft des Tages wurde nicht angegeben, der Faktor ist also geraten.",
		Bandwidth:  "Geglättet: Was schneller als %s Hz schwankt, ist nicht zu sehen.",
		GearKnown:  "Gang %s", GearUnknown: "Gang unbekannt",
		RevsVibration: "Drehzahl aus der Vibration", RevsSound: "Drehzahl aus dem Geräusch", RevsBoth: "Drehzahl aus Vibration und Geräusch",
		Spoken:    "Leistungskurve",
		PullTitle: "Was dieser Aufbau auf die Straße bringt", SetupAs: "wie gefahren",
		StopTitle: "Bremswege", StopRow: "kürzester von %d", StopHint: "Ab dem ersten Biss der Bremse. Was du während der Schrecksekunde fährst, kommt dazu.",
	}
}

// germanSaidCompared holds what packages runs, compare and power say of
// setups.
func germanSaidCompared() map[string]string {
	return map[string]string{
		"ridden on different rides, so what changed between them is in the difference: weaker than A/B/B/A on one day":           "aus verschiedenen Fahrten, was sich dazwischen änderte, steckt also im Unterschied: schwächer als A/B/B/A an einem Tag",
		"drag was compared taking the tyres to roll alike in both setups; say so in the setup if tyres or pressures differ":      "verglichen, als rollten die Reifen in beiden Aufbauten gleich; sind Reifen oder Drücke verschieden, nenne es beim Aufbau",
		"one setup has a single pair of coast-downs: its own scatter cannot be judged":                                           "ein Aufbau hat nur ein Paar: Wie sehr er streut, ist nicht zu sagen",
		"power was compared by the bands of the curves: two pairs of opposite pulls a setup would judge it by their own scatter": "die Leistung ist nach den Bändern der Kurven verglichen: Zwei Paare gegenläufiger Versuche je Aufbau zeigten die Streuung selbst",
		"no coast-down measured the road load, so that of a middling bike was taken: the band is wider for it":                   "kein Ausrollen maß den Fahrwiderstand, also gilt der einer mittleren Maschine: Das Band ist dadurch breiter",
		"all pulls went the same way, so wind and slope are in the curve: pull in the other direction too":                       "alle Versuche gingen in eine Richtung, Wind und Neigung sind also darin: auch die Gegenrichtung fahren",
		"vibration and sound tell two different engine speeds, so power stands over road speed only":                             "Vibration und Geräusch ergeben zwei verschiedene Drehzahlen, die Leistung steht also nur über dem Tempo",
		"the gear is not known, so power stands over road speed only":                                                            "der Gang ist nicht bekannt, die Leistung steht also nur über dem Tempo",
		"fewer than two of these rides have a road load: each needs coast-downs in both directions":                              "weniger als zwei dieser Fahrten haben einen Fahrwiderstand: Jede braucht Ausrollen in beide Richtungen",
		"from # to # km/h is too little to tell drag from rolling: give at least # km/h":                                         "von # bis # km/h ist zu wenig, um Luft von Rollen zu trennen: mindestens # km/h nehmen",
		"with # kW the bike does not get there within # s: it is not strong enough for that":                                     "so stark ist die Maschine nicht",
		"a change of # of the drag cannot be planned for: give one between # and # %":                                            "mit einem Anteil von # am Luftwiderstand lässt sich nicht planen: einen zwischen # und # % nehmen",
	}
}
