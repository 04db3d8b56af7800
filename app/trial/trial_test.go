package trial

import (
	"context"
	"errors"
	"math"
	"reflect"
	"sync"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/sensors"
)

// bench describes what the sensors of a phone on a bench deliver in twelve seconds.
type bench struct {
	rate     float64 // of motion, 1/s
	force    r3.Vec
	shake    float64 // m/s², of a hand
	fixes    float64 // 1/s
	fixClock float64 // offset of the time stamps of fixes from the others', s
	late     float64 // delay of every tenth reading, s
	hPa      float64
	hole     [2]float64 // from and to of a pause of everything
	noTurn   bool
}

func good() bench { return bench{rate: 200, force: r3.Vec{X: 0.1, Z: 9.8}, fixes: 1, hPa: 1013} }

// clock shows the time that a test sets, and waiting takes no time.
type clock struct {
	mu        sync.Mutex
	now       time.Duration
	delivered chan struct{} // closed once the source has delivered
}

func (c *clock) Wall() time.Time { return time.Date(2026, 5, 3, 10, 0, 0, 0, time.UTC) }
func (c *clock) Elapsed() time.Duration {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.now
}
func (c *clock) set(s float64) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.now = time.Duration(s * 1e9)
}
func (c *clock) After(d time.Duration) <-chan time.Time {
	<-c.delivered
	c.mu.Lock()
	defer c.mu.Unlock()
	c.now += d
	done := make(chan time.Time, 1)
	done <- time.Time{}
	return done
}

// play delivers the bench's readings at the clock's times.
func (b bench) play(c *clock, to sensors.Sink) {
	nextFix, base := 0.0, c.Elapsed().Seconds()
	for i := range int(12 * b.rate) {
		t := float64(i) / b.rate
		if t >= b.hole[0] && t < b.hole[1] {
			continue
		}
		at := t
		if i%10 == 0 {
			at += b.late
		}
		c.set(base + at)
		m := sensors.Motion{T: t, Force: b.force, Turn: r3.Vec{X: 0.01}}
		m.Force.X += b.shake * math.Sin(20*t)
		if b.noTurn {
			m.Turn = r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}
		}
		to.Motion(m)
		if b.fixes > 0 && t >= nextFix {
			nextFix += 1 / b.fixes
			to.Fix(sensors.NewFix(t+b.fixClock, 0))
		}
	}
	if b.hPa > 0 {
		to.Pressure(sensors.Pressure{T: 1, Pa: 100 * b.hPa})
	}
}

func (b bench) heard() *heard {
	c := &clock{}
	h := newHeard(c)
	b.play(c, h)
	return h
}

func verdicts(lines []Line) map[Topic]Verdict {
	all := map[Topic]Verdict{}
	for _, l := range lines {
		all[l.Topic] = l.Verdict
	}
	return all
}

func TestLying(t *testing.T) {
	fine := map[Topic]Verdict{Motion: Works, Turn: Works, Fixes: Works, Pressure: Works, Clocks: Works, Axes: Works}
	for _, c := range []struct {
		name    string
		change  func(*bench)
		differs map[Topic]Verdict
	}{
		{"as it should be", func(*bench) {}, nil},
		{"60 Hz", func(b *bench) { b.rate = 60 }, map[Topic]Verdict{Motion: Differs, Turn: Differs}},
		{"10 Hz", func(b *bench) { b.rate = 10 }, map[Topic]Verdict{Motion: Fails, Turn: Fails}},
		{"a pause", func(b *bench) { b.hole = [2]float64{3, 4} }, map[Topic]Verdict{Motion: Differs, Turn: Differs}},
		{"no gyroscope", func(b *bench) { b.noTurn = true }, map[Topic]Verdict{Turn: Untried}},
		{"no barometer", func(b *bench) { b.hPa = 0 }, map[Topic]Verdict{Pressure: Untried}},
		{"a barometer in kPa", func(b *bench) { b.hPa = 101.3 }, map[Topic]Verdict{Pressure: Fails}},
		{"under a roof", func(b *bench) { b.fixes = 0 }, map[Topic]Verdict{Fixes: Untried}},
		{"slow fixes", func(b *bench) { b.fixes = 0.5 }, map[Topic]Verdict{Fixes: Differs}},
		{"force the other way", func(b *bench) { b.force = r3.Vec{Z: -9.8} }, map[Topic]Verdict{Axes: Differs}},
		{"on its edge", func(b *bench) { b.force = r3.Vec{Y: 9.8} }, map[Topic]Verdict{Axes: Differs}},
		{"force in g", func(b *bench) { b.force = r3.Vec{Z: 1} }, map[Topic]Verdict{Axes: Fails}},
		{"without gravity", func(b *bench) { b.force = r3.Vec{} }, map[Topic]Verdict{Axes: Fails}},
		{"in the hand", func(b *bench) { b.shake = 2 }, map[Topic]Verdict{Axes: Untried}},
		{"fixes on another clock", func(b *bench) { b.fixClock = -3600 }, map[Topic]Verdict{Clocks: Fails}},
		{"fixes two seconds late", func(b *bench) { b.fixClock = -2 }, nil},
		{"an old fix, then none", func(b *bench) { b.fixes, b.fixClock = 0.05, -3600 }, map[Topic]Verdict{Fixes: Untried}},
		{"handed over late", func(b *bench) { b.late = 1.5 }, map[Topic]Verdict{Clocks: Differs}},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := good()
			c.change(&b)
			want := map[Topic]Verdict{}
			for topic, v := range fine {
				want[topic] = v
			}
			for topic, v := range c.differs {
				want[topic] = v
			}
			lines := lying(b.heard())
			if got := verdicts(lines); !reflect.DeepEqual(got, want) {
				t.Errorf("%v\nwant %v; %v", got, want, lines)
			}
		})
	}
}

