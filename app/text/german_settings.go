package text

func germanBikes() Bikes {
	return Bikes{
		Title: "Maschinen", Empty: "Welche Maschine fährst du?",
		EmptyHint: "Luft- und Rollwiderstand brauchen ihr Gewicht, fahrfertig mit dir. Name und Gewicht genügen für den Anfang.",
		New:       "Maschine hinzufügen", Edit: "Maschine", Name: "Name", NameHint: "Wie du sie nennst",
		Mass: "Gewicht, fahrfertig mit dir", MassHint: "Maschine, du in voller Montur, Benzin, Gepäck. 2 % zu schwer macht den Luftwiderstand 2 % zu groß.",
		MassSD: "Gewicht bekannt auf ±", MassSDHint: "Von der Fahrzeugwaage wenig, aus den Papieren addiert etwa zehn.",
		Weighed: "Woher du es weißt", WeighedHint: "Fahrzeugwaage, Papiere, geschätzt",
		Rotating: "Räder, als Zusatzgewicht", RotatingHint: "Die Trägheit der drehenden Räder. Leer: 4 % des Gewichts.",
		Gears: "Gänge", GearsHint: "Drehzahl bei einer Geschwindigkeit, für Leistung über Drehzahl.",
		AddGear: "Gang hinzufügen", GearSpeed: "1/min bei %s %s",
		SetupsHint: "Was du unterscheiden willst: mit und ohne Koffer, zwei Scheiben, zwei Jacken.",
		AddSetup:   "Aufbau hinzufügen", NewSetup: "Neuer Aufbau", SetupName: "Name", SetupNameHint: "Mit Koffern",
		Changed: "Was anders ist", ChangedHint: "Damit du es nächstes Jahr noch weißt",
		SetupMass: "Gewicht mit diesem Aufbau", SetupMassHint: "Leer: wie die Maschine.",
		TyreFront: "Reifen vorn, kalt", TyreRear: "Reifen hinten, kalt", Note: "Notizen",
		Remove: "Diese Maschine entfernen", RemoveHint: "Aufgezeichnete Fahrten behalten ihre Werte.",
		NoMass: "Gewicht nicht angegeben", NotNumber: "Das ist keine Zahl.", OutOfRange: "Nicht möglich: erlaubt ist %s bis %s.",
		NoName: "Ein Name fehlt.", Twice: "Ein anderer Aufbau heißt schon so.", Choose: "Damit fahren",
		Optional: "Für den Anfang nicht nötig", EditSetup: "Aufbau",
	}
}

func germanGuide() Guide {
	return Guide{
		Title: "Dein erstes Ausrollen", Step: "%d von %d",
		WhatTitle: "Was geschieht",
		What: "Du fährst an, ziehst die Kupplung und rollst. Luft und Reifen bremsen dich: erst stark, dann immer weniger. " +
			"Aus dieser Kurve berechnet Stillair beides.",
		RoadTitle: "Wo und wann",
		Road: "Eine Gerade von einem Kilometer oder mehr, eben, glatt, trocken, niemand hinter dir. Besser eine gesperrte Strecke. " +
			"Wenig Wind: Bewegen sich die Blätter dauernd, komm an einem anderen Tag.",
		BothTitle: "Warum beide Richtungen",
		Both: "Keine Straße ist eben, keine Luft steht still. Rollst du dieselbe Strecke hin und zurück, helfen dir Gefälle und Wind einmal und bremsen dich einmal, " +
			"und beides hebt sich auf. Eine Richtung allein lässt sich nicht verwenden.",
		DoTitle: "Jedes Mal, Schritt für Schritt",
		Do: [5]string{
			"Sitz, wie du immer sitzt, und bleib so.",
			"Fahr 10 km/h schneller als das Tempo, ab dem du rollen willst, aber nicht über dem Limit.",
			"Kupplung ziehen, Motor läuft, Bremse nicht gezogen, zwei Finger bereit.",
			"Ruhig und gerade bleiben, bis du langsam bist.",
			"Sanft bremsen. Bevor die Kupplung wieder greift, den Gang zum Tempo wählen und Gas geben. Wenden, wo es sicher ist, und zurück das Gleiche.",
		},
		StopTitle: "Wann abbrechen",
		Stop: "Immer, wenn etwas ist: Verkehr, Wind, ein schlechtes Gefühl. Ein abgebrochener Versuch zählt einfach nicht. " +
			"Mit gezogener Kupplung bremst der Motor nicht: zwei Finger an der Bremse, und mehr Platz zum Anhalten, als du zu brauchen glaubst. " +
			"Pendelt der Lenker: locker halten, nicht hart bremsen, langsam aufrichten.",
		AfterTitle: "Wie viele",
		After: "Zwei Paare sind ein Anfang. Sechs mit jedem Aufbau zeigen bei leichtem Wind einen Unterschied von 5 %. Wo die Straße Platz lässt, jedes rund 200 m später beginnen als das vorige, hin wie zurück: dann gilt das Auf und Ab der Straße nicht als Luftwiderstand. Darüber hinaus hilft ein ruhigerer Tag mehr. " +
			"Die Ergebnisse sagen, was gut war, was nicht, und ob sich mehr lohnen.",
		Caution:    "Rollen im Leerlauf oder mit gezogener Kupplung ist nicht überall erlaubt. Im Zweifel jemanden fragen, der sich auskennt.",
		Ready:      "Ich bin bereit",
		PictureAir: "Luft", PictureRoll: "Reifen", PictureThere: "hin", PictureBack: "und zurück",
	}
}

