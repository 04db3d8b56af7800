package sourcetest

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// broken is a source with one fault, to show that the suite detects it.
type broken func(ctx context.Context, sink sensors.Sink) error

func (b broken) Run(ctx context.Context, sink sensors.Sink) error { return b(ctx, sink) }

var nothing = math.NaN()

func level(t float64) sensors.Motion {
	return sensors.Motion{T: t, Force: r3.Vec{Z: 9.81}, Turn: r3.Vec{X: 0.01}}
}

// good delivers ten seconds of a bike at rest, changed by spoil.
func good(spoil func(sink sensors.Sink, i int) bool) broken {
	return func(ctx context.Context, sink sensors.Sink) error {
		for i := range 1000 {
			if err := ctx.Err(); err != nil {
				return err
			}
			t := float64(i) / 100
			if spoil != nil && spoil(sink, i) {
				continue
			}
			sink.Motion(level(t))
			if i%100 == 0 {
				sink.Fix(sensors.NewFix(t, 0))
				sink.Pressure(sensors.Pressure{T: t, Pa: 101325})
				sink.Sound(sensors.Sound{T: t, Rate: 1200, Level: make([]int16, 1200)})
			}
		}
		return nil
	}
}

func quick() config {
	return config{samples: 100_000, patience: 300 * time.Millisecond, prompt: 100 * time.Millisecond, silence: 20 * time.Millisecond}
}

func TestGoodSourcePasses(t *testing.T) {
	Contract(t, func() sensors.Source { return good(nil) })
}

func TestDeliveryFindsFaults(t *testing.T) {
	at := func(n int, do func(sensors.Sink)) broken {
		return good(func(s sensors.Sink, i int) bool {
			if i == n {
				do(s)
			}
			return false
		})
	}
	for _, c := range []struct {
		name   string
		source broken
		want   string
	}{
		{"doubled", at(5, func(s sensors.Sink) { s.Motion(level(0.04)) }), "twice with the same time"},
		{"backwards", at(5, func(s sensors.Sink) { s.Motion(level(0.001)) }), "earlier than the one before"},
		{"state backwards", at(5, func(s sensors.Sink) {
			s.State(sensors.State{T: 3, Sensor: sensors.SensorFix, Condition: sensors.Silent})
			s.State(sensors.State{T: 2, Sensor: sensors.SensorFix, Condition: sensors.Working})
		}), "state earlier"},
		{"far behind", at(900, func(s sensors.Sink) { s.Fix(sensors.NewFix(1, 0)) }), "behind what came before"},
		{"time not a number", at(5, func(s sensors.Sink) { s.Motion(level(nothing)) }), "no finite number"},
		{"force not a number", at(5, func(s sensors.Sink) {
			s.Motion(sensors.Motion{T: 0.045, Force: r3.Vec{X: nothing}})
		}), "specific force that is no finite number"},
		{"half a turn rate", at(5, func(s sensors.Sink) {
			s.Motion(sensors.Motion{T: 0.045, Force: r3.Vec{Z: 9.8}, Turn: r3.Vec{X: nothing}})
		}), "a part is absent"},
		{"half a position", at(5, func(s sensors.Sink) {
			f := sensors.NewFix(0.5, 1)
			f.LatDeg = 48
			s.Fix(f)
		}), "half a position"},
		{"speed in a wrong unit", at(5, func(s sensors.Sink) { s.Fix(sensors.NewFix(0.5, 200)) }), "speed outside"},
		{"bearing 360", at(5, func(s sensors.Sink) {
			f := sensors.NewFix(0.5, 1)
			f.BearingDeg = 360
			s.Fix(f)
		}), "bearing outside"},
		{"pressure in hPa", at(5, func(s sensors.Sink) { s.Pressure(sensors.Pressure{T: 0.5, Pa: 1013}) }), "pressure outside"},
		{"unknown condition", at(5, func(s sensors.Sink) {
			s.State(sensors.State{T: 0.05, Sensor: sensors.SensorFix, Condition: "fine"})
		}), "unknown condition"},
		{"empty sound", at(5, func(s sensors.Sink) { s.Sound(sensors.Sound{T: 0.5, Rate: 1200}) }), "no values"},
		{"sound without a rate", at(5, func(s sensors.Sink) { s.Sound(sensors.Sound{T: 0.5, Level: []int16{1}}) }), "a rate outside"},
		{"sound in one piece", at(5, func(s sensors.Sink) { s.Sound(sensors.Sound{T: 0.5, Rate: 1200, Level: make([]int16, 6000)}) }), "longer than"},
		{"sound over sound", at(5, func(s sensors.Sink) {
			s.Sound(sensors.Sound{T: 0.05, Rate: 1200, Level: make([]int16, 120)})
			s.Sound(sensors.Sound{T: 0.1, Rate: 1200, Level: make([]int16, 120)})
		}), "before the stretch before it ended"},
		{"force in g", good(func(s sensors.Sink, i int) bool {
			s.Motion(sensors.Motion{T: float64(i) / 100, Force: r3.Vec{Z: 1}})
			return true
		}), "not the size of gravity"},
		{"turn in degrees", good(func(s sensors.Sink, i int) bool {
			s.Motion(sensors.Motion{T: float64(i) / 100, Force: r3.Vec{Z: 9.8}, Turn: r3.Vec{Z: 20}})
			return true
		}), "is it in degrees"},
		{"silent about the barometer", broken(func(_ context.Context, s sensors.Sink) error {
			s.Motion(level(0))
			s.Fix(sensors.NewFix(0, 1))
			return nil
		}), `nothing came from sensor "pressure"`},
		{"fails", broken(func(context.Context, sensors.Sink) error { return errors.New("no battery") }), "no battery"},
		{"never returns", broken(func(context.Context, sensors.Sink) error { select {} }), "did not return"},
		{"calls after the return", broken(func(_ context.Context, s sensors.Sink) error {
			go func() {
				time.Sleep(5 * time.Millisecond)
				s.Motion(level(0))
			}()
			return nil
		}), "after Run had returned"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			set := quick()
			if strings.Contains(c.name, "after the return") {
				set.silence = time.Second // a busy machine may be slow to make the call
			}
			mustSay(t, delivery(set, c.source), c.want)
		})
	}
}

func TestCancelFindsFaults(t *testing.T) {
	uncancelled := broken(func(_ context.Context, s sensors.Sink) error { return good(nil)(context.Background(), s) })
	mustSay(t, overBefore(quick(), uncancelled), "want context.Canceled")
	mustSay(t, deadline(quick(), uncancelled), "want context.DeadlineExceeded")
	mustSay(t, cancelAt(quick(), uncancelled, 100), "more than 64 samples")
	own := broken(func(ctx context.Context, s sensors.Sink) error {
		if good(nil)(ctx, s) != nil {
			return errors.New("stopped")
		}
		return nil
	})
	mustSay(t, cancelAt(quick(), own, 100), "want context.Canceled")
}

func TestOverlapIsSeen(t *testing.T) {
	w := newWatch(nil)
	w.each = func(n int) {
		if n == 1 {
			w.Motion(level(1)) // a second call while the first is not over
		}
	}
	w.Motion(level(0))
	mustSay(t, w.after(0), "two goroutines")
}

func mustSay(t *testing.T, problems []string, want string) {
	t.Helper()
	if all := strings.Join(problems, "\n"); !strings.Contains(all, want) {
		t.Errorf("the suite says %q, want something with %q", all, want)
	}
}