func TestLyingWithoutAnything(t *testing.T) {
	want := map[Topic]Verdict{Motion: Fails, Turn: Untried, Fixes: Untried, Pressure: Untried, Clocks: Untried, Axes: Untried}
	if got := verdicts(lying(newHeard(&clock{}))); !reflect.DeepEqual(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

func TestInTheDark(t *testing.T) {
	for _, c := range []struct {
		name   string
		dark   float64
		had    bool
		change func(*bench)
		want   Verdict
	}{
		{"goes on", 31, true, func(*bench) {}, Works},
		{"the screen stayed on", 3, true, func(*bench) {}, Untried},
		{"motion stops", 31, true, func(b *bench) { b.hole = [2]float64{2, 9} }, Fails},
		{"satellites stop", 31, true, func(b *bench) { b.fixes = 0 }, Fails},
		{"no satellites before either", 31, false, func(b *bench) { b.fixes = 0 }, Works},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := good()
			c.change(&b)
			if l := inTheDark(b.heard(), c.dark, c.had); l.Verdict != c.want {
				t.Errorf("%+v, want %s", l, c.want)
			}
		})
	}
}

// service records the calls to it.
type service struct {
	refuse error
	said   []string
}

func (s *service) Begin(platform.Notification, bool) error {
	s.said = append(s.said, "begin")
	return s.refuse
}
func (s *service) Show(platform.Notification) error { return nil }
func (s *service) End() error {
	s.said = append(s.said, "end")
	return nil
}
func (s *service) Happenings() <-chan platform.Happening { return nil }

// played delivers once and then waits.
type played struct {
	b bench
	c *clock
}

func (p played) Run(ctx context.Context, to sensors.Sink) error {
	p.b.play(p.c, to)
	close(p.c.delivered)
	<-ctx.Done()
	return ctx.Err()
}

func TestRun(t *testing.T) {
	for _, c := range []struct {
		name   string
		refuse error
		tell   []Phase
		asked  []string
		want   map[Topic]Verdict
	}{
		{"works", nil, []Phase{LieStill, SwitchOff}, []string{"begin", "end"}, map[Topic]Verdict{Service: Works, Dark: Works, Storage: Works}},
		{"no service", errors.New("no"), []Phase{LieStill}, []string{"begin"}, map[Topic]Verdict{Service: Fails, Dark: "", Storage: Works}},
	} {
		t.Run(c.name, func(t *testing.T) {
			clk := &clock{}
			s := &service{refuse: c.refuse}
			looks := 0
			d := &platform.Device{Files: platformtest.NewMemory(), Clock: clk, Background: s,
				Source: func() sensors.Source {
					clk.delivered = make(chan struct{})
					return played{good(), clk}
				},
				Lit: func() bool { // on, then off for 40 s, then on
					looks++
					return looks < 4 || looks > 84
				}}
			var seen []Phase
			r := Run(t.Context(), d, platform.Notification{}, func(p Phase) { seen = append(seen, p) })
			if !reflect.DeepEqual(seen, c.tell) || !reflect.DeepEqual(s.said, c.asked) {
				t.Errorf("seen %v, want %v; asked %v, want %v", seen, c.tell, s.said, c.asked)
			}
			got := verdicts(r.Lines)
			for topic, v := range c.want {
				if got[topic] != v {
					t.Errorf("%s: %q, want %q; %v", topic, got[topic], v, r.Lines)
				}
			}
			if infos, _ := d.Files.List(); len(infos) != 0 {
				t.Errorf("files are left: %v", infos)
			}
			if err := Keep(d.Files, r); err != nil {
				t.Fatal(err)
			}
			if back := Kept(d.Files); back == nil || !reflect.DeepEqual(*back, r) {
				t.Errorf("kept %+v, want %+v", back, r)
			}
		})
	}
}

func TestStorageThatFails(t *testing.T) {
	files := platformtest.NewMemory()
	files.SetRoom(100)
	d := &platform.Device{Files: files, Clock: platform.NewSystemClock()}
	if l := storage(d); l.Verdict != Fails || l.Said == "" {
		t.Errorf("%+v", l)
	}
}

func TestKeptThatIsNone(t *testing.T) {
	files := platformtest.NewMemory()
	if Kept(files) != nil {
		t.Error("a result where there is none")
	}
	for _, text := range []string{"", "{", `{"kind":"another"}`} {
		if err := files.Replace(KeptAs, []byte(text)); err != nil {
			t.Fatal(err)
		}
		if Kept(files) != nil {
			t.Errorf("%q is taken for a result", text)
		}
	}
}
