package words

import (
	"slices"

	"stillair/sensors/finding"
)

// ofSensors holds what package sensors and its packages say.
func ofSensors() []Entry {
	return slices.Concat(ofInput(), ofRepair(), ofArchives(), ofTables(), ofRideFile(), ofBrowserLog(), ofSentences(), ofSheets(), ofSenses(), ofBrowser(), ofAndroid(), ofSimulation())
}

// whyExample is an example of a cause within another finding.
func whyExample() finding.Arg { return finding.Of("why", finding.New("json.not_whole")) }

// ofInput holds what every reader of files says.
func ofInput() []Entry {
	sample := finding.Of("what", finding.New("input.sample"))
	return []Entry{
		{"log.other_part", args(finding.Time("length", 1800), finding.Count("samples", 90000)),
			"another ride of {length.0} is in the same recording, hours away from this one, and is left out: {samples} samples",
			"in derselben Aufzeichnung steckt, Stunden entfernt, noch eine Fahrt von {length.0}; sie bleibt hier weg: {samples} Werte"},
		{"log.bursts", args(finding.Count("readings", 20), finding.Time("jitter", 0.004)),
			"the motion readings were time-stamped in bursts of about {readings}: they were spaced evenly, to within {jitter.3}",
			"die Bewegungsdaten haben Zeitstempel in Schüben von etwa {readings} Messungen: sie wurden gleichmäßig verteilt, auf {jitter.3} genau"},
		{"log.speed_scale", args(finding.Num("factor", 1.05).With(0.002)),
			"the GPS speeds are {factor±} times what the positions say: a unit or a conversion went wrong, so they were divided by that",
			"die GPS-Geschwindigkeiten sind {factor±}-mal so groß, wie die Positionen es zeigen: Eine Einheit oder Umrechnung stimmt nicht, daher wurden sie dadurch geteilt"},
		{"log.stale_fixes", nil, "an old position and speed at the start, from before this ride, is left out",
			"eine alte Position samt Tempo am Anfang, von vor dieser Fahrt, bleibt weg"},
		{"log.false_zero", nil, "a GPS speed of 0 while the bike was moving is left out", "ein GPS-Tempo von 0 während der Fahrt bleibt weg"},
		{"log.wild_stamp", nil, "a sample has a time far from all others and is left out", "ein Wert hat eine Zeit weit weg von allen anderen und bleibt weg"},
		{"input.unreadable", args(whyExample()), "the file cannot be read: {why}", "die Datei lässt sich nicht lesen: {why}"},
		{"input.cannot_open", args(whyExample()), "it cannot be opened: {why}", "lässt sich nicht öffnen: {why}"},
		{"input.check_name", nil, "check the name", "den Namen prüfen"},
		{"input.copy_again", nil, "copy it again from where it was recorded", "noch einmal vom Aufnahmegerät kopieren"},
		{"input.damaged", args(whyExample()), "the file is damaged from here on ({why}); everything before is kept",
			"ab hier ist die Datei beschädigt ({why}); alles davor bleibt erhalten"},
		{"input.ends_early", nil, "it ends in the middle", "sie endet mittendrin"},
		{"input.packing", nil, "its compressed data are damaged", "die gepackten Daten sind beschädigt"},
		{"input.too_many", args(finding.Count("most", 3_000_000)), "more than {most} samples", "mehr als {most} Messwerte"},
		{"input.shorter", nil, "split the ride into shorter logs", "die Fahrt in kürzere Aufzeichnungen teilen"},
		{"input.long_line", args(finding.Size("most", 64<<10)), "the line is longer than {most}", "die Zeile ist länger als {most}"},
		{"input.line_left_out", args(whyExample()), "{why}; the line is left out", "{why}; die Zeile wird ausgelassen"},
		{"input.other_recording", args(finding.Time("length", 1800), finding.Count("samples", 90000)),
			"the times start again: another recording of {length.0} is in the same file and is left out: {samples} samples",
			"die Zeiten beginnen von vorn: in derselben Datei steckt noch eine Aufzeichnung von {length.0}; sie bleibt weg: {samples} Werte"},
		{"input.sorted", args(sample), "{what} was out of order and has been sorted by time",
			"{what} stand nicht in der richtigen Reihenfolge; es wurde nach der Zeit sortiert"},
		{"input.doubled", args(sample), "{what} has the same time as an earlier one and is left out",
			"{what} hat dieselbe Zeit wie schon etwas davor und wird ausgelassen"},
		{"input.sample", nil, "a sample", "ein Messwert"},
		{"input.fix", nil, "a GPS fix", "eine GPS-Position"},
		{"input.motion_event", nil, "a motion event", "ein Bewegungsereignis"},
		{"json.not_whole", nil, "this is not complete, valid JSON", "das ist kein vollständiges, gültiges JSON"},
		{"json.deep", args(finding.Count("most", 32)), "the JSON is nested more than {most} levels deep", "das JSON ist mehr als {most} Ebenen tief verschachtelt"},
		{"json.no_object", nil, "the file is not a JSON object", "die Datei ist kein JSON-Objekt"},
		{"json.check", nil, "check its brackets, commas and quotation marks", "Klammern, Kommas und Anführungszeichen prüfen"},
		{"replay.pace", args(finding.Num("times", -1)), "a ride cannot be replayed at {times} times its speed; use a number above zero",
			"eine Fahrt lässt sich nicht mit dem {times}-Fachen ihres Tempos abspielen; eine Zahl über null angeben"},
	}
}

