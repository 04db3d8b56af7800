package runs

import (
	"context"
	"fmt"
	"testing"

	"stillair/sensors/sim"
)

// BenchmarkAnalyse shows how time and memory grow with the length of a ride
// with every kind of run, at 100 readings a second.
func BenchmarkAnalyse(b *testing.B) {
	for _, minutes := range []float64{10, 60, 240} {
		b.Run(fmt.Sprintf("%v min", minutes), func(b *testing.B) {
			sc := sim.DefaultScenario(sim.Naked())
			sc.Plan = everything(max(0, minutes-13.5))
			ride, err := sim.Run(sc, 1)
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Analyse(context.Background(), ride.Log, Options{}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(len(ride.Log.Motion)), "readings")
		})
	}
}
