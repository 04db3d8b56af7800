package text

// Trial is the test of a phone that this package has never run on.
type Trial struct {
	Title, Intro, Begin, Again, Share, Shared string
	LieStill, SwitchOff                       string
	Clocks, Axes, Service, Dark               string
	Works, Differs, Fails, Untried            string
	Rate                                      string // "%s a second, longest pause %s s"
	Stored, Free                              string // "%s s", "%s MB"
	Weather                                   string // "%s hPa"
	Late, Beside                              string // "%s s"
	Force                                     string // "x %s, y %s, z %s m/s²"
	Took                                      string // "%s s"
	Lasted, FixPause                          string // "%s s … %s s", "%s s"
}

func englishTrial() Trial {
	return Trial{
		Title: "Test this phone",
		Intro: "This trial package has never run on a phone. A test of two minutes shows what works here. Best done outdoors, under open sky.",
		Begin: "Start the test", Again: "Test again", Share: "Share the result",
		Shared:   "It holds measurements only: no places, no rides.",
		LieStill: "Lay the phone on its back on a table and let go.",
		SwitchOff: "Now switch the screen off with the power key. The phone buzzes after half a minute; then switch it on again. " +
			"Without a buzz, wait a minute.",
		Clocks: "Clocks", Axes: "Axes", Service: "Background service", Dark: "With the screen off",
		Works: "works", Differs: "works, but not as expected", Fails: "does not work", Untried: "not tested",
		Rate: "%s a second, longest pause %s s", Stored: "saved and read back in %s s", Free: "%s MB free", Weather: "%s hPa",
		Late: "delivered within %s s", Beside: "satellites %s s behind motion", Force: "lying on its back: x %s, y %s, z %s m/s²",
		Took: "running after %s s", Lasted: "off for %s s, longest pause of motion %s s", FixPause: "of satellites %s s",
	}
}

func germanTrial() Trial {
	return Trial{
		Title: "Dieses Telefon testen",
		Intro: "Dieses Versuchspaket lief noch nie auf einem Telefon. Ein Test von zwei Minuten zeigt, was hier funktioniert. Am besten draußen, unter freiem Himmel.",
		Begin: "Test starten", Again: "Noch einmal testen", Share: "Ergebnis teilen",
		Shared:   "Es enthält nur Messwerte: keine Orte, keine Fahrten.",
		LieStill: "Leg das Telefon mit dem Rücken auf einen Tisch und lass es los.",
		SwitchOff: "Schalte jetzt den Bildschirm mit der Einschalttaste aus. Nach einer halben Minute vibriert das Telefon; dann schalte ihn wieder ein. " +
			"Vibriert es nicht, warte eine Minute.",
		Clocks: "Uhren", Axes: "Achsen", Service: "Hintergrunddienst", Dark: "Bei dunklem Bildschirm",
		Works: "funktioniert", Differs: "funktioniert, aber anders als erwartet", Fails: "funktioniert nicht", Untried: "nicht getestet",
		Rate: "%s je Sekunde, längste Pause %s s", Stored: "in %s s gespeichert und gelesen", Free: "%s MB frei", Weather: "%s hPa",
		Late: "innerhalb von %s s geliefert", Beside: "Satelliten %s s hinter der Bewegung", Force: "auf dem Rücken: x %s, y %s, z %s m/s²",
		Took: "läuft nach %s s", Lasted: "%s s aus, längste Pause der Bewegung %s s", FixPause: "der Satelliten %s s",
	}
}
