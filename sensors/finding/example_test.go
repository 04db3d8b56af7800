package finding_test

import (
	"fmt"

	"stillair/sensors/finding"
)

// The reason for rejecting a run, as the analysis reports it: it becomes a
// sentence later, in the reader's language and units.
func ExampleNew() {
	f := finding.New("coast.short", finding.Speed("span", 8.3), finding.Speed("need", 13.9)).OfRun(4)
	fmt.Println(f)
	span, _ := f.Arg("span")
	fmt.Println(span.X, "m/s, run", f.Run)
	// Output:
	// coast.short span=8.3 need=13.9
	// 8.3 m/s, run 4
}
