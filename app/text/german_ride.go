package text

func germanReady() Ready {
	return Ready{
		Title: "Vor der Fahrt", BikeNone: "Noch keine Maschine", BikeNoneHint: "Mit dem Gewicht werden die Ergebnisse genau",
		SetupNone: "kein Aufbau benannt", Mass: "%s fahrfertig mit Fahrer",
		PhoneTitle: "Das Telefon", CheckTitle: "Du und die Straße", CheckCount: "%d von %d",
		Place: "Eine gute Stelle", PlaceWhy: "Lang, gerade, eben, trocken, mit Platz zum Anhalten. Am besten eine gesperrte Strecke.",
		Law: "Hier erlaubt", LawWhy: "Tempolimits und örtliches Recht gehen jeder Messung vor.",
		Traffic: "Niemand in der Nähe", TrafficWhy: "Niemand hinter dir, wenn du ohne Bremslicht langsamer wirst.",
		Weather: "Windstill und trocken", WeatherWhy: "Wind macht die Ergebnisse unsicherer als alles andere.",
		Tyres: "Reifen warm", TyresWhy: "Erst zehn Minuten fahren, Luftdruck kalt eingestellt.",
		Fixed: "Telefon sitzt fest", FixedWhy: "Am Lenker oder eng in der Tasche. Es darf nicht rutschen.",
		Start: "Aufzeichnung starten", StartGood: "Dann das Telefon wegstecken. Alle Läufe werden automatisch gefunden.",
		StartRough: "Du kannst jetzt starten. Bleib stehen, bis die Satelliten gut sind.",
		Permit:     "Stillair die Sensoren erlauben",
		FirstTime:  "Dein erster Ausrollversuch?", FirstTimeHint: "Sechs kurze Seiten, vor der Fahrt zu lesen",
	}
}

func germanSenses() Senses {
	return Senses{
		Satellites: "Satelliten", Motion: "Bewegung", Turn: "Drehung", Storage: "Speicher",
		FixGood: "gut: auf %s genau, %s je Sekunde", FixFair: "mäßig: auf %s genau. Kurz unter freiem Himmel warten",
		FixWait:    "Suche läuft. Geh unter freien Himmel",
		MotionGood: "gut: %s je Sekunde", MotionCoarse: "%s je Sekunde: genügt, Zeiten etwas ungenauer",
		MotionFew: "nur %s je Sekunde: Zeiten werden grob. Andere Apps schließen und Energiesparen ausschalten",
		FixFew:    "nur alle %s s: kurze Läufe gehen verloren. Energiesparen ausschalten, unter freien Himmel gehen",
		NoMotion:  "Tempo wird trotzdem gemessen, Zeiten werden ungenauer", NoFix: "Es lässt sich nichts messen",
		MotionWait: "wartet auf den ersten Messwert", PressureGood: "gut", PressureNone: "keins. Die Ergebnisse brauchen es nicht",
		Asking:        "das Telefon fragt dich gerade",
		DeniedFix:     "nicht erlaubt. Ohne sie lässt sich nichts messen",
		DeniedMotion:  "nicht erlaubt. Tempo wird trotzdem gemessen, Zeiten werden ungenauer",
		MissingFix:    "liefert dieses Telefon nicht. Es lässt sich nichts messen",
		MissingMotion: "liefert dieses Telefon nicht. Tempo wird trotzdem gemessen, Zeiten werden ungenauer",
		MissingTurn:   "keine. Geht auch ohne, an Steigungen etwas ungenauer",
		StoragePlenty: "Platz für Tage",
		MotionSilent:  "liefert nichts mehr. Tempo wird weiter gemessen, Zeiten werden ungenauer", FixSilent: "liefern nichts mehr. Alles andere wird weiter aufgezeichnet",
		StorageGood: "Platz für %s Fahrt", StorageLow: "nur Platz für %s. Alte Fahrten endgültig löschen",
		StorageFull: "voll. Alte Fahrten endgültig löschen", StorageUnknown: "das Telefon sagt nicht, wie viel Platz noch ist",
		Gaps: "%d Lücken, die längste %s s", OneGap: "1 Lücke von %s s", NoGaps: "keine Lücke", Rate: "%s je Sekunde, %s",
		Clocks: "Die beiden Uhren", LagFound: "GPS kommt %s ± %s s nach den Bewegungssensoren. In dieser Fahrt gemessen und herausgerechnet.",
		LagAssumed: "Wie weit GPS hinter den Bewegungssensoren liegt, ließ sich in dieser Fahrt nicht messen; angenommen sind %s s.",
		LagLive:    "GPS liegt %s ± %s s hinter den Bewegungssensoren", Smoothing: "Der Empfänger glättet das Tempo selbst über etwa %s s.",
	}
}

