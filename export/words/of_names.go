package words

// ofNames holds the names of answers of a comparison, causes of uncertainty,
// sources of engine speed and stages of an analysis. The English ones stand in
// results of version 1.
func ofNames() []Entry {
	return []Entry{
		{"compare.differs", nil, "differs", "verschieden"},
		{"compare.none_shown", nil, "no difference shown", "kein Unterschied gezeigt"},
		{"compare.cannot_tell", nil, "cannot tell yet", "noch nicht klar"},
		{"limit.gusts", nil, "gusts", "Böen"},
		{"limit.wind", nil, "wind from pair to pair", "Wind von Paar zu Paar"},
		{"limit.receiver", nil, "the satellite receiver", "der Satellitenempfang"},
		{"limit.road", nil, "bumps and dips in the road", "Unebenheiten der Straße"},
		{"limit.slope", nil, "the slope of the road", "das Gefälle der Straße"},
		{"limit.posture", nil, "drag that differs from run to run", "Luftwiderstand, der von Lauf zu Lauf anders ist"},
		{"limit.mass", nil, "the weight of bike and rider", "das Gewicht von Maschine und Fahrer"},
		{"limit.air", nil, "the density of the air", "die Dichte der Luft"},
		{"limit.assumed", nil, "assumptions about tyres, cross-wind and posture", "Annahmen zu Reifen, Seitenwind und Haltung"},
		{"limit.days", nil, "what differs from day to day", "was sich von Tag zu Tag ändert"},
		{"revs.gear", nil, "the gear entered", "eingegebener Gang"},
		{"revs.vibration", nil, "vibration", "Vibration"},
		{"revs.sound", nil, "sound", "Geräusch"},
		{"revs.both", nil, "vibration and sound", "Vibration und Geräusch"},
		{"stage.smoothing", nil, "smoothing", "Glätten"},
		{"stage.finding", nil, "finding runs", "Läufe suchen"},
		{"stage.measuring", nil, "measuring", "Messen"},
		{"stage.fitting", nil, "fitting the road load", "Fahrwiderstand anpassen"},
	}
}
