package results_test

import (
	"context"
	"fmt"
	"io"
	"testing"

	"stillair/export/results"
	"stillair/runs"
	"stillair/sensors/plain"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// BenchmarkLogToResults reads a plain log of a hundred readings a second,
// analyses it and writes the results, for rides of growing length that hold
// every kind of run.
func BenchmarkLogToResults(b *testing.B) {
	for _, minutes := range []float64{10, 60, 240} {
		b.Run(fmt.Sprintf("%v min", minutes), func(b *testing.B) {
			dir := b.TempDir()
			sc := sim.DefaultScenario(sim.Naked())
			sc.Plan = append(sim.Launches(2, 120*units.KMH, 420), sim.RollOns(2, 0, 60*units.KMH, 125*units.KMH)...)
			sc.Plan = append(sc.Plan, sim.CoastPairs(2, 110*units.KMH, 30*units.KMH)...)
			sc.Plan = append(sc.Plan, sim.Town{Minutes: max(0, minutes-10)})
			ride, err := sim.Run(sc, 1)
			if err != nil {
				b.Fatal(err)
			}
			if err := plain.Write(dir, ride.Log); err != nil {
				b.Fatal(err)
			}
			b.ReportMetric(float64(len(ride.Log.Motion)), "readings")
			ride = nil
			b.ReportAllocs()
			for b.Loop() {
				log, err := plain.Read(dir)
				if err != nil {
					b.Fatal(err)
				}
				result, err := runs.Analyse(context.Background(), log, runs.Options{})
				if err != nil {
					b.Fatal(err)
				}
				if err := results.Write(io.Discard, results.From(result)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
