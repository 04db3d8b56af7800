package replay

import (
	"context"
	"errors"
	"math"
	"reflect"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/sourcetest"
)

// invented is a minute of an invented ride: n motion samples at 100 Hz, fixes
// at 1 Hz, pressure at 10 Hz.
func invented(seconds int) *sensors.Log {
	log := &sensors.Log{Ride: sensors.UnknownRide()}
	for i := range seconds * 100 {
		at := 50 + float64(i)/100
		log.Motion = append(log.Motion, sensors.Motion{T: at, Force: r3.Vec{X: 0.2, Z: 9.8}, Turn: r3.Vec{Z: 0.01}})
		if i%10 == 3 {
			log.Pressure = append(log.Pressure, sensors.Pressure{T: at, Pa: 100500 + float64(i%7)})
		}
		if i%25 == 11 {
			log.Sound = append(log.Sound, sensors.Sound{T: at, Rate: 1200, Level: make([]int16, 300)})
		}
		if i%100 == 17 {
			log.Fixes = append(log.Fixes, sensors.NewFix(at, 20))
		}
	}
	log.States = []sensors.State{
		{T: 50, Sensor: sensors.SensorFix, Condition: sensors.Available},
		{T: 50.17, Sensor: sensors.SensorFix, Condition: sensors.Working},
	}
	return log
}

// fakeClock advances only in Wait.
type fakeClock struct {
	now   time.Time
	waits int
	cut   context.CancelFunc // called in the wait number cutAt
	cutAt int
}

func (c *fakeClock) Now() time.Time { return c.now }

func (c *fakeClock) Wait(ctx context.Context, d time.Duration) error {
	c.waits++
	if c.waits == c.cutAt {
		c.cut()
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	c.now = c.now.Add(d)
	return nil
}

func TestContract(t *testing.T) {
	log := invented(60)
	t.Run("at once", func(t *testing.T) {
		sourcetest.Contract(t, func() sensors.Source { return New(log) })
	})
	t.Run("paced", func(t *testing.T) {
		sourcetest.Contract(t, func() sensors.Source {
			s, err := At(log, 3, &fakeClock{now: time.Unix(1000, 0)})
			if err != nil {
				t.Fatal(err)
			}
			return s
		})
	})
	t.Run("on the wall clock", func(t *testing.T) {
		sourcetest.Contract(t, func() sensors.Source {
			s, err := At(log, 500, Wall{})
			if err != nil {
				t.Fatal(err)
			}
			return s
		})
	})
	bare := &sensors.Log{Motion: []sensors.Motion{{T: 1, Force: r3.Vec{Z: -9.8}, Turn: r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}}}}
	t.Run("accelerometer alone", func(t *testing.T) {
		sourcetest.Contract(t, func() sensors.Source { return New(bare) })
	})
}

func TestReplayGivesTheLogBack(t *testing.T) {
	log := invented(10)
	got, err := sensors.Collect(context.Background(), New(log))
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got.Motion, log.Motion) || !reflect.DeepEqual(got.Pressure, log.Pressure) ||
		!reflect.DeepEqual(got.States, log.States) || len(got.Fixes) != len(log.Fixes) {
		t.Error("the replayed samples are not those of the log")
	}
}

// TestPace checks that sample i is delivered after (T[i]−T[0])/speed.
func TestPace(t *testing.T) {
	for _, speed := range []float64{0.5, 1, 20} {
		log := invented(5)
		clock := &fakeClock{now: time.Unix(1_000_000, 0)}
		began := clock.now
		s, err := At(log, speed, clock)
		if err != nil {
			t.Fatal(err)
		}
		check := &paceSink{clock: clock, began: began, speed: speed}
		if err := s.Run(context.Background(), check); err != nil {
			t.Fatal(err)
		}
		if check.worst > 1e-6 {
			t.Errorf("at %g times: a sample came %g s from its time", speed, check.worst)
		}
		if check.n != 500 {
			t.Errorf("at %g times: %d motion samples, want 500", speed, check.n)
		}
	}
}

type paceSink struct {
	sensors.Collector
	clock *fakeClock
	began time.Time
	speed float64
	worst float64
	n     int
}

func (p *paceSink) Motion(m sensors.Motion) {
	p.n++
	p.worst = max(p.worst, math.Abs(p.clock.now.Sub(p.began).Seconds()-(m.T-50)/p.speed))
}

func TestCancelWhileWaiting(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	clock := &fakeClock{now: time.Unix(0, 0), cut: cancel, cutAt: 7}
	s, err := At(invented(5), 1, clock)
	if err != nil {
		t.Fatal(err)
	}
	log, err := sensors.Collect(ctx, s)
	if !errors.Is(err, context.Canceled) {
		t.Errorf("error %v, want context.Canceled", err)
	}
	if n := len(log.Motion); n != 7 {
		t.Errorf("%d motion samples before the cancel, want 7", n)
	}
}

func TestSpeedMustBePositive(t *testing.T) {
	for _, speed := range []float64{0, -1, math.NaN()} {
		if _, err := At(invented(1), speed, Wall{}); err == nil {
			t.Errorf("speed %g was accepted", speed)
		}
	}
}

func BenchmarkReplayHour(b *testing.B) {
	log := invented(3600)
	b.ReportAllocs()
	for b.Loop() {
		if err := New(log).Run(context.Background(), sensors.NewInOrder(&discard{})); err != nil {
			b.Fatal(err)
		}
	}
}

type discard struct{}

func (*discard) Motion(sensors.Motion)     {}
func (*discard) Fix(sensors.Fix)           {}
func (*discard) Pressure(sensors.Pressure) {}
func (*discard) Sound(sensors.Sound)       {}
func (*discard) State(sensors.State)       {}
