package words

import (
	"slices"

	"stillair/sensors/finding"
)

// ofSessions holds what the reader of session files says.
func ofSessions() []Entry {
	return slices.Concat(ofSessionFiles(), ofSessionParts(), ofSessionLines())
}

// ofSessionFiles holds what makes a file no session, and what to do then.
func ofSessionFiles() []Entry {
	why := whyExample()
	return []Entry{
		{"session.no_gzip", nil, "this is not a session file: it does not begin like a gzip file", "das ist keine Fahrtdatei: sie beginnt nicht wie eine gzip-Datei"},
		{"session.give_or_rename", nil, "give a session file (.jsonl.gz), or another kind of log under its own name",
			"eine Fahrtdatei (.jsonl.gz) angeben oder eine andere Aufzeichnung unter ihrem eigenen Namen"},
		{"session.no_whole_part", nil, "it holds no complete part of a session", "sie enthält keinen vollständigen Teil einer Fahrt"},
		{"session.another_copy", nil, "nothing can be recovered from it; look for another copy", "daraus ist nichts zu retten; nach einer anderen Kopie suchen"},
		{"session.only_gzip", nil, "it is compressed like a session file but holds no session", "sie ist gepackt wie eine Fahrtdatei, enthält aber keine Fahrt"},
		{"session.unpack", nil, "unpack it with gunzip and give what is inside", "mit gunzip entpacken und den Inhalt angeben"},
		{"session.unreadable_on", args(why), "the rest cannot be read: {why}", "der Rest lässt sich nicht lesen: {why}"},
		{"session.as_recorded", nil, "give the session file as it was recorded", "die Fahrtdatei so angeben, wie sie aufgezeichnet wurde"},
		{"session.no_line", nil, "it holds no line of a session", "sie enthält keine Zeile einer Fahrt"},
		{"session.give_session", nil, "give a session file", "eine Fahrtdatei angeben"},
		{"session.other_format", args(finding.Text("format", "diary"), finding.Text("want", "stillair session")),
			`the format is "{format}", not "{want}"`, "das Format ist „{format}“, nicht „{want}“"},
		{"session.later_version", args(finding.Text("version", "9"), finding.Count("most", 2)),
			"the file has version {version} of the format; this program reads up to version {most}",
			"die Datei hat Version {version} des Formats; dieses Programm liest bis Version {most}"},
		{"session.newer_program", nil, "use a newer program", "ein neueres Programm verwenden"},
		{"session.other_axes", args(finding.Text("axes", "nose down"), finding.Text("want", "specific force up")),
			`the axes are "{axes}", not "{want}"`, "die Achsen sind „{axes}“, nicht „{want}“"},
		{"session.convert_axes", nil, "a session file has its specific force up; convert it as a plain log",
			"in einer Fahrtdatei zeigt die spezifische Kraft nach oben; als einfache Aufzeichnung umwandeln"},
		{"session.long_line", nil, "a line is longer than any in a session file", "eine Zeile ist länger als jede in einer Fahrtdatei"},
		{"session.too_much", nil, "it unpacks to more than any session holds", "entpackt ist sie größer, als eine Fahrt sein kann"},
		{"session.cause", args(why), "{why}", "{why}"},
		{"session.old_sentence", args(finding.Text("text", "no satellites yet")), "{text}", "{text}"},
	}
}

