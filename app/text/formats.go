package text

// Formats is the files that are offered of a ride beside the recording.
type Formats struct {
	Title, Open, OpenHint, Hint, Making    string
	Report, ReportHint, Tables, TablesHint string
	Columns, ColumnsHint, Track, TrackHint string
	Lines, LinesHint, Samples, SamplesHint string
	NoPlace                                string
}

func englishFormats() Formats {
	return Formats{
		Title: "For other programs", Open: "For other programs", OpenHint: "Spreadsheet, map, statistics",
		Hint:   "All of these leave out the first and last 200 m of the ride and every position near them, which show where you live.",
		Making: "Making the file",
		Report: "A report to read or print", ReportHint: "One page with plots that opens in any browser.",
		Tables: "Tables for a spreadsheet", TablesHint: "CSV: speed over time, runs, times, drag, comparisons, power.",
		Columns: "Tables for statistics", ColumnsHint: "Parquet: the same, for many rides at once.",
		Track: "Track for a map", TrackHint: "GPX, with the runs as waypoints.",
		Lines: "Lines for a map", LinesHint: "GeoJSON, with each run as a line.",
		Samples: "Readings of the sensors", SamplesHint: "Every reading, as CSV. Stillair can open it.",
		NoPlace: "The recording holds no places.",
	}
}

func germanFormats() Formats {
	return Formats{
		Title: "Für andere Programme", Open: "Für andere Programme", OpenHint: "Tabellen, Karten, Statistik",
		Hint:   "Alles hier ist ohne die ersten und letzten 200 m der Fahrt und ohne jeden Ort in deren Nähe: sie zeigen, wo du wohnst.",
		Making: "Die Datei entsteht",
		Report: "Ein Bericht zum Lesen oder Drucken", ReportHint: "Eine Seite mit Bildern, die jeder Browser öffnet.",
		Tables: "Tabellen zum Rechnen", TablesHint: "CSV: Tempo über der Zeit, Läufe, Zeiten, Widerstand, Vergleiche, Leistung.",
		Columns: "Tabellen für Statistik", ColumnsHint: "Parquet: dasselbe, für viele Fahrten auf einmal.",
		Track: "Spur für eine Karte", TrackHint: "GPX, mit den Läufen als Wegpunkten.",
		Lines: "Linien für eine Karte", LinesHint: "GeoJSON, mit jedem Lauf als Linie.",
		Samples: "Messwerte der Sensoren", SamplesHint: "Jeder einzelne Wert als CSV. Stillair kann sie öffnen.",
		NoPlace: "Die Aufzeichnung enthält keine Orte.",
	}
}
