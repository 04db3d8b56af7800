//go:build unix

package results_test

import (
	"context"
	"fmt"
	"io"
	"syscall"
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
			readings := float64(len(ride.Log.Motion))
			ride = nil
			b.ReportAllocs()
			before, _ := used()
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
			cpu, memory := used()
			b.ReportMetric((cpu-before)/float64(b.N), "cpu-s/op")
			b.ReportMetric(memory, "MB-held")
			b.ReportMetric(readings, "readings")
		})
	}
}

// used are the seconds of all processors and the megabytes of memory at most.
func used() (seconds, megabytes float64) {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0, 0
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e9, float64(u.Maxrss) / 1024
}
