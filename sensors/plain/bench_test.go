package plain

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// hours is a log of n hours of an invented ride: motion at 100 Hz with the
// digits of a phone, fixes at 1 Hz, pressure at 10 Hz.
func hours(n float64) *sensors.Log {
	log := &sensors.Log{Ride: sensors.UnknownRide()}
	round := func(v float64) float64 { return math.Round(v*1e6) / 1e6 }
	for i := range int(n * 360_000) {
		at, x := float64(i)/100, float64(i)
		log.Motion = append(log.Motion, sensors.Motion{T: at,
			Force: r3.Vec{X: round(math.Sin(x)), Y: round(math.Cos(3 * x)), Z: round(9.8 + math.Sin(7*x))},
			Turn:  r3.Vec{X: round(0.1 * math.Sin(x/50)), Y: round(0.1 * math.Cos(x)), Z: round(0.2 * math.Sin(x/900))}})
		if i%100 == 17 {
			f := sensors.NewFix(at, round(20+math.Sin(x/500)))
			f.LatDeg, f.LonDeg, f.BearingDeg = round(48+x*2e-6), 11.5, 0
			log.Fixes = append(log.Fixes, f)
		}
		if i%10 == 0 {
			log.Pressure = append(log.Pressure, sensors.Pressure{T: at, Pa: round(100_000 + 10*math.Sin(x))})
		}
	}
	return log
}

func BenchmarkReadFolder(b *testing.B) {
	for _, n := range []float64{1.0 / 6, 1, 4} {
		b.Run(fmt.Sprintf("%.2gh", n), func(b *testing.B) {
			dir := b.TempDir()
			if err := Write(dir, hours(n)); err != nil {
				b.Fatal(err)
			}
			info, err := os.Stat(filepath.Join(dir, motionFile))
			if err != nil {
				b.Fatal(err)
			}
			b.SetBytes(info.Size())
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Read(dir); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkReadZipHour(b *testing.B) {
	var z bytes.Buffer
	if err := WriteZip(&z, hours(1)); err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(z.Len()))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ReadZip(bytes.NewReader(z.Bytes()), int64(z.Len()), "ride.zip"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWriteHour(b *testing.B) {
	log := hours(1)
	b.ReportAllocs()
	for b.Loop() {
		if err := WriteZip(discard{}, log); err != nil {
			b.Fatal(err)
		}
	}
}

type discard struct{}

func (discard) Write(p []byte) (int, error) { return len(p), nil }
