package fusion_test

import (
	"testing"

	"stillair/fusion"
	"stillair/sensors/sim"
)

// hour is a ride of about an hour: town, launches, coast-downs.
func hour(b *testing.B) *sim.Ride {
	b.Helper()
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = []sim.Act{sim.Town{Minutes: 18}}
	for range 3 {
		sc.Plan = append(sc.Plan, sim.Launches(6, 120/3.6, 402.336)...)
		sc.Plan = append(sc.Plan, sim.CoastPairs(3, 110/3.6, 30/3.6)...)
	}
	r, err := sim.Run(sc, 1)
	if err != nil {
		b.Fatal(err)
	}
	return r
}

func BenchmarkSmoothHour(b *testing.B) {
	r := hour(b)
	b.ReportAllocs()
	b.ResetTimer()
	for b.Loop() {
		tr, err := fusion.Smooth(r.Log, fusion.Options{})
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric((tr.T[len(tr.T)-1]-tr.T[0])/60, "min-of-ride")
		b.ReportMetric(float64(len(tr.T)), "samples")
	}
}
