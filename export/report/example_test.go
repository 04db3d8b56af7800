package report_test

import (
	"bytes"
	"context"
	"fmt"
	"strings"

	"stillair/export/report"
	"stillair/runs"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// A report of an invented ride, as one self-contained page.
func ExampleWrite() {
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = sim.Launches(1, 110*units.KMH, 0)
	ride, err := sim.Run(sc, 4)
	if err != nil {
		fmt.Println(err)
		return
	}
	result, err := runs.Analyse(context.Background(), ride.Log, runs.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	var page bytes.Buffer
	if err := report.Write(&page, result, report.Options{Name: "One launch", Invented: true}); err != nil {
		fmt.Println(err)
	}
	fmt.Println(strings.Count(page.String(), "<svg") > 0, strings.Contains(page.String(), "<script"))
	// Output: true false
}