func germanRiding() Riding {
	return Riding{
		Locked: "Gesperrt, solange du fährst", Standing: "Steht", Searching: "Sucht Satelliten",
		NoSpeed: "Gerade keine Geschwindigkeit", Recorded: "%s aufgezeichnet", Safe: "sicher im Telefon",
		Unsafe:       "seit %s s nicht gesichert",
		NoticedTitle: "Erkannt", NothingYet: "Fahr, wie du magst. Hier ist nichts zu tun.",
		SawLaunch: "Start bis %s %s", SawRollOn: "Durchzug %s bis %s %s", SawCoast: "Ausrollen %s bis %s %s",
		SawStop: "Bremsung aus %s %s", LastTitle: "Seit dem letzten Halt", LastNone: "Seit dem letzten Halt nichts gemessen.",
		Say: "Vorlesen", Setup: "Ab jetzt anderer Aufbau", End: "Zum Beenden gedrückt halten",
		Closed: "Die Fahrt ist gesichert.", ClosedStood: "Du hast länger gestanden, darum wurde die Aufzeichnung beendet. Sie ist gesichert.",
		ClosedNever:  "Eine Stunde lang hat sich nichts bewegt, darum wurde die Aufzeichnung beendet.",
		ClosedSource: "Die Sensoren haben aufgehört. Was bis dahin kam, ist gesichert.",
		ClosedRoom:   "Das Telefon ist voll, darum wurde die Aufzeichnung beendet. Sie ist gesichert.",
		ClosedTorn:   "Die Aufzeichnung ist beendet, aber das Telefon hat ihr Ende nicht gespeichert. Alles davor ist gesichert. Speichere die Datei, die dir jetzt angeboten wird: Sie enthält die ganze Fahrt.",
		Copy:         "Jetzt eine Kopie sichern", CopyApp: "Die Fahrt liegt nur in dieser App: Wer die App entfernt oder ihre Daten löscht, löscht auch die Fahrt.",
		CopyKept:      "Die Fahrt liegt nur in diesem Browser. Er hat zugesagt, sie nicht von sich aus zu löschen; wer seine Daten löscht, löscht aber auch die Fahrt.",
		CopyClearable: "Die Fahrt liegt nur in diesem Browser. Er darf sie löschen, wenn der Speicher knapp wird, Safari auch nach sieben Tagen ohne Besuch, wenn die App nicht auf dem Home-Bildschirm liegt. Wer die Daten des Browsers löscht, löscht sie ebenfalls.",
		SpokenLaunch:  "%s in %s Sekunden.", SpokenCoast: "Ausgerollt von %s bis %s.",
		SoFarTitle: "Der Versuch bisher", NextDone: "Schon sicher. Ein Paar mehr mit jedem Aufbau brächte ± %s auf etwa ± %s %%.",
		NextWorth:  "Ein Paar mehr mit jedem Aufbau lohnt sich: In etwa %d von 10 Fällen ist es dann klar (± %s auf etwa ± %s %%).",
		NextNot:    "Ein Paar mehr mit jedem Aufbau klärt es nur in etwa %d von 10 Fällen (± %s auf etwa ± %s %%).",
		NextHardly: "Ein Paar mehr allein wird es nicht klären (± %s auf etwa ± %s %%).",
		WeightAsk:  "Hat sich mit %s das Gewicht geändert?", WeightSame: "Nein, gleiches Gewicht", WeightOther: "Ja, eingeben", WeightField: "Motorrad, Fahrer, Benzin und Gepäck jetzt",
	}
}

func germanTrouble() Trouble {
	return Trouble{
		Recovered:        "Eine Aufzeichnung brach ab. %s davon sind gesichert.",
		RecoveredHint:    "Sie steht bei den anderen in der Liste. Ergebnisse gibt es wie sonst auch.",
		RecoveredDamaged: "%s s darin fehlen.",
		Busy:             "Stillair zeichnet schon auf, in einem anderen Fenster oder Tab. Beende das zuerst.",
		NoRoom:           "Im Telefon ist zu wenig Platz für eine Fahrt. Lösche alte Fahrten, unter „Gelöschte Fahrten“ auch endgültig.",
		StorageFails:     "Das Telefon nimmt die Daten gerade nicht an. Sie bleiben im Arbeitsspeicher, und das Speichern wird weiter versucht.",
		StorageLost:      "Das Telefon nahm so lange keine Daten an, dass ein Teil der Fahrt verloren ist.",
		CannotRecord:     "Das Telefon lässt die Fahrt nicht speichern, darum kann sie nicht aufgezeichnet werden: %s",
		CannotRead:       "Diese Datei ist nicht lesbar: %s", SensorsFailed: "Die Sensoren haben mit einem Fehler aufgehört: %s",
		AnalysisFailed: "Diese Fahrt ließ sich nicht auswerten: %s",
		NoRide:         "In dieser Aufzeichnung ist keine Fahrt: nötig ist die Geschwindigkeit aus dem Satellitenempfang, und Bewegung, wenn das Telefon sie misst.",
		NewerFile:      "Eine Datei bleibt, wie sie ist, weil sie nicht lesbar ist: %s",
		ScreenMayGoOff: "Das Telefon schaltet vielleicht den Bildschirm aus. Stell ihn auf dauernd an, sonst pausiert die Aufzeichnung.",
		ShareFailed:    "Weitergeben ging nicht: %s",
	}
}
