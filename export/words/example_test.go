package words_test

import (
	"fmt"

	"stillair/export/shown"
	"stillair/export/words"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// One finding, said to two readers.
func ExampleBook_Say() {
	note := sensors.Note{What: finding.New("words.times", finding.Count("n", 12))}
	for _, style := range []shown.Style{{System: shown.Metric, Language: shown.English}, {System: shown.Imperial, Language: shown.German}} {
		fmt.Printf("%q\n", words.New(style).Say(note.What))
	}
	// Output:
	// " (12 times)"
	// " (12-mal)"
}
