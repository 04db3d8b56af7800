package words

import "stillair/sensors/finding"

const codeTimes finding.Code = "words.times"

// ofExport holds what package export says.
func ofExport() []Entry {
	why := whyExample()
	return append(ofSessions(), []Entry{
		{codeTimes, args(finding.Count("n", 12)), " ({n} times)", " ({n}-mal)"},
		{"results.no_document", args(why), "it is not a results document: {why}", "das ist kein Ergebnisdokument: {why}"},
		{"results.make_again", nil, "make it again from the recording with analyse --json", "mit analyse --json neu aus der Aufzeichnung erzeugen"},
		{"results.other_version", args(finding.Num("version", 9), finding.Count("most", 2)),
			"the results have version {version.0}; this program reads versions 1 to {most}",
			"die Ergebnisse haben Version {version.0}; dieses Programm liest die Versionen 1 bis {most}"},
		{"results.newer_program", nil, "use a newer program, or make them again from the recording with analyse --json",
			"ein neueres Programm verwenden oder sie mit analyse --json neu aus der Aufzeichnung erzeugen"},
		{"columns.no_parquet", args(why), "this is not a complete Parquet file: {why}", "das ist keine vollständige Parquet-Datei: {why}"},
		{"columns.foreign", nil, "this Parquet file is not one of Stillair's tables", "diese Parquet-Datei ist keine Tabelle von Stillair"},
		{"columns.no_column", args(finding.Text("table", "road-load"), finding.Text("column", "cda_noise_se_m2")), "this table {table} has no column {column}",
			"dieser Tabelle {table} fehlt die Spalte {column}"},
		{"columns.row", args(finding.Count("row", 513), why), "row {row} cannot be read: {why}", "Zeile {row} lässt sich nicht lesen: {why}"},
		{"columns.no_number", args(finding.Text("column", "cda_m2"), finding.Count("row", 513)), "column {column}, row {row}: not a usable number",
			"Spalte {column}, Zeile {row}: keine brauchbare Zahl"},
		{"columns.many_rows", args(finding.Count("most", 1048576)), "it has more than {most} rows", "sie hat mehr als {most} Zeilen"},
		{"columns.export_again", nil, "export it again with this version (desk export --as parquet), or copy all of it again",
			"mit dieser Version neu exportieren (desk export --as parquet) oder noch einmal vollständig kopieren"},
		{"columns.give_ours", nil, "give tables that desk export --as parquet or the phone made: runs, marks, road-load and comparisons",
			"Tabellen angeben, die desk export --as parquet oder das Telefon geschrieben hat: runs, marks, road-load und comparisons"},
	}...)
}
