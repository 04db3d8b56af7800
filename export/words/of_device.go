package words

import (
	"stillair/sensors"
	"stillair/sensors/finding"
)

// ofSenses holds what a source says about its sensors.
func ofSenses() []Entry {
	return []Entry{
		{"sensor.nothing_yet", nil, "switched on, but no data yet", "eingeschaltet, aber noch keine Daten"},
		{"sensor.nothing_more", nil, "no more data from it", "es kommen keine Daten mehr"},
		{"sensor.no_turn", nil, "this phone measures no turn rate: times are less accurate where the bike pitches",
			"dieses Telefon misst keine Drehrate: Zeiten sind weniger genau, wo das Motorrad nickt"},
		{"sensor.no_speed", nil, "positions arrive without a speed; speed needs open sky and a phone with a satellite receiver",
			"Positionen kommen ohne Geschwindigkeit; dafür braucht es freien Himmel und ein Telefon mit Satellitenempfänger"},
		{"sensor.none", args(finding.Of("what", finding.New("sensor.barometer"))), "this phone does not have this sensor: {what}", "diesen Sensor hat das Telefon nicht: {what}"},
		{"sensor.accelerometer", nil, "accelerometer", "Beschleunigungssensor"},
		{"sensor.gyroscope", nil, "gyroscope", "Gyroskop"},
		{"sensor.barometer", nil, "barometer", "Barometer"},
		{"sensor.receiver", nil, "satellite receiver", "Satellitenempfänger"},
		{"sensor.receiver_has_none", nil, "a satellite receiver has no such sensor", "ein Satellitenempfänger hat keinen solchen Sensor"},
		{"sensor.machine_has_none", nil, "this computer has no such sensor", "dieser Rechner hat keinen solchen Sensor"},
		{"replay.not_recorded", nil, "not in the recording", "nicht in der Aufzeichnung"},
		{sensors.CodeHole, args(finding.Time("for", 39), finding.Of("why", finding.New("browser.was_hidden"))), "{for.0} missing: {why}", "{for.0} fehlen: {why}"},
		{"sensor.clock_step", args(finding.Time("by", -3600)), "the clock of a sensor was set by {by.1}; times continue without the step",
			"die Uhr eines Sensors wurde um {by.1} verstellt; die Zeiten laufen ohne den Sprung weiter"},
		{"sensor.lost", args(finding.Count("samples", 3)), "{samples} samples had an impossible time or value and are left out",
			"{samples} Werte hatten eine unmögliche Zeit oder einen unmöglichen Wert und bleiben weg"},
		{"sensor.held", nil, "the device did not let the app run", "das Gerät ließ die App nicht laufen"},
		{"nmea.no_speed_yet", nil, "the receiver has not sent a speed yet", "der Empfänger hat noch keine Geschwindigkeit gesendet"},
		{"nmea.garbled", nil, "the receiver's lines arrive garbled; check the cable and the speed of the port",
			"die Zeilen des Empfängers kommen verstümmelt an; Kabel und Geschwindigkeit der Schnittstelle prüfen"},
		{"nmea.lost", nil, "the receiver has lost the satellites", "der Empfänger hat die Satelliten verloren"},
		{"recorder.clock_step", args(finding.Time("by", 2)), "the phone's clock was set back by {by.1}; times continue without the step",
			"die Uhr des Telefons wurde um {by.1} zurückgestellt; die Zeiten laufen ohne den Sprung weiter"},
	}
}

