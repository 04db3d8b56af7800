package words

// ofNames holds what codes that name something are called: answers of a
// comparison, causes of uncertainty, sources of engine speed, stages of an
// analysis. The English ones stand in results of version 1.
func ofNames() []Entry {
	return []Entry{
		{"compare.differs", nil, "differs", "verschieden"},
		{"compare.none_shown", nil, "no difference shown", "kein Unterschied gezeigt"},
		{"compare.cannot_tell", nil, "cannot tell yet", "noch nicht klar"},
		{"limit.gusts", nil, "gusts", "Böen"},
		{"limit.wind", nil, "wind from pair to pair", "Wind von Paar zu Paar"},
		{"limit.receiver", nil, "satellite receiver", "Satellitenempfänger"},
		{"limit.road", nil, "unevenness of the road", "Unebenheit der Straße"},
		{"limit.slope", nil, "slope of the road", "Gefälle der Straße"},
		{"limit.posture", nil, "drag that differs from run to run", "Luftwiderstand, der von Lauf zu Lauf anders ist"},
		{"limit.mass", nil, "mass of bike and rider", "Masse von Maschine und Fahrer"},
		{"limit.air", nil, "density of the air", "Luftdichte"},
		{"limit.assumed", nil, "assumptions about tyres, cross-wind and posture", "Annahmen zu Reifen, Seitenwind und Haltung"},
		{"limit.days", nil, "what differs from day to day", "was von Tag zu Tag anders ist"},
		{"revs.gear", nil, "the gear entered", "eingegebener Gang"},
		{"revs.vibration", nil, "vibration", "Vibration"},
		{"revs.sound", nil, "sound", "Klang"},
		{"revs.both", nil, "vibration and sound", "Vibration und Klang"},
		{"stage.smoothing", nil, "smoothing", "Glätten"},
		{"stage.finding", nil, "finding runs", "Läufe suchen"},
		{"stage.measuring", nil, "measuring", "Messen"},
		{"stage.fitting", nil, "fitting the road load", "Fahrwiderstand anpassen"},
	}
}
