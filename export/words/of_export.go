package words

import "stillair/sensors/finding"

const codeTimes finding.Code = "words.times"

// ofExport holds what package export says.
func ofExport() []Entry {
	return []Entry{
		{codeTimes, args(finding.Count("n", 12)), " ({n} times)", " ({n}-mal)"},
	}
}
