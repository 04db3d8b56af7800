package text

// Background is what the phone says while it records with the screen off,
// which of its settings prevent that, and how it ended the app.
type Background struct {
	Kind, Title, Well, End string // the notification
	Refused                string
	Swiped, CutShort       string // written into the recording

	NoNotifications, NoNotificationsHint, Allow string
	Approximate, ApproximateHint                string
	Saving, SavingHint                          string
	Restricted, RestrictedHint                  string
	Clearable, ClearableHint                    string

	ByMemory, ByRider, ByCrash, ByHanging, ByLeave, ByPower, ByUpdate string
}

func englishBackground() Background {
	return Background{
		Kind: "Recording a ride", Title: "Recording the ride", Well: "Everything is being saved. Nothing to do here.", End: "End the ride",
		Refused:         "The phone did not allow recording in the background. Keep the screen on and the app open, or the recording stops.",
		Swiped:          "The app was swiped away. The recording went on.",
		CutShort:        "The phone ended the background service. From here on the recording depends on the screen being on.",
		NoNotifications: "Notifications are off", Allow: "Allow notifications",
		NoNotificationsHint: "The ride is recorded all the same, but you cannot end it from the notification. If no question appears, allow them in the phone's settings for this app.",
		Approximate:         "Only the approximate location is allowed",
		ApproximateHint:     "It has no speed. Open the phone's settings for this app and allow the precise location.",
		Saving:              "Battery Saver switches the satellites off",
		SavingHint:          "With the screen off no speed would be recorded. Switch Battery Saver off for this ride.",
		Clearable:           "The browser may delete your rides",
		ClearableHint:       "It has not promised to keep them. Browsers delete pages' files when the phone runs out of room, and Safari also after seven days without a visit, unless the app is on the home screen. Save a copy after each ride: Name, notes, share.",
		Restricted:          "This app may not run in the background",
		RestrictedHint:      "The phone would end the recording soon after the screen goes off. Open the phone's settings for this app and lift the limit under Battery.",
		ByMemory:            "The phone ran out of memory and closed the app.",
		ByRider:             "The app was stopped by hand, in the list of running apps or in the settings.",
		ByCrash:             "The app crashed.",
		ByHanging:           "The app stopped responding, so the phone closed it.",
		ByLeave:             "A permission was withdrawn, and that closes the app.",
		ByPower:             "The phone closed the app because it used too much power.",
		ByUpdate:            "The app was updated while it recorded.",
	}
}

func germanBackground() Background {
	return Background{
		Kind: "Fahrt aufzeichnen", Title: "Die Fahrt wird aufgezeichnet", Well: "Alles wird gespeichert. Hier ist nichts zu tun.", End: "Fahrt beenden",
		Refused:         "Das Telefon erlaubt keine Aufzeichnung im Hintergrund. Lass den Bildschirm an und die App offen, sonst endet die Aufzeichnung.",
		Swiped:          "Die App wurde weggewischt. Die Aufzeichnung lief weiter.",
		CutShort:        "Das Telefon hat den Hintergrunddienst beendet. Ab hier läuft die Aufzeichnung nur, solange der Bildschirm an ist.",
		NoNotifications: "Benachrichtigungen sind aus", Allow: "Benachrichtigungen erlauben",
		NoNotificationsHint: "Die Fahrt wird trotzdem aufgezeichnet, aber du kannst sie nicht über die Benachrichtigung beenden. Erscheint keine Frage, erlaube sie in den Einstellungen für diese App.",
		Approximate:         "Nur der ungefähre Standort ist erlaubt",
		ApproximateHint:     "Er enthält keine Geschwindigkeit. Öffne die Einstellungen für diese App und erlaube den genauen Standort.",
		Saving:              "Der Energiesparmodus schaltet die Satelliten ab",
		SavingHint:          "Bei dunklem Bildschirm würde keine Geschwindigkeit aufgezeichnet. Schalte den Energiesparmodus für diese Fahrt aus.",
		Clearable:           "Der Browser darf deine Fahrten löschen",
		ClearableHint:       "Er hat nicht zugesagt, sie zu behalten. Browser löschen die Dateien von Seiten, wenn der Speicher knapp wird, Safari auch nach sieben Tagen ohne Besuch, wenn die App nicht auf dem Home-Bildschirm liegt. Sichere nach jeder Fahrt eine Kopie: Name, Notizen, weitergeben.",
		Restricted:          "Diese App darf nicht im Hintergrund laufen",
		RestrictedHint:      "Das Telefon würde die Aufzeichnung beenden, kurz nachdem der Bildschirm ausgeht. Öffne die Einstellungen für diese App und hebe die Einschränkung unter „Akku“ auf.",
		ByMemory:            "Dem Telefon ging der Speicher aus, und es hat die App geschlossen.",
		ByRider:             "Die App wurde von Hand beendet, in der Liste der laufenden Apps oder in den Einstellungen.",
		ByCrash:             "Die App ist abgestürzt.",
		ByHanging:           "Die App reagierte nicht mehr, deshalb hat das Telefon sie geschlossen.",
		ByLeave:             "Eine Berechtigung wurde entzogen, und das schließt die App.",
		ByPower:             "Das Telefon hat die App geschlossen, weil sie zu viel Strom verbrauchte.",
		ByUpdate:            "Die App wurde während der Aufzeichnung aktualisiert.",
	}
}
