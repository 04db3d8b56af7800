package words

import "stillair/sensors/finding"

// ofSheets holds what is said about the tables of general-purpose loggers.
func ofSheets() []Entry {
	column := finding.Text("column", "v")
	what := finding.Of("what", finding.New("sheets.speed"))
	return []Entry{
		{"sheets.force", nil, "acceleration with gravity", "Beschleunigung mit Schwerkraft"},
		{"sheets.linear", nil, "acceleration without gravity", "Beschleunigung ohne Schwerkraft"},
		{"sheets.gravity", nil, "gravity", "Schwerkraft"},
		{"sheets.turn", nil, "turn rate", "Drehrate"},
		{"sheets.speed", nil, "speed", "Tempo"},
		{"sheets.position", nil, "position", "Position"},
		{"sheets.pressure", nil, "air pressure", "Luftdruck"},
		{"sheets.time", nil, "time", "Zeit"},
		{"sheets.column", args(what, column), `{what} from column "{column}"`, `{what} aus Spalte „{column}“`},
		{"sheets.column_in", args(finding.Of("what", finding.New("sheets.time")), column, finding.Text("unit", "ms"), finding.Of("why", finding.New("sheets.header_says"))),
			`{what} from column "{column}", read as {unit} ({why})`, `{what} aus Spalte „{column}“, gelesen als {unit} ({why})`},
		{"sheets.header_says", nil, "as its header says", "laut Kopfzeile"},
		{"sheets.numbers_show", nil, "as the numbers show", "den Zahlen nach"},
		{"sheets.asked", nil, "as given", "wie angegeben"},
		{"sheets.usual", nil, "as usual", "wie üblich"},
		{"sheets.odd_rows", nil, "rows without a readable number are left out", "Zeilen ohne lesbare Zahl bleiben weg"},
		{"sheets.no_speed", nil, "rows of the GPS without a speed are left out", "GPS-Zeilen ohne Tempo bleiben weg"},
		{"sheets.wild_time", nil, "rows whose time is more than a year away from the others are left out", "Zeilen, deren Zeit über ein Jahr von den anderen abweicht, bleiben weg"},
		{"sheets.speed_from_way", nil, "there is no column of speed: speeds are calculated from the positions and less accurate",
			"es gibt keine Spalte mit dem Tempo: es wird aus den Positionen berechnet und ist weniger genau"},
		{"sheets.without_gravity", nil, "the acceleration is without gravity, so up and forward are unknown: GPS alone is used. Record it with gravity next time",
			"die Beschleunigung ist ohne Schwerkraft, also sind oben und vorn unbekannt: nur GPS wird benutzt. Nächstes Mal mit Schwerkraft aufnehmen"},
		{"sheets.no_motion", nil, "there is no acceleration: GPS alone is used", "es gibt keine Beschleunigung: nur GPS wird benutzt"},
		{"sheets.other_clock", args(finding.Text("file", "Location.csv")), "no column of time runs together with one of {file}: GPS alone is used",
			"keine Zeitspalte läuft mit einer von {file} zusammen: nur GPS wird benutzt"},
		{"sheets.slow_motion", nil, "the acceleration is recorded too rarely to be useful: GPS alone is used. Record it at 50 Hz or more next time",
			"die Beschleunigung ist zu selten aufgezeichnet: nur GPS wird benutzt. Nächstes Mal mit mindestens 50 Hz aufnehmen"},
		{"sheets.no_track", nil, "no table has speeds or positions of a GPS", "keine Tabelle enthält Tempo oder Position eines GPS"},
		{"sheets.name_track", nil, "if one has, say which column it is: --column speed=NAME", "falls doch, die Spalte angeben: --column speed=NAME"},
		{"sheets.no_clock", nil, "no column of this table is a time", "keine Spalte dieser Tabelle ist eine Zeit"},
		{"sheets.name_clock", nil, "if one is, say which and its unit: --column \"time=NAME as ms\"", "falls doch, Spalte und Einheit angeben: --column \"time=NAME as ms\""},
		{"track.no_time", nil, "points without a time or a position are left out", "Punkte ohne Zeit oder Position bleiben weg"},
		{"track.no_points", nil, "the track has no points with a time", "der Track hat keine Punkte mit einer Zeit"},
		{"track.with_times", nil, "give a recorded track, not a planned route", "einen aufgezeichneten Track angeben, keine geplante Route"},
		{"sheets.ask_role", args(finding.Text("text", "pace=v")), `"{text}" is not understood: write speed=NAME, "time=NAME as ms" or speed=none; there are time, fix-time, ax, ay, az, gx, gy, gz, speed, lat, lon, alt, bearing and pressure`,
			`„{text}“ ist nicht verständlich: speed=NAME, „time=NAME as ms“ oder speed=none schreiben; es gibt time, fix-time, ax, ay, az, gx, gy, gz, speed, lat, lon, alt, bearing und pressure`},
		{"sheets.ask_unit", args(finding.Text("unit", "furlongs"), what), `"{unit}" is no unit of {what} that can be read`, `„{unit}“ ist keine lesbare Einheit für {what}`},
	}
}