// ofBrowser holds what a browser says about its sensors and its storage.
func ofBrowser() []Entry {
	return []Entry{
		{"browser.no_location_leave", nil, "the browser may not use the location; allow it in the browser's settings for this page",
			"der Browser darf den Standort nicht nutzen; in seinen Einstellungen für diese Seite erlauben"},
		{"browser.no_position", nil, "no position available; turn on the phone's location and go where the sky is open",
			"keine Position verfügbar; den Standort des Telefons einschalten und unter freien Himmel gehen"},
		{"browser.no_satellites", nil, "no satellites yet; go where the sky is open", "noch keine Satelliten; unter freien Himmel gehen"},
		{"browser.hidden", nil, "the page is hidden or the screen is off, so the browser delivers no data",
			"die Seite ist verdeckt oder der Bildschirm aus, daher liefert der Browser keine Daten"},
		{"browser.was_hidden", nil, "the screen was off or another app was in front", "der Bildschirm war aus oder eine andere App im Vordergrund"},
		{"browser.was_frozen", nil, "the screen was off or another app was in front, and the browser froze this page",
			"der Bildschirm war aus oder eine andere App im Vordergrund, und der Browser hielt diese Seite an"},
		{"browser.was_asleep", nil, "the screen was off and the phone asleep", "der Bildschirm war aus und das Telefon im Ruhezustand"},
		{"browser.no_motion_leave", nil, "the browser may not use the motion sensors; allow them in the browser's settings for this page",
			"der Browser darf die Bewegungssensoren nicht nutzen; in seinen Einstellungen für diese Seite erlauben"},
		{"browser.tap_again", nil, "tap once more and allow motion", "noch einmal tippen und Bewegung erlauben"},
		{"browser.no_motion", nil, "this browser has no motion sensors", "dieser Browser hat keine Bewegungssensoren"},
		{"browser.no_location", nil, "this browser has no location", "dieser Browser hat keinen Standort"},
		{"browser.asks_location", nil, "the browser is asking whether it may use the location", "der Browser fragt, ob er den Standort nutzen darf"},
		{"browser.not_asked", nil, "the browser asks as soon as you allow it here", "der Browser fragt, sobald du es hier erlaubst"},
		{"browser.not_secure", nil, "the page was not opened over https, so the browser gives no sensor data",
			"die Seite wurde nicht über https geöffnet, daher gibt der Browser keine Sensordaten"},
		{"browser.no_microphone_leave", nil, "the browser may not use the microphone; allow it in the browser's settings for this page, or turn sound off",
			"der Browser darf das Mikrofon nicht nutzen; in seinen Einstellungen für diese Seite erlauben oder den Ton abschalten"},
		{"browser.no_microphone", nil, "this browser has no microphone", "dieser Browser hat kein Mikrofon"},
		{"browser.microphone_stopped", nil, "the microphone stopped; everything else continues", "das Mikrofon ist ausgefallen; alles andere läuft weiter"},
		{"browser.asks_microphone", nil, "the browser is asking whether it may use the microphone", "der Browser fragt, ob er das Mikrofon nutzen darf"},
		{"browser.microphone_taken", nil, "another app is using the microphone; everything else continues", "eine andere App nutzt das Mikrofon; alles andere läuft weiter"},
		{"browser.microphone_not_secure", nil, "the page was not opened over https, so the browser gives no microphone",
			"die Seite wurde nicht über https geöffnet, daher gibt der Browser das Mikrofon nicht frei"},
		{"browser.no_barometer", nil, "browsers have no barometer", "Browser haben kein Barometer"},
		{"browser.script_missing", args(finding.Text("script", "sensing.js")), "the page did not load {script}", "die Seite hat {script} nicht geladen"},
		{"browser.cannot", nil, "this browser cannot do that", "dieser Browser kann das nicht"},
		{"browser.storage_full", nil, "the browser's storage is full", "der Speicher des Browsers ist voll"},
		{"browser.storage_busy", nil, "in use elsewhere", "anderswo in Benutzung"},
		{"browser.part_missing", nil, "part of the file is missing from the browser's storage", "im Speicher des Browsers fehlt ein Teil der Datei"},
		{"browser.no_reason", nil, "the browser refused without giving a reason", "der Browser hat ohne Begründung abgelehnt"},
	}
}

// ofAndroid holds what an Android phone says about its sensors and services.
func ofAndroid() []Entry {
	why := finding.Text("why", "SecurityException")
	code := finding.Text("error", "-899")
	return []Entry{
		{"android.asks_location", nil, "Android is asking whether the app may use the location; allow the precise one",
			"Android fragt, ob die App den Standort nutzen darf; den genauen erlauben"},
		{"android.no_location_leave", nil, "the app may not use the precise location; allow it in the phone's settings for this app",
			"die App darf den genauen Standort nicht nutzen; in den Einstellungen des Telefons für diese App erlauben"},
		{"android.location_off", nil, "location is turned off in the phone's settings", "der Standort ist in den Einstellungen des Telefons ausgeschaltet"},
		{"android.location_refused", args(why), "Android refused the location: {why}", "Android hat den Standort verweigert: {why}"},
		{"android.microphone_too_old", nil, "the microphone needs Android 8 or later", "das Mikrofon braucht Android 8 oder neuer"},
		{"android.microphone_not_opened", args(code), "Android did not open the microphone (error {error}); everything else continues",
			"Android hat das Mikrofon nicht geöffnet (Fehler {error}); alles andere läuft weiter"},
		{"android.microphone_taken", args(code), "the microphone was taken away (error {error}); everything else continues",
			"das Mikrofon wurde entzogen (Fehler {error}); alles andere läuft weiter"},
		{"android.microphone_refused", args(why), "Android refused the microphone: {why}", "Android hat das Mikrofon verweigert: {why}"},
		{"android.no_microphone_leave", nil, "the app may not use the microphone; allow it in the phone's settings for this app, or turn sound off",
			"die App darf das Mikrofon nicht nutzen; in den Einstellungen des Telefons für diese App erlauben oder den Ton abschalten"},
		{"android.no_thread", nil, "the phone has no room for the sensors' threads", "das Telefon hat keinen Platz für die Threads der Sensoren"},
		{"android.no_folder", args(why), "Android gives no folder for files: {why}", "Android gibt keinen Ordner für Dateien: {why}"},
		{"android.service_not_started", nil, "Android did not start the service", "Android hat den Dienst nicht gestartet"},
		{"android.exit_unknown", nil, "Android does not say how the app ended", "Android sagt nicht, wie die App endete"},
	}
}