// ofRepair holds what is found of units, signs and order in a recorded log.
func ofRepair() []Entry {
	return []Entry{
		{"speed.converted", args(finding.Text("unit", "mph"), finding.Of("why", finding.New("speed.positions_show"))),
			"the speeds are in {unit}, as {why}, and were converted to m/s", "die Geschwindigkeiten sind in {unit}, wie {why}, und wurden in m/s umgerechnet"},
		{"speed.positions_show", nil, "the positions show", "die Positionen zeigen"},
		{"speed.accelerometer_shows", nil, "the accelerometer shows", "der Beschleunigungssensor zeigt"},
		{"speed.gain", args(finding.Num("times", 2.2)), "the speeds change {times.1} times as much as the accelerometer shows",
			"die Geschwindigkeiten ändern sich {times.1}-mal so stark, wie der Beschleunigungssensor zeigt"},
		{"speed.too_fast", args(finding.Num("top", 180)), "the speeds go up to {top}, which no motorcycle reaches in m/s",
			"die Geschwindigkeiten gehen bis {top}; das erreicht in m/s kein Motorrad"},
		{"speed.impossible", args(finding.Speed("most", 150)), "a speed above {most} is impossible: the GPS fix is left out",
			"über {most} ist unmöglich: die GPS-Position wird ausgelassen"},
		{"speed.scaled", args(finding.Share("share", 0.05), finding.Of("why", finding.New("speed.positions_show"))), "{why} that the speeds are off by {share}: they are corrected",
			"{why}, dass das Tempo um {share} falsch ist: es wird korrigiert"},
		{"speed.against_positions", args(finding.Share("share", 0.05)), "the speeds differ from the positions by {share}, and stay as given",
			"das Tempo weicht um {share} von den Positionen ab und bleibt wie angegeben"},
		{"speed.unchecked", nil, "positions and accelerometer do not confirm the unit of the speeds: they are read as m/s",
			"Positionen und Beschleunigungssensor bestätigen die Einheit des Tempos nicht: es wird als m/s gelesen"},
		{"speed.give_mps", nil, "write the speeds in m/s", "die Geschwindigkeiten in m/s angeben"},
		{"force.no_gravity", args(finding.Acceleration("size", 0.4)), "the acceleration is only {size.2} without vibration: gravity is missing",
			"die Beschleunigung beträgt ohne Vibration nur {size.2}: die Schwerkraft fehlt"},
		{"force.record_raw", nil, "record the raw accelerometer, which shows gravity at rest, not the linear acceleration",
			"den Beschleunigungssensor selbst aufzeichnen, der im Stand die Schwerkraft zeigt, nicht die lineare Beschleunigung"},
		{"force.not_gravity", args(finding.Num("size", 32.2)), "the acceleration is {size.1} without vibration, which is not gravity in any known unit",
			"die Beschleunigung beträgt ohne Vibration {size.1}; das ist in keiner bekannten Einheit die Schwerkraft"},
		{"force.give_mps2", nil, "write the specific force in m/s²", "die spezifische Kraft in m/s² angeben"},
		{"force.converted", args(finding.Text("unit", "g"), finding.Num("size", 1)), "the acceleration is in {unit} ({size.2} at rest) and was converted to m/s²",
			"die Beschleunigung ist in {unit} ({size.2} im Stand) und wurde in m/s² umgerechnet"},
		{"force.impossible", args(finding.Acceleration("most", 1000)), "an acceleration above {most.0} is impossible: the sample is left out",
			"eine Beschleunigung über {most.0} ist unmöglich: der Messwert wird ausgelassen"},
		{"turn.converted", nil, "the turn rate is in deg/s and was converted to rad/s", "die Drehrate ist in Grad/s und wurde in rad/s umgerechnet"},
		{"turn.in_radians", nil, "the turn rate was already in rad/s and is not converted from deg/s", "die Drehrate war schon in rad/s und wird nicht aus Grad/s umgerechnet"},
		{"turn.impossible", args(finding.TurnRate("most", 100)), "a turn rate above {most.0} is impossible and is treated as missing",
			"eine Drehrate über {most.0} ist unmöglich und gilt als fehlend"},
		{"axes.contradicted", nil, "the bends show that the acceleration points down at rest, but the file says up. The file was followed, so left and right may be swapped",
			"die Kurven zeigen, dass die Beschleunigung im Stand nach unten zeigt, die Datei sagt nach oben. Die Datei gilt, links und rechts können also vertauscht sein"},
		{"axes.turned_over", nil, "the bends show that the acceleration points down at rest; its sign was reversed",
			"die Kurven zeigen, dass die Beschleunigung im Stand nach unten zeigt; ihr Vorzeichen wurde umgedreht"},
		{"axes.unknown", nil, "neither the file nor a bend shows whether the acceleration points up or down at rest; up is assumed (only left and right depend on it)",
			"weder die Datei noch eine Kurve zeigt, ob die Beschleunigung im Stand nach oben oder unten zeigt; angenommen wird oben (nur links und rechts hängen davon ab)"},
		{"axes.unknown_word", args(finding.Text("value", "left")), "axes is {value}, which has no meaning here", "axes ist {value}; das hat hier keine Bedeutung"},
		{"axes.write", args(finding.Text("up", "specific force up"), finding.Text("down", "specific force down")),
			`write "{up}" or "{down}", or leave it out`, `„{up}“ oder „{down}“ schreiben oder weglassen`},
	}
}