func germanAdvice() Advice {
	return Advice{
		Title: "Wie dein Ausrollen war", Good: "Das hat geklappt", GoodHint: "%d von %d zählen.",
		None: "Kein Ausrollen gefunden", NoneHint: "Es zählt ab etwa zehn Sekunden mit gezogener Kupplung und ohne Bremse.",
		PairsDone: "%d Paare bisher", OnePair: "1 Paar bisher", Unpaired: "%d ohne Gegenrichtung", OneUnpaired: "Einmal ohne Gegenrichtung",
		UnpairedHint: "Roll dieselbe Strecke auch in die andere Richtung.",
		MoreWorth:    "%d Paare mehr lohnen sich: von ± %s %% auf etwa ± %s %%.",
		OneMoreWorth: "Ein Paar mehr lohnt sich: von ± %s %% auf etwa ± %s %%.",
		MoreNot:      "Mehr Paare lohnen sich kaum.", WentWrong: "Was nicht gut war", DoBetter: "Nächstes Mal",
		ShortBetter:  "Eine längere Strecke wählen.",
		BrakeBetter:  "Bis zum Ende nicht bremsen. Fang dort an, wo mehr Platz ist.",
		EngineBetter: "Die Kupplung ganz ziehen. Der Motor darf nicht bremsen.",
		SlopeBetter:  "Such eine ebenere Strecke.",
		FixBetter:    "Das Telefon unter freien Himmel, nicht unter Brücke oder Bäume.",
		TurnBetter:   "Geradeaus rollen. Nimm eine Strecke ohne Kurven.",
		OtherBetter:  "Roll dieselbe Strecke noch einmal, in beide Richtungen.",
	}
}

func germanMore() More {
	return More{
		Title: "Mehr", Units: "Einheiten", Metric: "km/h", Imperial: "mph", Language: "Sprache",
		Look: "Darstellung", LookSystem: "Automatisch", LookLight: "Hell", LookDark: "Dunkel",
		TextSize: "Schrift", TextNormal: "Normal", TextLarge: "Groß", TextLargest: "Sehr groß",
		Aloud: "Ergebnisse vorlesen", AloudHint: "Wenn du stehst, über Lautsprecher oder Helm.", On: "An", Off: "Aus",
		AirTitle: "Luft heute", AirHint: "Aus dem Wetterbericht. Leer: ein Normtag, und die Ergebnisse weisen darauf hin.",
		Temperature: "Temperatur", Pressure: "Luftdruck", Humidity: "Luftfeuchte", Wind: "wie sehr der Wind schwankt",
		SafetyTitle: "Vor allem anderen",
		Safety: "Fahren kann dich und andere verletzen. Halte das örtliche Recht ein, nimm für Vollgas und Ausrollen gesperrte Strecken " +
			"und frag im Zweifel Leute vom Fach. Während der Fahrt das Telefon nie ansehen oder berühren.",
		PrivacyTitle: "Deine Daten", Privacy: "Alles bleibt in diesem Telefon. Nichts wird gesendet, außer du gibst es weiter.",
		AboutTitle: "Über Stillair", About: "Quelloffen, Apache-Lizenz 2.0. Die Dateien haben offene Formate, die andere Programme lesen können.",
		PaletteNote: "Farben nach Okabe und Ito, so gewählt, dass auch Menschen mit Farbsehschwäche sie unterscheiden können.",
		GuideAgain:  "Anleitung zum ersten Ausrollen", AccuracyTitle: "Wie genau ist das?",
		Accuracy: "Jede Zahl hat ihr ±: den Bereich, in dem der wahre Wert in 95 von 100 Fällen liegt. Wind, Straße, Gewicht und Empfänger sind eingerechnet.",
		System:   "Automatisch",
	}
}
