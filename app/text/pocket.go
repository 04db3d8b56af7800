package text

// Pocket is the screen of a phone that records in a pocket, and what is said about
// the time in which nothing could be recorded.
type Pocket struct {
	Title, Hint, Unlock, Enter string
	Missing, Kept, Read        string // Missing: "%s"
}

func englishPocket() Pocket {
	return Pocket{
		Title: "Recording in your pocket", Hint: "Touches are locked. The screen stays on but dark: with the screen off nothing would be recorded.",
		Unlock: "Hold for 2 seconds to unlock", Enter: "Pocket mode",
		Missing: "%s missing", Kept: "Everything before and after is saved. Runs that reach into the gap are not counted.", Read: "OK",
	}
}

func germanPocket() Pocket {
	return Pocket{
		Title: "Aufzeichnung in der Tasche", Hint: "Berührungen sind gesperrt. Der Bildschirm bleibt an, aber dunkel: Ist er aus, wird nichts aufgezeichnet.",
		Unlock: "Zum Entsperren 2 Sekunden gedrückt halten", Enter: "Taschenmodus",
		Missing: "%s fehlen", Kept: "Alles davor und danach ist gesichert. Läufe, die in die Lücke reichen, zählen nicht.", Read: "OK",
	}
}
