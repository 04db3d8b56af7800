package recorder_test

import (
	"context"
	"errors"
	"math"
	"runtime"
	"slices"
	"sync/atomic"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/recorder"
	"stillair/app/store"
	"stillair/runs"
	"stillair/sensors"
)

// legs is a speed over time made of ramps: pairs of a time and the speed
// reached by then.
func legs(points ...[2]float64) func(float64) float64 {
	return func(t float64) float64 {
		for i := 1; i < len(points); i++ {
			a, b := points[i-1], points[i]
			if t <= b[0] {
				return a[1] + (b[1]-a[1])*(t-a[0])/(b[0]-a[0])
			}
		}
		return points[len(points)-1][1]
	}
}

func TestEndsByItself(t *testing.T) {
	for _, c := range []struct {
		name    string
		seconds float64
		speed   func(float64) float64
		room    int64 // bytes; negative: plenty
		fail    error
		want    recorder.Ending
		least   float64 // seconds recorded
		most    float64
	}{
		{"after the ride", 7200, legs([2]float64{0, 0}, [2]float64{20, 20}, [2]float64{600, 20}, [2]float64{610, 0}), -1, nil,
			recorder.Stood, 610 + recorder.CloseAfter - 30, 610 + recorder.CloseAfter + 30},
		{"a pause is no end", 2000, legs([2]float64{0, 0}, [2]float64{20, 20}, [2]float64{300, 20}, [2]float64{310, 0}, [2]float64{900, 0},
			[2]float64{920, 20}, [2]float64{2000, 20}), -1, nil, recorder.SourceEnded, 1999, 2001},
		{"when nothing moves", 7200, legs([2]float64{0, 0}), -1, nil, recorder.NeverMoved, recorder.GiveUpAfter, recorder.GiveUpAfter + 30},
		{"when the sensors fail", 60, steadyRide, -1, errors.New("the receiver is gone"), recorder.SourceFailed, 59, 61},
		{"while there is room to close", 3600, steadyRide, recorder.MinRoom, nil, recorder.NoRoom, 30, 3599},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := newBench()
			b.files.SetRoom(c.room)
			src := made{seconds: c.seconds, hz: 10, speed: c.speed, fail: c.fail}
			if c.want == recorder.NoRoom {
				src.hz, src.each = 100, func(t float64) {
					if t == 30 { // another program fills the storage
						b.files.SetRoom(recorder.LastRoom + 1<<20)
					}
					time.Sleep(100 * time.Microsecond) // an hour in seconds: the other goroutines of the recorder need time too
				}
			}
			status, got := b.finish(t, b.record(t, src))
			if status.Why != c.want || !errors.Is(status.Err, c.fail) && c.fail != nil {
				t.Errorf("ended %q with %v, want %q", status.Why, status.Err, c.want)
			}
			if status.Seconds < c.least || status.Seconds > c.most {
				t.Errorf("recorded %.0f s, want %.0f to %.0f", status.Seconds, c.least, c.most)
			}
			if !got.Closed || len(got.Missing) > 0 {
				t.Errorf("closed %v, missing %v", got.Closed, got.Missing)
			}
		})
	}
}

func TestNoRoomToBegin(t *testing.T) {
	b := newBench()
	b.files.SetRoom(recorder.MinRoom - 1)
	if _, err := recorder.Start(context.Background(), b.config(made{})); !errors.Is(err, recorder.ErrNoRoom) {
		t.Fatalf("err = %v, want ErrNoRoom", err)
	}
	b.files.SetRoom(-1)
	b.finish(t, b.record(t, made{seconds: 1, hz: 10, speed: steadyRide})) // the lock was released
}

// exact is a live filter that returns the truth.
type exact struct {
	speed func(float64) float64
	t     float64
}

func (e *exact) Motion(m sensors.Motion) { e.t = m.T }
func (e *exact) Fix(sensors.Fix)         {}
func (e *exact) Estimate() recorder.Estimate {
	return recorder.Estimate{Speed: e.speed(e.t), Accel: (e.speed(e.t+0.01) - e.speed(e.t-0.01)) / 0.02}
}

func TestNoticesWhileRiding(t *testing.T) {
	b := newBench()
	speed := legs([2]float64{0, 0}, [2]float64{10, 0}, [2]float64{16, 30}, [2]float64{26, 30}, [2]float64{34, 15}, [2]float64{46, 15}, [2]float64{51, 28},
		[2]float64{56, 28}, [2]float64{76, 12}, [2]float64{80, 12}, [2]float64{83, 30}, [2]float64{90, 30}, [2]float64{95, 0}, [2]float64{100, 0})
	cfg := b.config(made{seconds: 110, hz: 20, speed: speed})
	cfg.Filter = &exact{speed: speed}
	rec, err := recorder.Start(context.Background(), cfg)
	if err != nil {
		t.Fatal(err)
	}
	status, _ := b.finish(t, rec)
	var kinds []runs.Kind
	for _, n := range status.Noticed {
		kinds = append(kinds, n.Kind)
	}
	// From 30 to 15 m/s the engine brakes: too fast for rolling.
	want := []runs.Kind{runs.Launch, runs.RollOn, runs.CoastDown, runs.RollOn, runs.Stop}
	if !slices.Equal(kinds, want) {
		t.Errorf("noticed %v, want %v", kinds, want)
	}
}

