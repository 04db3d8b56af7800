package words

import "stillair/sensors/finding"

// ofApp holds what package app says.
func ofApp() []Entry {
	return append(ofInputs(), []Entry{
		{"desk.several_recordings", nil, "it holds several recordings, and a copy of one would leave out the others",
			"sie enthält mehrere Aufzeichnungen; in einer Kopie der einen würden die anderen fehlen"},
		{"desk.give_one", nil, "give a file with one recording", "eine Datei mit einer einzigen Aufzeichnung angeben"},
		{"desk.different_bikes", nil, "give rides of one bike, or --different-bikes to compare bikes; the output then says so",
			"Fahrten eines Motorrads angeben, oder mit --different-bikes Motorräder vergleichen; das steht dann dabei"},
		{"desk.not_exported", args(finding.Count("failed", 2), finding.Count("of", 5)), "{failed} of {of} recordings could not be exported",
			"{failed} von {of} Aufzeichnungen ließen sich nicht exportieren"},
		{"desk.listed_above", nil, "the reason for each is listed above", "der Grund steht jeweils oben"},
		{"desk.nothing_left", args(finding.Distance("ends", 2000)), "nothing is left of the ride without its first and last {ends.0}",
			"ohne die ersten und letzten {ends.0} bleibt von der Fahrt nichts übrig"},
		{"desk.less_ends", nil, "give a shorter distance with --ends, if nobody else will have the file",
			"mit --ends weniger abschneiden, wenn niemand sonst die Datei bekommt"},
		{"desk.no_places", args(finding.Text("format", "gpx")), "the recording holds no position to write as {format}",
			"die Aufzeichnung enthält keine Position, die sich als {format} schreiben lässt"},
		{"desk.other_format", nil, "choose another format, such as csv", "ein anderes Format wählen, etwa csv"},
		{"desk.would_replace", args(finding.Text("path", "ride.csv")), "the export would replace the recording {path}", "der Export würde die Aufzeichnung {path} überschreiben"},
		{"desk.other_folder", nil, "choose another folder with --into", "mit --into einen anderen Ordner wählen"},
		{"desk.empty_folder", nil, "the folder holds no recording", "der Ordner enthält keine Aufzeichnung"},
		{"desk.give_folder", nil, "give a folder with session files (.jsonl.gz), zipped plain logs or folders with motion.csv",
			"einen Ordner mit Fahrtdateien (.jsonl.gz), gepackten einfachen Aufzeichnungen oder Ordnern mit motion.csv angeben"},
		{"desk.no_road_load", nil, "it holds no road load", "sie enthält keinen Fahrwiderstand"},
		{"desk.ride_both_ways", nil, "give a ride with coast-downs in both directions", "eine Fahrt mit Ausrollen in beide Richtungen angeben"},
		{"desk.ride_or_flags", nil, "give results of a ride with coast-downs in both directions, or --cda, --crr and --mass",
			"Ergebnisse einer Fahrt mit Ausrollen in beide Richtungen angeben, oder --cda, --crr und --mass"},
	}...)
}

// ofInputs holds what is said about a file that is to be opened.
func ofInputs() []Entry {
	return []Entry{
		{"input.no_such_file", nil, "there is no such file or folder", "diese Datei oder diesen Ordner gibt es nicht"},
		{"input.not_allowed", nil, "you are not allowed to read it", "dafür fehlt das Leserecht"},
		{"input.permission", nil, "give yourself permission to read it, or copy it", "sich das Leserecht geben oder sie kopieren"},
		{"input.check_file", nil, "check that it is the right file", "prüfen, ob es die richtige Datei ist"},
		{"input.large_file", args(finding.Size("most", 512<<20)), "the file is larger than {most}", "die Datei ist größer als {most}"},
		{"input.results", nil, "these are results, not a recording", "das sind Ergebnisse, keine Aufzeichnung"},
		{"input.give_source", nil, "give the recording they were made from", "die Aufzeichnung angeben, aus der sie entstanden sind"},
		{"input.no_recording", args(finding.Of("why", finding.New("input.not_text"))), "this is not a readable recording: {why}",
			"das ist keine lesbare Aufzeichnung: {why}"},
		{"input.not_text", nil, "its content is not text", "der Inhalt ist kein Text"},
		{"input.begins_with", args(finding.Text("text", "hello")), `it begins with "{text}"`, "sie beginnt mit „{text}“"},
		{"input.kinds", nil, "give a session file (.jsonl.gz), a folder or .zip with motion.csv and gnss.csv, JSON Lines of a browser, NMEA sentences, the tables of a sensor logger (.csv, a folder or .zip of them), GPX, or FIT",
			"eine Fahrtdatei (.jsonl.gz) angeben, einen Ordner oder eine .zip-Datei mit motion.csv und gnss.csv, JSON Lines eines Browsers, NMEA-Sätze, die Tabellen eines Sensorloggers (.csv, als Ordner oder .zip), GPX oder FIT"},
	}
}