// ofSentences holds what is said about a receiver's NMEA sentences.
func ofSentences() []Entry {
	return []Entry{
		{"nmea.no_arrival", nil, "the sentences say when they were measured, but not when they arrived on the clock of motion.csv",
			"die Sätze nennen die Zeit der Messung, aber nicht die Ankunft auf der Uhr von motion.csv"},
		{"nmea.stamp_lines", nil, "put the time of arrival on that clock before each line, in seconds: 12.345,$GPRMC,…",
			"vor jede Zeile die Ankunft auf dieser Uhr in Sekunden schreiben: 12.345,$GPRMC,…"},
		{"nmea.arrival_is_own", nil, "motion.csv is in Unix time, so each fix is taken to arrive at the time it gives; the lag includes the difference between the two clocks",
			"motion.csv ist in Unix-Zeit, daher gilt die Zeit jeder Position als ihre Ankunft; der Versatz enthält den Unterschied beider Uhren"},
		{"nmea.bad_lines", args(finding.Count("bad", 12), finding.Count("of", 20), finding.Of("first", finding.New("nmea.checksum"))),
			"{bad} of {of} lines are not valid NMEA sentences; the first: {first}", "{bad} von {of} Zeilen sind keine gültigen NMEA-Sätze; die erste: {first}"},
		{"nmea.record_as_is", nil, "record the receiver's lines unchanged, with their checksums", "die Zeilen des Empfängers unverändert aufzeichnen, mit Prüfsummen"},
		{"nmea.no_time", nil, "a fix has neither a date nor a time of arrival and is left out", "eine Position hat weder Datum noch Ankunftszeit und wird ausgelassen"},
		{"nmea.no_fix", nil, "there is no fix with a speed", "keine Position hat eine Geschwindigkeit"},
		{"nmea.record_rmc", nil, "record RMC sentences, or VTG with GGA, while the receiver sees satellites",
			"RMC-Sätze oder VTG mit GGA aufzeichnen, während der Empfänger Satelliten sieht"},
		{"nmea.long_line", args(finding.Size("most", 1024)), "a line is longer than {most} and is left out", "eine Zeile ist länger als {most} und wird ausgelassen"},
		{"nmea.void", nil, "the receiver marks a fix as invalid; it is left out", "der Empfänger meldet eine Position als ungültig; sie wird ausgelassen"},
		{"nmea.no_speed", nil, "a time without a speed is not a fix", "eine Zeit ohne Geschwindigkeit ergibt keine Position"},
		{"nmea.no_sentence", nil, "the line has no NMEA sentence", "die Zeile enthält keinen NMEA-Satz"},
		{"nmea.checksum", nil, "the checksum is wrong or missing: the line was garbled", "die Prüfsumme ist falsch oder fehlt: die Zeile wurde verstümmelt"},
		{"nmea.field", args(finding.Of("what", finding.New("nmea.number")), finding.Text("value", "fast")),
			`"{value}" cannot be read as {what}`, `„{value}“ lässt sich nicht lesen als {what}`},
		{"nmea.number", nil, "a number", "Zahl"},
		{"nmea.time", nil, "a time", "Uhrzeit"},
		{"nmea.date", nil, "a date", "Datum"},
		{"nmea.coordinate", nil, "a coordinate", "Koordinate"},
		{"nmea.negative_speed", nil, "the speed is below zero", "die Geschwindigkeit ist kleiner als null"},
	}
}

