package recorder_test

import (
	"context"
	"errors"
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/recorder"
	"stillair/app/store"
	"stillair/export/session"
	"stillair/sensors"
)

// fixFilter uses the speed of the last fix, which is good enough for the tests
// of the recorder.
type fixFilter struct{ last, before sensors.Fix }

func (f *fixFilter) Motion(sensors.Motion) {}

func (f *fixFilter) Fix(x sensors.Fix) { f.before, f.last = f.last, x }

func (f *fixFilter) Estimate() recorder.Estimate {
	a := (f.last.Speed - f.before.Speed) / max(f.last.T-f.before.T, 0.1)
	return recorder.Estimate{Speed: f.last.Speed, Accel: a, Distance: f.last.T}
}

// made is a simulated source that generates samples on demand.
type made struct {
	seconds float64
	hz      int
	speed   func(t float64) float64     // m/s
	clock   func(t float64) float64     // reading of the phone's clock at t; nil: t
	dies    map[sensors.Sensor]float64  // when a sensor stops delivering
	states  map[float64][]sensors.State // states that the source reports, by second
	each    func(t float64)             // called once a second; may be nil
	fail    error                       // what Run returns at the end
}

func (m made) Run(ctx context.Context, sink sensors.Sink) error {
	for i := range int(m.seconds * float64(m.hz)) {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		t := float64(i) / float64(m.hz)
		stamp := t
		if m.clock != nil {
			stamp = m.clock(t)
		}
		second := i%m.hz == 0
		if second {
			for _, st := range m.states[t] {
				st.T = stamp
				sink.State(st)
			}
			if m.each != nil {
				m.each(t)
			}
		}
		if at, ok := m.dies[sensors.SensorMotion]; !ok || t < at {
			shake := math.Sin(91 * t)
			sink.Motion(sensors.Motion{T: stamp, Force: r3.Vec{X: 0.3 * shake, Y: 0.1, Z: 9.81 + shake}, Turn: r3.Vec{Z: 0.01 * shake}})
		}
		if at, ok := m.dies[sensors.SensorFix]; second && (!ok || t < at) {
			sink.Fix(sensors.NewFix(stamp, m.speed(t)))
		}
	}
	return m.fail
}

func steadyRide(float64) float64 { return 20 }

type bench struct {
	files    *platformtest.Memory
	sessions *store.Sessions
}

func newBench() bench {
	files := platformtest.NewMemory()
	return bench{files, store.NewSessions(files, platform.NewSystemClock())}
}

func (b bench) config(src sensors.Source) recorder.Config {
	return recorder.Config{Sessions: b.sessions, Clock: platform.NewSystemClock(), Source: src,
		Filter: &fixFilter{}, Ride: sensors.UnknownRide(), Header: session.Header{ID: session.ID{1}, Device: "test"}}
}

func (b bench) record(t *testing.T, src sensors.Source) *recorder.Recording {
	t.Helper()
	rec, err := recorder.Start(context.Background(), b.config(src))
	if err != nil {
		t.Fatal(err)
	}
	return rec
}

func (b bench) finish(t *testing.T, rec *recorder.Recording) (recorder.Status, *session.Recording) {
	t.Helper()
	select {
	case <-rec.Done():
	case <-time.After(60 * time.Second):
		t.Fatal("the recording did not end")
	}
	got, err := b.sessions.Read(rec.ID())
	if err != nil {
		t.Fatal(err)
	}
	return rec.Status(), got
}

func TestEverySampleIsKept(t *testing.T) {
	b := newBench()
	status, got := b.finish(t, b.record(t, made{seconds: 300, hz: 100, speed: steadyRide}))
	if status.Why != recorder.SourceEnded || status.Err != nil || status.Kept.Err != nil {
		t.Errorf("ended %q, %v, storage %v", status.Why, status.Err, status.Kept.Err)
	}
	if len(got.Log.Motion) != 30_000 || len(got.Log.Fixes) != 300 || !got.Closed {
		t.Errorf("read %d motion samples, %d fixes, closed %v", len(got.Log.Motion), len(got.Log.Fixes), got.Closed)
	}
	about, err := b.sessions.Get(rec0(t, b))
	if err != nil || about.About.Stage != store.Closed || math.Abs(about.About.Seconds-300) > 1 {
		t.Errorf("the store says %+v, %v", about.About, err)
	}
}

// rec0 is the ID of the only session.
func rec0(t *testing.T, b bench) string {
	t.Helper()
	list, problems := b.sessions.List()
	if len(list) != 1 || len(problems) > 0 {
		t.Fatalf("list = %v, problems %v", list, problems)
	}
	return list[0].ID
}

func TestASecondRecorderIsRefused(t *testing.T) {
	b := newBench()
	hold := make(chan struct{})
	first := b.record(t, made{seconds: 2, hz: 10, speed: steadyRide, each: func(float64) { <-hold }})
	_, err := recorder.Start(context.Background(), b.config(made{}))
	if !errors.Is(err, platform.ErrBusy) {
		t.Errorf("err = %v, want platform.ErrBusy", err)
	}
	if list, _ := b.sessions.List(); len(list) != 1 {
		t.Errorf("the refused recorder left a session: %v", list)
	}
	close(hold)
	b.finish(t, first)
	b.finish(t, b.record(t, made{seconds: 1, hz: 10, speed: steadyRide}))
}
