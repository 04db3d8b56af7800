package session

import (
	"math"
	"math/rand/v2"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// testID is the ID of recordings written by tests.
var testID = ID{1, 2, 3, 4, 5, 6, 7, 8}

// memory is a store in memory.
type memory struct {
	data  []byte
	syncs int
}

func (m *memory) Append(p []byte) error { m.data = append(m.data, p...); return nil }
func (m *memory) Sync() error           { m.syncs++; return nil }

// invented returns a log of invented samples at the file's resolution: it must
// be identical after writing and reading.
func invented(seconds int, rate int) *sensors.Log {
	rng := rand.New(rand.NewPCG(1, 2))
	step := func(x float64, decimals int) float64 {
		return math.Round(x*pow10[decimals]) / pow10[decimals]
	}
	log := &sensors.Log{Ride: sensors.UnknownRide()}
	log.Ride.Bike, log.Ride.Mass, log.Ride.Air.Pressure = "invented naked", 290, 100900
	log.Ride.Air.Humidity = 0.6
	log.Ride.Gears = []sensors.Gear{{Name: "4", RPMPerMPS: 165}}
	log.Ride.Setups = []sensors.Setup{{From: 0, Name: "jacket <a> & „b“", Mass: math.NaN()}, {From: 20.5, Name: "b", Mass: 301}}
	for i := range seconds * rate {
		f := func(size float64, decimals int) float64 { return step(size*rng.NormFloat64(), decimals) }
		log.Motion = append(log.Motion, sensors.Motion{T: step(12+float64(i)/float64(rate)+2e-4*rng.Float64(), timeDecimals),
			Force: r3.Vec{X: f(3, forceDecimals), Y: f(3, forceDecimals), Z: step(9.8+rng.NormFloat64(), forceDecimals)},
			Turn:  r3.Vec{X: f(.2, turnDecimals), Y: f(.2, turnDecimals), Z: f(.2, turnDecimals)}})
	}
	begin := time.Date(2026, 5, 3, 9, 0, 0, 0, time.UTC)
	for i := range seconds {
		fix := sensors.NewFix(step(12.31+float64(i)+.01*rng.Float64(), timeDecimals), step(20*rng.Float64(), speedDecimals))
		if i%3 > 0 {
			fix.LatDeg, fix.LonDeg = step(47+rng.Float64(), degreeDecimals), step(-8.2+rng.Float64(), degreeDecimals)
			fix.Alt, fix.HSD, fix.SpeedSD = step(433.1, metreDecimals), step(3.2, metreDecimals), step(.12, speedDecimals)
			fix.BearingDeg, fix.UTC = step(271.35, bearingDecimals), begin.Add(time.Duration(i)*time.Second)
		}
		log.Fixes = append(log.Fixes, fix)
		for j := range 2 { // sound, with gaps
			stretch := sensors.Sound{T: step(12+float64(i)+float64(j)/2, timeDecimals), Rate: 1191.8919, Clipped: i % 3, Level: make([]int16, 12)}
			for k := range stretch.Level {
				stretch.Level[k] = int16(math.Max(-sensors.FullScale, math.Min(sensors.FullScale-1, 9000*rng.NormFloat64())))
			}
			log.Sound = append(log.Sound, stretch)
		}
		log.Pressure = append(log.Pressure, sensors.Pressure{T: step(12.05+float64(i), timeDecimals), Pa: step(98000+rng.Float64(), pressureDecimals)})
	}
	log.States = append(log.States, sensors.State{T: 12, Sensor: sensors.SensorMotion, Condition: sensors.Working},
		sensors.State{T: 14.5, Sensor: sensors.SensorPressure, Condition: sensors.Silent, Detail: finding.New("nmea.field", finding.Of("what", finding.New("nmea.number")), finding.Text("value", "13"))})
	return log
}