func TestSetupsAndRemarksAreKept(t *testing.T) {
	b := newBench()
	var rec atomic.Pointer[recorder.Recording]
	ready := make(chan struct{})
	src := made{seconds: 100, hz: 20, speed: steadyRide, each: func(t float64) {
		<-ready
		switch t {
		case 30:
			rec.Load().SetSetup(sensors.Setup{Name: "panniers on", Mass: 302})
		case 60:
			rec.Load().Remark("a truck passed")
		}
	}}
	rec.Store(b.record(t, src))
	close(ready)
	_, got := b.finish(t, rec.Load())
	s := got.Log.Ride.SetupAt(31)
	if s.Name != "panniers on" || s.Mass != 302 || math.Abs(s.From-30) > 0.2 {
		t.Errorf("setup at 31 s is %+v", s)
	}
	if got.Log.Ride.SetupAt(29).Name != "" {
		t.Errorf("the setup reaches back to before it was entered")
	}
	if len(got.Remarks) != 1 || got.Remarks[0].Text != "a truck passed" || math.Abs(got.Remarks[0].T-60) > 0.2 {
		t.Errorf("remarks are %+v", got.Remarks)
	}
}

// TestLegsAreMeasured checks that each stretch from standstill to standstill is
// analysed once, complete, with the entered values.
func TestLegsAreMeasured(t *testing.T) {
	b := newBench()
	given := make(chan *sensors.Log, 8)
	cfg := b.config(made{seconds: 200, hz: 50, speed: legs([2]float64{0, 0}, [2]float64{10, 0}, [2]float64{20, 25}, [2]float64{60, 25}, [2]float64{70, 0},
		[2]float64{100, 0}, [2]float64{110, 25}, [2]float64{150, 25}, [2]float64{160, 0})})
	cfg.Ride.Bike = "test bike"
	cfg.Analyse = func(_ context.Context, leg *sensors.Log) (*runs.Result, error) {
		given <- leg
		return &runs.Result{Runs: []runs.Run{{ID: 1}}}, nil
	}
	rec, err := recorder.Start(context.Background(), cfg)
	if err != nil {
		t.Fatal(err)
	}
	status, _ := b.finish(t, rec)
	first := <-given
	if n := len(first.Motion); n < 70*50 || n > 80*50 || first.Ride.Bike != "test bike" {
		t.Errorf("the first leg has %d motion samples of bike %q", n, first.Ride.Bike)
	}
	for end := time.Now().Add(10 * time.Second); status.Leg == nil && time.Now().Before(end); time.Sleep(time.Millisecond) {
		status = rec.Status()
	}
	if status.Leg == nil {
		t.Error("what the leg held is not reported")
	}
}

// TestFourHoursInFlatMemory records four hours at 100 Hz, as fast as the
// machine can, and checks that the memory after four hours is the same as after
// one.
func TestFourHoursInFlatMemory(t *testing.T) {
	if testing.Short() {
		t.Skip("records four hours")
	}
	path := t.TempDir()
	files, err := platform.NewDir(path)
	if err != nil {
		t.Fatal(err)
	}
	heap := func() float64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return float64(m.HeapAlloc) / (1 << 20)
	}
	at := map[float64]float64{}
	b := newBench()
	b.sessions = store.NewSessions(files, platform.NewSystemClock())
	src := made{seconds: 4 * 3600, hz: 100, speed: func(t float64) float64 { return 20 + 10*math.Sin(t/40) }, each: func(t float64) {
		if math.Mod(t, 1800) == 0 {
			at[t/3600] = heap()
		}
	}}
	rec := b.record(t, src)
	<-rec.Done()
	st := rec.Status()
	if st.Kept.Err != nil || math.Abs(st.Seconds-4*3600) > 1 {
		t.Fatalf("recorded %.0f s, %v", st.Seconds, st.Kept.Err)
	}
	for h := 0.5; h < 4; h += 0.5 {
		t.Logf("%.1f h: %.1f MB on the heap", h, at[h])
	}
	t.Logf("the file has %.1f MB, %.1f MB an hour; slowest write and sync %v", float64(st.Kept.Bytes)/(1<<20), float64(st.Kept.Bytes)/(1<<20)/4, st.Kept.Slowest)
	if grown := at[3.5] - at[1]; grown > 2 {
		t.Errorf("the heap grew by %.1f MB from the first hour on", grown)
	}
}
