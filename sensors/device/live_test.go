package device

import (
	"context"
	"errors"
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/sourcetest"
)

// bench is a port on a clock that advances by a tenth of a second at each
// Drain: a phone at rest.
type bench struct {
	now   float64
	end   float64        // s, when everything falls silent
	bare  bool           // fixes without a speed
	flat  bool           // no gyroscope
	blink finding.Code   // reported about the receiver between fixes
	holes []sensors.Hole // to be reported
	stops int
	start error
}

func (b *bench) Start() error { return b.start }
func (b *bench) Stop()        { b.stops++ }
func (b *bench) Now() float64 { return b.now }

func (b *bench) Drain(to *Batch) {
	to.Holes, b.holes = append(to.Holes, b.holes...), nil
	if b.now == 0 {
		to.Lost = 7
		to.Reports = append(to.Reports, Report{sensors.SensorMotion, sensors.Available, finding.Finding{}},
			Report{sensors.SensorFix, sensors.Asking, finding.New("android.asks_location")},
			Report{sensors.SensorPressure, sensors.Missing, finding.New("browser.no_barometer")})
	}
	for i := range 10 {
		t := b.now + float64(i)/100
		if t >= b.end {
			break
		}
		m := sensors.Motion{T: t, Force: r3.Vec{Z: 9.81}, Turn: r3.Vec{X: 0.01}}
		if b.flat {
			m.Turn = r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}
		}
		to.Motion = append(to.Motion, m, m) // each twice, as from a faulty driver
	}
	if t := b.now; t < b.end && math.Mod(t+0.01, 1) < 0.05 {
		f := sensors.NewFix(t, 3)
		if b.bare {
			f.Speed = math.NaN()
		}
		to.Fixes = append(to.Fixes, f)
	} else if b.blink != "" {
		to.Reports = append(to.Reports, Report{sensors.SensorFix, sensors.Silent, finding.New(b.blink)})
	}
	b.now += 0.1
}

func soon(time.Duration) <-chan time.Time { return time.After(50 * time.Microsecond) }

func TestLiveKeepsTheContract(t *testing.T) {
	sourcetest.Contract(t, func() sensors.Source { return NewLive(&bench{end: math.Inf(1)}, soon) },
		sourcetest.Samples(5000), sourcetest.Patience(5*time.Second))
}

// until collects from a bench until its clock has passed end.
func until(t *testing.T, port Port, end float64, b *bench) (*sensors.Log, *Live) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	live := NewLive(port, func(d time.Duration) <-chan time.Time {
		if b.now > end {
			cancel()
		}
		return soon(d)
	})
	log, err := sensors.Collect(ctx, live)
	if !errors.Is(err, context.Canceled) {
		t.Fatalf("err = %v", err)
	}
	return log, live
}

func conditions(log *sensors.Log, s sensors.Sensor) (is []sensors.Condition, details []finding.Code) {
	for _, st := range log.States {
		if st.Sensor == s {
			is, details = append(is, st.Condition), append(details, st.Detail.Code)
		}
	}
	return is, details
}

func TestStatesAreToldOnce(t *testing.T) {
	for _, c := range []struct {
		name   string
		bench  bench
		sensor sensors.Sensor
		want   []sensors.Condition
		last   finding.Code
	}{
		{"motion works", bench{end: 100}, sensors.SensorMotion, []sensors.Condition{sensors.Available, sensors.Working}, ""},
		{"fix asked, then works", bench{end: 100}, sensors.SensorFix, []sensors.Condition{sensors.Asking, sensors.Working}, ""},
		{"no barometer", bench{end: 100}, sensors.SensorPressure, []sensors.Condition{sensors.Missing}, "browser.no_barometer"},
		{"motion dies", bench{end: 5}, sensors.SensorMotion,
			[]sensors.Condition{sensors.Available, sensors.Working, sensors.Silent}, NothingMore},
		{"fix dies", bench{end: 5}, sensors.SensorFix,
			[]sensors.Condition{sensors.Asking, sensors.Working, sensors.Silent}, NothingMore},
		{"fix said to be silent between reports", bench{end: 100, blink: "browser.no_satellites"}, sensors.SensorFix,
			[]sensors.Condition{sensors.Asking, sensors.Working}, ""},
		{"fix said to be silent, and is", bench{end: 5, blink: "browser.no_satellites"}, sensors.SensorFix,
			[]sensors.Condition{sensors.Asking, sensors.Working, sensors.Silent}, "browser.no_satellites"},
		{"nothing ever", bench{end: 0}, sensors.SensorMotion, []sensors.Condition{sensors.Available, sensors.Available}, NothingYet},
		{"leave not given", bench{end: 0}, sensors.SensorFix, []sensors.Condition{sensors.Asking}, "android.asks_location"},
		{"no gyroscope", bench{end: 100, flat: true}, sensors.SensorTurn, []sensors.Condition{sensors.Missing}, NoTurn},
		{"place without speed", bench{end: 100, bare: true}, sensors.SensorFix,
			[]sensors.Condition{sensors.Asking, sensors.Available}, NoSpeed},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, _ := until(t, &c.bench, 12, &c.bench)
			got, details := conditions(log, c.sensor)
			if len(got) != len(c.want) {
				t.Fatalf("reported %v, want %v", got, c.want)
			}
			for i := range got {
				if got[i] != c.want[i] {
					t.Fatalf("reported %v, want %v", got, c.want)
				}
			}
			if d := details[len(details)-1]; d != c.last {
				t.Errorf("detail %q, want %q", d, c.last)
			}
		})
	}
}

