package runs

import (
	"math"
	"slices"
	"sort"

	"stillair/runs/air"
	"stillair/runs/measure"
	"stillair/runs/pairing"
	"stillair/sensors"
)

// The ride's air is of one place and hour. A coast-down elsewhere, or after the
// weather has changed, has other air: 100 m of height are 1 % of density, and so
// are 10 hPa.

// lapse is the temperature lapse rate, K/m: the standard atmosphere (ISO 2533).
const lapse = 0.0065

// level is the barometric pressure, Pa, and the altitude of the fixes, m, at a
// place. NaN: not known.
type level struct{ pa, alt float64 }

// airs is the air of each coast-down. Entered values apply to their mean place;
// a pressure that was not entered, to the whole ride.
func (c conditions) airs(log *sensors.Log, coasts []pairing.Coast) []air.State {
	levels := make([]level, len(coasts))
	for i, one := range coasts {
		levels[i] = levelOf(log.Pressure, one)
	}
	entered := meanLevel(levels)
	of := entered
	if !c.entered {
		mean, _ := meanPressure(log.Pressure)
		of = level{mean, altitude(log)}
	}
	out := make([]air.State, len(coasts))
	for i, l := range levels {
		out[i] = c.air
		out[i].Pressure.X *= known(l.pa/of.pa, known(pressureRatio(l.alt)/pressureRatio(of.alt), 1))
		out[i].Temperature.X -= known(lapse*(l.alt-entered.alt), 0)
		out[i].Temperature.X += c.warmer * (partOf(log, coasts[i].MiddleTime()) - 0.5)
	}
	return out
}

// partOf is the elapsed fraction of a ride at a time, 0 to 1.
func partOf(log *sensors.Log, t float64) float64 {
	if n := len(log.Fixes); n > 1 && log.Fixes[n-1].T > log.Fixes[0].T {
		from, to := log.Fixes[0].T, log.Fixes[n-1].T
		return math.Max(0, math.Min((t-from)/(to-from), 1))
	}
	return 0.5
}

// known is x, or otherwise if x is NaN.
func known(x, otherwise float64) float64 {
	if math.IsNaN(x) {
		return otherwise
	}
	return x
}

// levelOf takes the mean of the barometer's readings during a coast-down, and
// the median of its altitudes, which may have outliers.
func levelOf(readings []sensors.Pressure, c pairing.Coast) level {
	after := func(t float64) int {
		return sort.Search(len(readings), func(i int) bool { return readings[i].T > t })
	}
	pa, _ := meanPressure(readings[after(c.Start):after(c.End)])
	l := level{pa, math.NaN()}
	var alts []float64
	for _, f := range c.Fixes {
		if !math.IsNaN(f.Alt) {
			alts = append(alts, f.Alt)
		}
	}
	if slices.Sort(alts); len(alts) > 0 {
		l.alt = alts[len(alts)/2]
	}
	return l
}

// meanLevel is the mean of the known values.
func meanLevel(levels []level) level {
	mean := func(of func(level) float64) float64 {
		sum, n := 0.0, 0.0
		for _, l := range levels {
			if x := of(l); !math.IsNaN(x) {
				sum, n = sum+x, n+1
			}
		}
		return sum / n
	}
	return level{mean(func(l level) float64 { return l.pa }), mean(func(l level) float64 { return l.alt })}
}

// meanAir is the mean air of some runs, with their common uncertainty.
func meanAir(runs []Run) air.State {
	mean := runs[0].Air
	var t, p float64
	for _, r := range runs {
		t, p = t+r.Air.Temperature.X, p+r.Air.Pressure.X
	}
	n := float64(len(runs))
	mean.Temperature = measure.Value{X: t / n, SE: mean.Temperature.SE}
	mean.Pressure = measure.Value{X: p / n, SE: mean.Pressure.SE}
	return mean
}
