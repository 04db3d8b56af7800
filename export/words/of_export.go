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
			"the results are of version {version.0}; this program reads versions 1 to {most}",
			"die Ergebnisse haben Version {version.0}; dieses Programm liest die Versionen 1 bis {most}"},
		{"results.newer_program", nil, "use a newer program, or make them again from the recording with analyse --json",
			"ein neueres Programm verwenden oder sie mit analyse --json neu aus der Aufzeichnung erzeugen"},
	}...)
}
