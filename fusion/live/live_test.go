package live

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/opendrive"
	"stillair/sensors"
)

// follow runs a filter over a log in order of time and passes its state to see
// after each motion sample.
func follow(log *sensors.Log, see func(State)) *Filter {
	f := New()
	k := 0
	for _, m := range log.Motion {
		for k < len(log.Fixes) && log.Fixes[k].T <= m.T {
			f.Fix(log.Fixes[k])
			k++
		}
		f.Motion(m)
		see(f.State())
	}
	return f
}

// turned is the log as recorded by a phone in a different attitude.
func turned(log sensors.Log, r r3.Rotation) *sensors.Log {
	out := log
	out.Motion = make([]sensors.Motion, len(log.Motion))
	for i, m := range log.Motion {
		out.Motion[i] = sensors.Motion{T: m.T, Force: r.Rotate(m.Force), Turn: r.Rotate(m.Turn)}
	}
	return &out
}

// TestOpenDrive follows a real drive and compares with its wheels. The limits
// are this filter's own, for a screen; there is no published figure.
func TestOpenDrive(t *testing.T) {
	cases := []struct {
		name     string
		every    int
		rotation r3.Rotation
		rms      float64 // m/s
	}{
		{name: "10 Hz", every: 1, rotation: r3.NewRotation(0, r3.Vec{X: 1}), rms: 0.3},
		{name: "1 Hz", every: 10, rotation: r3.NewRotation(0, r3.Vec{X: 1}), rms: 0.5},
		{name: "1 Hz, any attitude", every: 10, rotation: r3.NewRotation(2.1, r3.Vec{X: 1, Y: -2, Z: 0.5}), rms: 0.5},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			d, err := opendrive.Read("../../testdata", c.every)
			if err != nil {
				t.Fatal(err)
			}
			var ts, vs []float64
			f := follow(turned(d.Log, c.rotation), func(s State) {
				ts, vs = append(ts, s.T), append(vs, s.Speed)
			})
			k := 0
			at := func(u float64) float64 {
				if u < ts[k] {
					k = 0
				}
				for k+1 < len(ts) && ts[k+1] <= u {
					k++
				}
				return vs[k]
			}
			_, rms := d.Against(at, 20, 57)
			t.Logf("aligned %v, lag %.2f s, rms %.3f m/s, distance %.1f m", f.State().Aligned, f.State().Lag, rms, f.State().Distance)
			if !f.State().Aligned {
				t.Error("the direction of travel was not found")
			}
			if rms > c.rms {
				t.Errorf("%.3f m/s rms off the wheels, want at most %.2f", rms, c.rms)
			}
		})
	}
}

// town is an exact ride without noise: rest, start, cruise, brake, over and
// over, on a mount given by a rotation, with fixes that are late by lag.
func town(r r3.Rotation, lag float64) (*sensors.Log, func(t float64) (v, s float64)) {
	const period, accel, cruise = 40.0, 2.5, 15.0
	truth := func(t float64) (v, s, a float64) {
		turns := math.Floor(t / period)
		u := t - turns*period
		ramp := cruise / accel
		hold := 12.0
		whole := cruise * (ramp + hold)
		switch {
		case u < 8:
			return 0, turns * whole, 0
		case u < 8+ramp:
			x := u - 8
			return accel * x, turns*whole + accel*x*x/2, accel
		case u < 8+ramp+hold:
			return cruise, turns*whole + cruise*ramp/2 + cruise*(u-8-ramp), 0
		case u < 8+2*ramp+hold:
			x := 8 + 2*ramp + hold - u
			return accel * x, (turns+1)*whole - accel*x*x/2, -accel
		}
		return 0, (turns + 1) * whole, 0
	}
	log := &sensors.Log{}
	for i := range 30000 {
		t := float64(i) * 0.01
		_, _, a := truth(t)
		log.Motion = append(log.Motion, sensors.Motion{T: t, Force: r.Rotate(r3.Vec{X: a, Z: gravity}), Turn: r3.Vec{}})
		if i%100 == 0 {
			v, _, _ := truth(t - lag)
			log.Fixes = append(log.Fixes, sensors.NewFix(t, v))
		}
	}
	return log, func(t float64) (float64, float64) {
		v, s, _ := truth(t)
		return v, s
	}
}

func TestFindsMountLagAndRest(t *testing.T) {
	cases := []struct {
		name string
		rot  r3.Rotation
		lag  float64
	}{
		{name: "level, prompt", rot: r3.NewRotation(0, r3.Vec{Z: 1}), lag: 0.1},
		{name: "upside down, late", rot: r3.NewRotation(3, r3.Vec{X: 1, Y: 0.3}), lag: 0.7},
		{name: "in a pocket", rot: r3.NewRotation(1.3, r3.Vec{X: 0.4, Y: -1, Z: 0.7}), lag: 0.35},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			log, truth := town(c.rot, c.lag)
			var worst float64
			var rested bool
			f := follow(log, func(s State) {
				if s.T < 120 {
					return
				}
				v, _ := truth(s.T)
				worst = math.Max(worst, math.Abs(s.Speed-v))
				rested = rested || s.Standing
			})
			s := f.State()
			_, way := truth(s.T)
			t.Logf("lag %.3f s, worst speed error %.2f m/s, distance %.1f of %.1f m, slope %.4f", s.Lag, worst, s.Distance, way, s.Slope)
			if math.Abs(s.Lag-c.lag) > 0.06 {
				t.Errorf("lag %.3f s, want %.3f", s.Lag, c.lag)
			}
			if worst > 0.5 {
				t.Errorf("speed off by %.2f m/s", worst)
			}
			if math.Abs(s.Distance-way) > 0.01*way {
				t.Errorf("distance %.1f m, want %.1f", s.Distance, way)
			}
			if !rested {
				t.Error("no standstill seen")
			}
			if math.Abs(s.Slope) > 0.01 {
				t.Errorf("slope %.3f on a level road", s.Slope)
			}
		})
	}
}

func TestNothingAllocated(t *testing.T) {
	log, _ := town(r3.NewRotation(1, r3.Vec{X: 1}), 0.2)
	f := New()
	i, k := 0, 0
	got := testing.AllocsPerRun(200, func() {
		for range 100 {
			f.Motion(log.Motion[i])
			i++
		}
		f.Fix(log.Fixes[k])
		k++
	})
	if got != 0 {
		t.Errorf("%.1f allocations in 101 samples, want none", got)
	}
}

func BenchmarkFilter(b *testing.B) {
	log, _ := town(r3.NewRotation(1, r3.Vec{X: 1}), 0.2)
	b.ReportAllocs()
	f := New()
	i, k := 0, 0
	for b.Loop() {
		if i == len(log.Motion) {
			f, i, k = New(), 0, 0
		}
		f.Motion(log.Motion[i])
		if i%100 == 0 {
			f.Fix(log.Fixes[k])
			k++
		}
		i++
	}
}

// TestStandingWithoutMotion: if motion is denied or late, the filter works with
// fixes only.
func TestStandingWithoutMotion(t *testing.T) {
	f := New()
	for i := range 5 {
		f.Fix(sensors.NewFix(float64(i), 0))
	}
	if s := f.State(); !s.Standing || s.Speed != 0 {
		t.Errorf("standing %v at %g m/s after five fixes without speed", s.Standing, s.Speed)
	}
}
