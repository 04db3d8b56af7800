package report

import (
	"fmt"

	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
)

// limit is one cause of uncertainty in a drag area, as a bar.
type limit struct {
	Name, Text string
	Width      float64 // percent of the longest
}

// slight is the share of the longest bar below which a cause is left out.
const slight = 0.04

// limits draws what limits the certainty of a setup's drag area, the most
// first.
func limits(l runs.RoadLoad) []limit {
	if len(l.Limits) == 0 || !(l.Limits[0].SE > 0) || !(l.CdA.X > 0) {
		return nil
	}
	var out []limit
	for _, x := range l.Limits {
		share := x.SE / l.Limits[0].SE
		if share < slight {
			continue
		}
		out = append(out, limit{Name: words.ForMachines().Name(x.Cause), Width: 100 * share,
			Text: "± " + shown.Fixed(100*shown.Normal95*x.SE/l.CdA.X, 1) + " %"})
	}
	return out
}

// advice says what to improve first.
func advice(l runs.RoadLoad) string {
	if len(limits(l)) == 0 {
		return ""
	}
	help := map[runs.Cause]string{
		runs.ByGusts:    "a calmer hour, early or late in the day, and longer rolls",
		runs.ByWind:     "more pairs, each there and back within minutes, or a calmer hour",
		runs.ByReceiver: "open sky over the phone, longer rolls, a receiver with more fixes a second",
		runs.ByRoad:     "clutch in some 200 m farther on in each pair, there and back, at the same places with every setup; and a smoother stretch",
		runs.BySlope:    "a more level stretch, rolled both ways from the same points",
		runs.ByMass:     "weighing bike and rider as ridden, on a truck scale",
		runs.ByAir:      "temperature and pressure of the hour, entered or measured by a barometer",
	}[l.Limits[0].Cause]
	return fmt.Sprintf("Most of it is %s. What helps: %s.", words.ForMachines().Name(l.Limits[0].Cause), help)
}
