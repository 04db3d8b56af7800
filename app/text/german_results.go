package text

func germanRides() Rides {
	return Rides{
		Title: "Ergebnisse", Empty: "Noch keine Fahrten", EmptyHint: "Zeichne eine auf, dann erscheint sie hier von selbst.",
		CutOff: "abgebrochen, bis dahin gesichert", Deleted: "Fahrt gelöscht",
		Launches: "%d Starts", RollOns: "%d Durchzüge", CoastDowns: "%d-mal ausgerollt", Pairs: "%d Paare",
		OneLaunch: "1 Start", OneRollOn: "1 Durchzug", OneCoastDown: "1-mal ausgerollt", OnePair: "1 Paar",
		NotAnalysed: "noch nicht ausgewertet", Demo: "Erfundene Fahrt ansehen", DemoName: "Erfundene Fahrt",
		Name: "Name", NamePlaceholder: "Mit Koffern, Sonntag", Note: "Notizen", Edit: "Name, Notizen, weitergeben",
		Share: "Weitergeben oder sichern", ShareRide: "Die Aufzeichnung, wie sie ist",
		ShareAway: "Die Aufzeichnung, ohne den Ort", ShareAwayHint: "Anderswohin verschoben, die ersten und letzten 200 m abgeschnitten. Läufe in diesen Stücken fehlen dann.", ShareResults: "Die Ergebnisse",
		ShareHint: "Die Aufzeichnung öffnet jedes Werkzeug, das gzip und JSON liest. Die Ergebnisse sind eine JSON-Datei.",
		Delete:    "Diese Fahrt löschen", DeleteHint: "Sie bleibt 7 Tage unter „Gelöschte Fahrten“ und lässt sich zurückholen.",
		Length: "%s, %s", SharePositions: "Sie enthält, wo du fährst und wo du wohnst.", NothingFound: "nichts gefunden",
	}
}

func germanRide() Ride {
	return Ride{
		Analysing: "Die Fahrt wird ausgewertet", RunsTitle: "Gefunden", RejectedTitle: "Gefunden, aber nicht gewertet",
		CoarseTiming: "Im Browser aufgezeichnet. Der misst Zeiten gröber als die App: Starts können um etwa eine Zehntelsekunde danebenliegen.",
		Pairs:        "%d Paare, beide Richtungen", OnePair: "1 Paar, beide Richtungen",
		NoPairs: "Für den Luftwiderstand auf derselben Straße in beide Richtungen ausrollen.",
		NoRuns:  "In dieser Fahrt ist nichts zu messen",
		NoRunsHint: "Stillair sucht Starts und Durchzüge mit Vollgas, starke Bremsungen und freies Rollen mit gezogener Kupplung. " +
			"Einen Durchzug mindestens zweimal im selben Gang fahren. Die Anleitung zeigt, wie Ausrollen geht.",
		NotesTitle: "Zu dieser Aufzeichnung",
		NoPair:     "ohne Gegenrichtung", Towards: "nach %s", From: "%s bis %s %s",
		Compass: [8]string{"Norden", "Nordosten", "Osten", "Südosten", "Süden", "Südwesten", "Westen", "Nordwesten"},
	}
}

func germanRun() Run {
	return Run{
		TimeAxis: "Sekunden", Measured: "gemessen", Fitted: "angepasst: Luft- und Rollwiderstand",
		MarksTitle: "Zeiten in Sekunden", FromMoving: "ab Bewegung", AfterFoot: "nach 1 Fuß",
		FootHint:   "„Nach 1 Fuß“: Die Uhr beginnt erst nach 30 cm, wie auf dem Dragstrip üblich.",
		SpeedThere: "dort %s %s",
		Cautions:   "Mit Vorbehalt", WhyNot: "Warum das nicht zählt", Residual: "Residuum: gemessen minus angepasst",
		StillKept:   "Der Lauf bleibt erhalten, geht aber in keine Zahl ein.",
		PullHint:    "Vollgas in einem Gang. Daraus wird die Leistung an der Straße.",
		StopCaution: "Der Bremsweg dieser Maschine an dieser Stelle. Verlass dich niemals darauf.",
	}
}

func germanLoad() Load {
	return Load{
		AllRuns: "Alle Ausrollversuche", DragMeans: "Wie viel Luft du verdrängst. Bei %s %s kostet das %s.",
		RollingMeans: "Der Anteil des Gewichts, den das Rollen kostet: %s bei %s.",
		SureOf:       "95 %% sicher: %s bis %s",
		PowerNeeded:  "%s %s zu halten kostet auf ebener Straße ohne Wind %s am Hinterrad.",
		RollScale:    "des Gewichts",
		CurvesHint:   "Jede Linie ist einmal Ausrollen, ab %s %s. Gestrichelt: aus den beiden Werten oben berechnet.",
		MoreTitle:    "Lohnen sich mehr Paare?",
		MorePair:     "Jetzt ± %s %%. Mit einem Paar mehr etwa ± %s %%.",
		MorePairs:    "Jetzt ± %s %%. Mit %d Paaren mehr etwa ± %s %%.",
		EnoughPairs: "Schon ± %s %%. Mehr Paare ändern daran kaum etwas, " +
			"ein ruhigerer Tag oder mehr Anfangstempo schon.",
		OnlyOne:    "Ein Paar allein sagt wenig: Wind und Luftwiderstand sind nicht zu trennen. Zwei weitere helfen viel.",
		ShareTitle: "Kraft über der Geschwindigkeit", Notes: "Gut zu wissen",
		Setup: "Aufbau: %s", SinceSpeed: "Sekunden seit %s %s", AirShare: "Luft und Reifen", RollShare: "Reifen allein",
		Assumed: "Luft %s kg/m³, Masse %s.",
	}
}

func germanCompare() Compare {
	return Compare{
		Title: "Vergleich", Empty: "Noch nichts zu vergleichen",
		EmptyHint: "Zwei Aufbauten einer Maschine, jeder auf derselben Straße in beide Richtungen ausgerollt, und hier steht, welcher weniger Luftwiderstand hat.",
		HowTitle:  "So zählt es",
		How1:      "Nur eine Sache ändern. Das Telefon bleibt, wo es ist.",
		How2:      "A/B/B/A fahren statt A/A/B/B. Wind und Reifen ändern sich.",
		How3:      "Sechs Paare je Aufbau in etwa einer Stunde: drei mit dem einen, sechs mit dem anderen, drei mit dem ersten.",
		How4:      "Den Aufbau im Stand nennen: „Ab jetzt anderer Aufbau“.",
		Scale:     "Änderung in %", Against: "%s, gegen %s", Delta: "absolut",
		MoreBy: "%s %% mehr", LessBy: "%s %% weniger", MoreDrag: "%s %% mehr Luftwiderstand", LessDrag: "%s %% weniger Luftwiderstand",
		MorePower: "%s %% mehr Leistung", LessPower: "%s %% weniger Leistung",
		NoneMatters: "Kein Unterschied, der zählt", NotClear: "Noch unklar", NeverClear: "Unklar",
		Sure: "Sicher (95 %%: %s bis %s %%)", Estimate: "Schätzung %s %% (95 %%: %s bis %s %%)",
		MorePairs: "Etwa %d weitere Paare nötig.", OneMorePair: "Etwa ein weiteres Paar nötig.", CalmerDay: "Ein ruhigerer Tag hilft mehr als weitere Paare.",
	}
}