// ofBrowserLog holds what is said about a browser's recorded events.
func ofBrowserLog() []Entry {
	noForce := finding.New("w3c.no_force")
	return []Entry{
		{"w3c.no_arrival", nil, "nothing shows when the positions arrived on the clock of the motion events",
			"nichts zeigt, wann die Positionen auf der Uhr der Bewegungsereignisse ankamen"},
		{"w3c.stamp_or_order", nil, `add "timeStamp": performance.now() to each position, or write all lines in the order in which they arrive`,
			`jeder Position "timeStamp": performance.now() mitgeben oder alle Zeilen in der Reihenfolge der Ankunft schreiben`},
		{"w3c.stamp", nil, `add "timeStamp": performance.now() to each position`, `jeder Position "timeStamp": performance.now() mitgeben`},
		{"w3c.no_arrivals", nil, "no position has a time of arrival", "keine Position hat eine Ankunftszeit"},
		{"w3c.position_left_out", args(finding.Speed("most", 150)), "a position has no time of arrival, or a speed above {most}; it is left out",
			"eine Position hat keine Ankunftszeit oder ist schneller als {most}; sie wird ausgelassen"},
		{"w3c.arrival_is_acquisition", nil, "a position is taken to arrive when it was measured; the lag includes the difference",
			"als Ankunft einer Position gilt die Zeit ihrer Messung; der Versatz enthält den Unterschied"},
		{"w3c.arrival_by_origin", nil, "a position is taken to arrive when it was measured, moved to the page's clock by timeOrigin; the lag includes the difference",
			"als Ankunft einer Position gilt die Zeit ihrer Messung, mit timeOrigin auf die Uhr der Seite gebracht; der Versatz enthält den Unterschied"},
		{"w3c.not_json", nil, "this is not a complete JSON object", "das ist kein vollständiges JSON-Objekt"},
		{"w3c.no_force", nil, "accelerationIncludingGravity lacks x, y or z", "in accelerationIncludingGravity fehlt x, y oder z"},
		{"w3c.no_number", nil, "a member that must be a number is something else", "ein Feld, das eine Zahl sein muss, ist etwas anderes"},
		{"w3c.no_speed", nil, "coords.speed is null: the position has no speed", "coords.speed ist null: die Position hat keine Geschwindigkeit"},
		{"w3c.axes", nil, `the value of "axes" has no meaning here`, `der Wert von "axes" hat hier keine Bedeutung`},
		{"w3c.unknown_object", nil, "an object is neither motion nor position and is ignored", "ein Objekt ist weder Bewegung noch Position und wird übergangen"},
		{"w3c.no_timestamp", nil, "the object has no timeStamp", "das Objekt hat keinen timeStamp"},
		{"w3c.bad_lines", args(finding.Count("bad", 12), finding.Count("of", 20), finding.Of("first", noForce)),
			"{bad} of {of} lines cannot be read; the first: {first}", "{bad} von {of} Zeilen sind nicht lesbar; die erste: {first}"},
		{"w3c.hardly_any_line", args(finding.Of("why", noForce)), "hardly any line can be read; this one: {why}", "kaum eine Zeile ist lesbar; diese: {why}"},
		{"w3c.object_a_line", nil, "write one JSON object per line, with the W3C's names", "je Zeile ein JSON-Objekt mit den Namen des W3C schreiben"},
		{"w3c.no_motion", nil, "there is no motion event", "es gibt kein Bewegungsereignis"},
		{"w3c.record_motion", nil, "record devicemotion beside the positions", "neben den Positionen devicemotion aufzeichnen"},
		{"w3c.no_fix", nil, "no position has a speed", "keine Position hat eine Geschwindigkeit"},
		{"w3c.high_accuracy", nil, "record positions with enableHighAccuracy, under open sky", "Positionen mit enableHighAccuracy unter freiem Himmel aufzeichnen"},
	}
}
