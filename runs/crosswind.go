package runs

import (
	"math"

	"stillair/runs/air"
	"stillair/runs/measure"
	"stillair/runs/pairing"
	"stillair/runs/roadload"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// crossWind is the wind across the road of these coast-downs, from the weather
// station's wind that the rider entered; unknown if none was entered or no
// coast-down has positions.
func crossWind(station sensors.Wind, coasts []pairing.Coast) measure.Value {
	var across, variance, n float64
	for _, c := range coasts {
		w := air.Across(station.Speed, station.FromDeg, c.BearingDeg())
		if math.IsNaN(w.X) {
			continue
		}
		across, variance, n = across+w.X, variance+w.SE*w.SE, n+1
	}
	if n == 0 {
		return measure.Unknown()
	}
	return measure.Value{X: across / n, SE: math.Sqrt(variance / n)} // one station: its errors are common to all
}

// crossNote is the finding about the wind across the road, and whether it was
// too strong.
func crossNote(across measure.Value) finding.Finding {
	wind := finding.Wind("across", across.X).With(across.SE)
	if across.X > roadload.CrossWindLimit {
		return finding.New(codeCrossWindStrong, wind, finding.Wind("limit", roadload.CrossWindLimit))
	}
	return finding.New(codeCrossWind, wind)
}
