package sensors

import (
	"context"
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// script is a source that plays the samples of a test.
type script struct {
	play func(Sink)
	err  error
}

func (s script) Run(_ context.Context, sink Sink) error {
	s.play(sink)
	return s.err
}

func TestCollectKeepsWhatCameBeforeAnError(t *testing.T) {
	broke := errors.New("the cable came loose")
	log, err := Collect(context.Background(), script{err: broke, play: func(s Sink) {
		s.State(State{T: 1, Sensor: SensorPressure, Condition: Missing})
		s.Motion(Motion{T: 1, Force: r3.Vec{Z: 9.8}})
		s.Motion(Motion{T: 2, Force: r3.Vec{Z: 9.8}})
		s.Fix(NewFix(2, 10))
		s.Pressure(Pressure{T: 3, Pa: 101325})
		s.Sound(Sound{T: 3, Rate: 1200, Level: []int16{1}})
	}})
	if !errors.Is(err, broke) {
		t.Errorf("error %v, want %v", err, broke)
	}
	if len(log.Motion) != 2 || len(log.Fixes) != 1 || len(log.Pressure) != 1 || len(log.States) != 1 || len(log.Sound) != 1 {
		t.Errorf("collected %d motion, %d fixes, %d pressure, %d states, %d sound; want 2, 1, 1, 1, 1",
			len(log.Motion), len(log.Fixes), len(log.Pressure), len(log.States), len(log.Sound))
	}
	if !math.IsNaN(log.Ride.Mass) {
		t.Errorf("mass of a ride about which nothing was entered is %g, want NaN", log.Ride.Mass)
	}
}

func TestInOrderDropsLateAndBroken(t *testing.T) {
	c := NewCollector()
	o := NewInOrder(c)
	up := r3.Vec{Z: 9.8}
	for _, at := range []float64{0, 1, 1, 0.5, 2, math.NaN(), math.Inf(1), 3} {
		o.Motion(Motion{T: at, Force: up})
		o.Fix(NewFix(at, 5))
		o.Pressure(Pressure{T: at, Pa: 1e5})
	}
	o.Motion(Motion{T: 4, Force: r3.Vec{X: math.NaN()}})
	o.Fix(NewFix(4, math.Inf(1)))
	o.Pressure(Pressure{T: 4, Pa: math.NaN()})
	o.Motion(Motion{T: 3.5, Force: up})

	log := c.Log()
	if len(log.Motion) != 5 || len(log.Fixes) != 4 || len(log.Pressure) != 4 {
		t.Errorf("passed %d motion, %d fixes, %d pressure; want 5, 4, 4",
			len(log.Motion), len(log.Fixes), len(log.Pressure))
	}
	if o.Late != 6 || o.Broken != 9 {
		t.Errorf("late %d, broken %d; want 6 and 9", o.Late, o.Broken)
	}
}

// TestInOrderDropsSoundOverSound checks that stretches of sound do not overlap,
// except by the correction of a clock.
func TestInOrderDropsSoundOverSound(t *testing.T) {
	c := NewCollector()
	o := NewInOrder(c)
	tenth := make([]int16, 120)
	for _, at := range []float64{0, 0.1, 0.1999, 0.25, 0.15, 0.5} {
		o.Sound(Sound{T: at, Rate: 1200, Level: tenth})
	}
	o.Sound(Sound{T: 1, Rate: 0, Level: tenth})
	o.Sound(Sound{T: 1, Rate: 1200})
	o.Sound(Sound{T: math.NaN(), Rate: 1200, Level: tenth})
	if n := len(c.Log().Sound); n != 4 || o.Late != 2 || o.Broken != 3 {
		t.Errorf("passed %d, late %d, broken %d; want 4, 2 and 3", n, o.Late, o.Broken)
	}
}
