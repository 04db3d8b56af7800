//go:build unix

package results_test

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"runtime"
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
// every kind of run. MB-held is the peak memory of a separate process that does
// so once.
func BenchmarkLogToResults(b *testing.B) {
	for _, minutes := range []float64{10, 60, 240} {
		b.Run(fmt.Sprintf("%v min", minutes), func(b *testing.B) {
			dir := b.TempDir()
			readings := writeRide(b, dir, minutes)
			b.ReportAllocs()
			before := spent()
			for b.Loop() {
				toResults(b, dir)
			}
			b.ReportMetric((spent()-before)/float64(b.N), "cpu-s/op")
			b.ReportMetric(held(b, dir), "MB-held")
			b.ReportMetric(readings, "readings")
		})
	}
}

// writeRide writes an invented ride and returns its number of readings.
func writeRide(t testing.TB, dir string, minutes float64) float64 {
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = append(sim.Launches(2, 120*units.KMH, 420), sim.RollOns(2, 0, 60*units.KMH, 125*units.KMH)...)
	sc.Plan = append(sc.Plan, sim.CoastPairs(2, 110*units.KMH, 30*units.KMH)...)
	sc.Plan = append(sc.Plan, sim.Town{Minutes: max(0, minutes-10)})
	ride, err := sim.Run(sc, 1)
	if err != nil {
		t.Fatal(err)
	}
	if err := plain.Write(dir, ride.Log); err != nil {
		t.Fatal(err)
	}
	return float64(len(ride.Log.Motion))
}

func toResults(t testing.TB, dir string) {
	log, err := plain.Read(dir)
	if err != nil {
		t.Fatal(err)
	}
	result, err := runs.Analyse(context.Background(), log, runs.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if err := results.Write(io.Discard, results.From(result)); err != nil {
		t.Fatal(err)
	}
}

// rideVariable is the environment variable with the log for TestOneRide.
const rideVariable = "STILLAIR_RIDE"

// TestOneRide processes a ride once from log to results and prints the memory
// taken from the system, for held.
func TestOneRide(t *testing.T) {
	dir := os.Getenv(rideVariable)
	if dir == "" {
		dir = t.TempDir()
		writeRide(t, dir, 0)
	}
	toResults(t, dir)
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	fmt.Printf("held %d\n", m.Sys)
}

// held is the peak memory in MB of a process that takes one ride from log to
// results.
func held(t testing.TB, dir string) float64 {
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(self, "-test.run=^TestOneRide$")
	cmd.Env = append(os.Environ(), rideVariable+"="+dir)
	said, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	var bytes float64
	if _, err := fmt.Sscanf(string(said), "held %g", &bytes); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	return bytes / 1e6
}

// spent is the processor time in s.
func spent() float64 {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e9
}
