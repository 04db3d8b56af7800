package roadload_test

import (
	"math/rand/v2"
	"testing"

	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// BenchmarkFit fits five pairs, with all noise to be learned.
func BenchmarkFit(b *testing.B) {
	for _, c := range []struct {
		name string
		rate float64
		road float64
		baro bool
	}{
		{"1 Hz", 1, 0, false},
		{"10 Hz", 10, 0, false},
		{"1 Hz, learning the road", 1, 0.0005, false},
		{"1 Hz, learning the road with a barometer", 1, 0.0005, true},
	} {
		b.Run(c.name, func(b *testing.B) {
			test := loadtest.Default(loadtest.Bikes[0], 1.5)
			test.Rate, test.Baro = c.rate, c.baro
			opts := roadload.DefaultOptions(1.5)
			opts.Noise.RoadSD = c.road
			runs := test.Ride(rand.New(rand.NewPCG(1, 2)))
			b.ReportAllocs()
			for b.Loop() {
				if _, err := roadload.Fit(runs, opts); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
