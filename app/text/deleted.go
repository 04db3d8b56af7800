package text

// Deleted is the rides that were deleted and are still kept.
type Deleted struct {
	Title, Hint, Empty, Days, OneDay, Today, Size string
	BringBack, Remove, Sure, SureHint, Open       string
}

func englishDeleted() Deleted {
	return Deleted{
		Title: "Deleted rides", Hint: "Each stays here for %d days after it was deleted. Until then it takes room and can be brought back.",
		Empty: "Nothing here.", Days: "gone in %d days", OneDay: "gone in 1 day", Today: "gone within a day", Size: "%s MB",
		BringBack: "Bring back", Remove: "Remove for good", Sure: "Yes, remove it for good", SureHint: "Nothing can bring it back after that.",
		Open: "%d kept for now",
	}
}

func germanDeleted() Deleted {
	return Deleted{
		Title: "Gelöschte Fahrten", Hint: "Jede bleibt nach dem Löschen noch %d Tage hier. So lange braucht sie Platz und lässt sich zurückholen.",
		Empty: "Hier ist nichts.", Days: "in %d Tagen weg", OneDay: "in 1 Tag weg", Today: "in weniger als einem Tag weg", Size: "%s MB",
		BringBack: "Zurückholen", Remove: "Endgültig löschen", Sure: "Ja, endgültig löschen", SureHint: "Danach holt sie nichts mehr zurück.",
		Open: "%d noch vorhanden",
	}
}