// ofSessionParts holds what is said about parts and recordings.
func ofSessionParts() []Entry {
	why := whyExample()
	from, to := finding.Moment("from", 312.25), finding.Moment("to", 318.5)
	span := finding.Of("span", finding.New("session.span", from, to))
	begun := finding.Of("begun", finding.New("session.begun", finding.Text("at", "2026-05-01 14:02 UTC")))
	return []Entry{
		{"session.begun", args(finding.Text("at", "2026-05-01 14:02 UTC")), "started {at}", "begonnen {at}"},
		{"session.begun_unknown", nil, "start time unknown", "Beginn unbekannt"},
		{"session.another", args(begun, finding.Time("long", 640)), "the file holds another recording ({begun}, {long.0} long); desk export writes each to a file of its own",
			"die Datei enthält noch eine Aufzeichnung ({begun}, {long.0} lang); desk export schreibt jede in eine eigene Datei"},
		{"session.another_empty", args(begun), "the file holds another recording ({begun}, without samples); desk export writes each to a file of its own",
			"die Datei enthält noch eine Aufzeichnung ({begun}, ohne Messwerte); desk export schreibt jede in eine eigene Datei"},
		{"session.stray_part", nil, "a part that holds nothing of a recording is left out", "ein Teil ohne Inhalt einer Aufzeichnung bleibt weg"},
		{"session.missing", args(span), "the file is damaged; missing: {span}", "die Datei ist beschädigt; es fehlt: {span}"},
		{"session.unstored", args(span), "never stored: {span}", "nie gespeichert: {span}"},
		{"session.span", args(from, to), "{from.2} to {to.2}", "{from.2} bis {to.2}"},
		{"session.span_before", args(to), "everything before {to.2}", "alles vor {to.2}"},
		{"session.span_after", args(from), "everything after {from.2}", "alles nach {from.2}"},
		{"session.span_all", nil, "the whole time", "die ganze Zeit"},
		{"session.torn", args(finding.Moment("after", 318.5)), "the file ends in the middle of a part: what was recorded after {after.2} is lost, usually less than a second",
			"die Datei endet mitten in einem Teil: was nach {after.2} aufgezeichnet wurde, ist verloren, meist weniger als eine Sekunde"},
		{"session.torn_at_once", nil, "the file ends in the middle of a part, with nothing of the ride before it",
			"die Datei endet mitten in einem Teil, und davor steht nichts von der Fahrt"},
		{"session.damaged_behind", nil, "after the end of the recording, the file goes on with something damaged",
			"nach dem Ende der Aufzeichnung folgt in der Datei etwas Beschädigtes"},
		{"session.not_closed", nil, "the recording was not closed: the phone or the program stopped unexpectedly",
			"die Aufzeichnung wurde nicht abgeschlossen: Telefon oder Programm blieben unerwartet stehen"},
		{"session.part_twice", nil, "a part is in the file twice; one copy is left out", "ein Teil steht doppelt in der Datei; einer bleibt weg"},
		{"session.part_number", nil, "a part has the number of another one and is left out", "ein Teil hat die Nummer eines anderen und bleibt weg"},
		{"session.many_recordings", args(finding.Count("most", 32)), "the file holds parts of more than {most} recordings; those of the others are left out",
			"die Datei enthält Teile von mehr als {most} Aufzeichnungen; die der übrigen bleiben weg"},
		{"session.recording_left_out", args(why), "a recording in the file is left out: {why}", "eine Aufzeichnung in der Datei bleibt weg: {why}"},
		{"session.rest_unreadable", args(why), "the rest of the file cannot be read: {why}", "der Rest der Datei lässt sich nicht lesen: {why}"},
		{"session.rest_left_out", args(why), "the rest of the file is left out: {why}", "der Rest der Datei bleibt weg: {why}"},
		{"session.more_odd", nil, "there are more errors in the file", "die Datei enthält weitere Fehler"},
	}
}

// ofSessionLines holds what is said about single lines and samples.
func ofSessionLines() []Entry {
	what := finding.Of("what", finding.New("session.samples"))
	return []Entry{
		{"session.not_json", nil, "a line that is not a JSON object is left out", "eine Zeile, die kein JSON-Objekt ist, bleibt weg"},
		{"session.unknown_type", args(finding.Text("type", "moon")), `a line of the unknown type "{type}" is left out`, "eine Zeile der unbekannten Art „{type}“ bleibt weg"},
		{"session.ride_left_out", args(whyExample()), "what was entered about the ride is left out: {why}", "die Angaben zur Fahrt bleiben weg: {why}"},
		{"session.fix_incomplete", nil, "a GPS fix without a time or a speed is left out", "eine GPS-Position ohne Zeit oder Geschwindigkeit bleibt weg"},
		{"session.state_incomplete", nil, "a sensor state without a time is left out", "ein Sensorzustand ohne Zeit bleibt weg"},
		{"session.pressure_columns", nil, "a pressure line whose columns differ in length is left out", "eine Druckzeile mit verschieden langen Spalten bleibt weg"},
		{"session.pressure_incomplete", nil, "a pressure without a time or a value is left out", "ein Luftdruck ohne Zeit oder Wert bleibt weg"},
		{"session.motion_columns", nil, "a motion line whose columns are missing or differ in length is left out",
			"eine Bewegungszeile mit fehlenden oder verschieden langen Spalten bleibt weg"},
		{"session.motion_incomplete", nil, "a motion sample without a time or a force is left out", "ein Bewegungswert ohne Zeit oder Kraft bleibt weg"},
		{"session.sound_incomplete", nil, "a stretch of sound without a time or a rate is left out", "ein Tonabschnitt ohne Zeit oder Abtastrate bleibt weg"},
		{"session.sound_empty", nil, "a stretch of sound without levels is left out", "ein Tonabschnitt ohne Pegel bleibt weg"},
		{"session.sound_level", nil, "a stretch of sound is left out: a level is not a number, or beyond full scale",
			"ein Tonabschnitt bleibt weg: ein Pegel ist keine Zahl oder jenseits der Vollaussteuerung"},
		{"session.sound_overlap", nil, "stretches of sound that begin before the previous one ends were left out",
			"Tonabschnitte, die vor dem Ende des vorigen beginnen, wurden weggelassen"},
		{"session.sorted", args(what), "{what} were out of order and have been sorted by time", "{what} standen nicht in der richtigen Reihenfolge und wurden nach der Zeit sortiert"},
		{"session.doubled", args(what), "{what} with the same time as an earlier one were left out", "{what} mit derselben Zeit wie frühere wurden weggelassen"},
		{"session.samples", nil, "motion samples", "Bewegungswerte"},
		{"session.fixes", nil, "GPS fixes", "GPS-Positionen"},
		{"session.pressures", nil, "air pressures", "Luftdruckwerte"},
		{"session.sounds", nil, "stretches of sound", "Tonabschnitte"},
	}
}