func TestPortIsStoppedAndItsLossCounted(t *testing.T) {
	b := &bench{end: 100}
	_, live := until(t, b, 10, b)
	if b.stops != 1 {
		t.Errorf("stopped %d times", b.stops)
	}
	if live.Lost() != 7 {
		t.Errorf("lost %d events, want 7", live.Lost())
	}
	failed := errors.New("no sensors at all")
	if err := NewLive(&bench{start: failed}, soon).Run(t.Context(), sensors.NewCollector()); !errors.Is(err, failed) {
		t.Errorf("err = %v", err)
	}
}

// TestHolesAreMarked: a gap that the driver reports, one that shows only by the
// program having been away, and none if it was away but motion arrived.
func TestHolesAreMarked(t *testing.T) {
	hole := sensors.Hole{From: 5, To: 44, Why: finding.New("browser.was_hidden")}
	for _, c := range []struct {
		name string
		away func(b *bench, to *Batch)
		want []sensors.Hole
	}{
		{"reported", func(b *bench, to *Batch) { b.now = 44; to.Holes = append(to.Holes, hole) }, []sensors.Hole{hole}},
		{"noticed", func(b *bench, _ *Batch) { b.now = 44 }, []sensors.Hole{{From: 5, To: 44, Why: finding.New(Held)}}},
		{"reported, but too short", func(b *bench, to *Batch) {
			b.now += 0.4
			to.Holes = append(to.Holes, sensors.Hole{From: 5, To: 5.4, Why: finding.New("browser.was_hidden")})
		}, nil},
		{"to be reported later", func(b *bench, to *Batch) { b.now = 44; to.Away, b.holes = true, []sensors.Hole{hole} }, []sensors.Hole{hole}},
		{"short", func(b *bench, _ *Batch) { b.now += 1.5 }, nil},
		{"away, but motion came", func(b *bench, to *Batch) {
			for ; b.now < 44; b.now += 0.1 {
				to.Motion = append(to.Motion, sensors.Motion{T: b.now, Force: r3.Vec{Z: 9.81}})
			}
		}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := &bench{end: math.Inf(1)}
			log, _ := until(t, &gap{bench: b, away: c.away}, 60, b)
			got := log.Holes()
			if len(got) != len(c.want) {
				t.Fatalf("holes %v, want %v", got, c.want)
			}
			for i, h := range got {
				if math.Abs(h.From-c.want[i].From) > 0.25 || math.Abs(h.To-c.want[i].To) > 0.25 || h.Why.Code != c.want[i].Why.Code {
					t.Errorf("hole %+v, want %+v", h, c.want[i])
				}
			}
			for _, s := range []sensors.Sensor{sensors.SensorMotion, sensors.SensorFix} {
				is, _ := conditions(log, s)
				if len(c.want) > 0 && is[len(is)-1] != sensors.Working {
					t.Errorf("%s after the hole is %v", s, is)
				}
			}
		})
	}
}

// gap is a bench whose program is away once, after five seconds.
type gap struct {
	*bench
	away func(*bench, *Batch)
	done bool
}

func (g *gap) Drain(to *Batch) {
	if !g.done && g.now >= 5 {
		g.done = true
		g.away(g.bench, to)
		return
	}
	g.bench.Drain(to)
}
