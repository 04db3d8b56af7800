package work_test

import (
	"bytes"
	"context"
	"crypto/rand"
	"errors"
	"io"
	"strings"
	"testing"

	"stillair/app/formats"
	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/app/wire"
	"stillair/app/work"
	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/sim"
)

// second is a second program like a browser's worker: bytes go in and come out.
type second struct {
	do     work.Doer
	begins func() error // called before it works; nil: no error
	spoil  func([]byte) []byte
	asked  int
}

func (s *second) Do(ctx context.Context, ask func(io.Writer) error, tell func(float64)) (io.Reader, int, error) {
	s.asked++
	var asked, answer bytes.Buffer
	if err := ask(&asked); err != nil {
		return nil, 0, err
	}
	if s.begins != nil {
		if err := s.begins(); err != nil {
			return nil, 0, err
		}
	}
	write, err := work.Answering(s.do, &asked, asked.Len(), tell)
	if err == nil {
		err = write(&answer)
	}
	if err != nil {
		return nil, 0, err
	}
	b := answer.Bytes()
	if s.spoil != nil {
		b = s.spoil(b)
	}
	return bytes.NewReader(b), len(b), nil
}

// counted counts the work done here.
type counted struct {
	work.Doer
	times int
}

func (c *counted) Do(ctx context.Context, ask *work.Ask, tell func(float64)) (*work.Answer, error) {
	c.times++
	return c.Doer.Do(ctx, ask, tell)
}

func silently(float64) {}

// kept is a storage with a short ride, one at standstill, and a damaged one.
func kept(t *testing.T) (here work.Here, short string, log *sensors.Log) {
	t.Helper()
	files := platformtest.NewMemory()
	here = work.Here{Sessions: store.NewSessions(files, platform.NewSystemClock()), Random: rand.Reader}
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = append(append([]sim.Act{sim.Stand{Seconds: 20}}, sim.Launches(1, 0, 100)...), sim.CoastPairs(1, 20, 10)...)
	ride, err := sim.Run(sc, 7)
	if err != nil {
		t.Fatal(err)
	}
	keep := func(name string, log *sensors.Log) {
		f, err := files.Create(name + ".jsonl.gz")
		if err == nil {
			err = session.WriteRecording(session.ToFile(f), &session.Recording{Header: session.Header{ID: session.ID{1}, Device: work.Browser}, Log: log})
		}
		if err == nil {
			err = f.Close()
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	keep("short", ride.Log)
	empty := &sensors.Log{Ride: sensors.UnknownRide(), Fixes: []sensors.Fix{sensors.NewFix(1, 0)}}
	keep("empty", empty)
	if err := files.Replace("spoilt.jsonl.gz", []byte("no session")); err != nil {
		t.Fatal(err)
	}
	return here, "short", ride.Log
}

// written is an answer as bytes, for comparison.
func written(t *testing.T, a *work.Answer) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := wire.Write(&b, a); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestASecondProgramAnswersAlike compares every kind of work done here and by a
// second program.
func TestASecondProgramAnswersAlike(t *testing.T) {
	here, short, log := kept(t)
	mass := 250.0
	ride := work.Ride{ID: short, Title: "to the lake", Values: &store.Values{Mass: &mass}}
	for name, ask := range map[string]*work.Ask{
		"a ride":  {Rides: []work.Ride{ride}},
		"a leg":   {Leg: log, Brief: true},
		"results": {Rides: []work.Ride{ride}, File: &work.File{Form: work.Results}},
		"report":  {Rides: []work.Ride{ride}, File: &work.File{Form: work.InFormat, Format: formats.Report, Program: "test"}},
		"samples": {Rides: []work.Ride{ride}, File: &work.File{Form: work.InFormat, Format: formats.Samples}},
		"a look":  {Rides: []work.Ride{ride}, Look: true},
		"as kept": {Rides: []work.Ride{ride}, File: &work.File{Form: work.AsRecorded}},
	} {
		if testing.Short() && name != "a ride" && name != "as kept" {
			continue
		}
		t.Run(name, func(t *testing.T) {
			want, err := here.Do(t.Context(), ask, silently)
			if err != nil {
				t.Fatal(err)
			}
			shares := 0
			at := &counted{Doer: here}
			got, err := work.Aside{Second: &second{do: here}, Here: at}.Do(t.Context(), ask, func(share float64) { shares++ })
			if err != nil || at.times > 0 {
				t.Fatalf("%v, done here %d times", err, at.times)
			}
			if !bytes.Equal(written(t, want), written(t, got)) {
				t.Error("another answer")
			}
			if shares == 0 && name != "as kept" && name != "a look" {
				t.Error("progress is not reported")
			}
		})
	}
}

// TestMeasuredKeepsLittle checks what is kept of a ride in memory: the speed in its
// runs, and the figures of screens that would need more.
func TestMeasuredKeepsLittle(t *testing.T) {
	here, short, log := kept(t)
	answer, err := here.Do(t.Context(), &work.Ask{Rides: []work.Ride{{ID: short}}}, silently)
	if err != nil {
		t.Fatal(err)
	}
	m := answer.Rides[0]
	if !m.Coarse || m.Metres < 1000 || m.Table == nil || len(m.Senses) == 0 || m.Recorded.Mass != log.Ride.Mass {
		t.Errorf("measured %+v", m)
	}
	tr := m.Result.Track
	if tr.A != nil || tr.Force != nil || len(tr.T) == 0 || len(tr.T) > len(log.Motion)*9/10 || len(tr.V) != len(tr.T) || len(tr.VSD) != len(tr.T) {
		t.Errorf("%d of %d times are kept", len(tr.T), len(log.Motion))
	}
	for _, r := range m.Result.Runs {
		inside := 0
		for _, x := range tr.T {
			if x >= r.Start && x <= r.End {
				inside++
			}
		}
		if float64(inside) < 90*(r.End-r.Start) {
			t.Errorf("%d speeds in the %.0f s of a %s", inside, r.End-r.Start, r.Kind)
		}
	}
}

// TestASecondProgramThatFailsLosesNothing checks that the work is done here if
// the second program cannot be started, is killed, or sends an invalid answer.
func TestASecondProgramThatFailsLosesNothing(t *testing.T) {
	here, short, _ := kept(t)
	ask := &work.Ask{Rides: []work.Ride{{ID: short}}, File: &work.File{Form: work.AsRecorded}}
	for name, s := range map[string]*second{
		"it cannot be started": {begins: func() error { return errors.New("no worker") }},
		"it is cut short":      {do: here, spoil: func(b []byte) []byte { return b[:len(b)/2] }},
		"it answers rubbish":   {do: here, spoil: func([]byte) []byte { return []byte("rubbish, rubbish") }},
	} {
		at := &counted{Doer: here}
		answer, err := work.Aside{Second: s, Here: at}.Do(t.Context(), ask, silently)
		if err != nil || at.times != 1 || len(answer.File.Data) == 0 {
			t.Errorf("%s: %v, done here %d times", name, err, at.times)
		}
	}
}

// TestCancelledWorkIsNotDoneHere checks that cancelled work is not started again.
func TestCancelledWorkIsNotDoneHere(t *testing.T) {
	here, short, _ := kept(t)
	ctx, cancel := context.WithCancel(t.Context())
	at := &counted{Doer: here}
	s := &second{do: here, begins: func() error { cancel(); return ctx.Err() }}
	if _, err := (work.Aside{Second: s, Here: at}).Do(ctx, &work.Ask{Rides: []work.Ride{{ID: short}}}, silently); !errors.Is(err, context.Canceled) || at.times != 0 {
		t.Errorf("%v, done here %d times", err, at.times)
	}
}

// TestTroubleGoesOver checks that an error about a recording has the same text
// whichever program found it, and is reported once.
func TestTroubleGoesOver(t *testing.T) {
	here, short, _ := kept(t)
	ride := func(id string) []work.Ride { return []work.Ride{{ID: id, Title: "my ride"}} }
	for name, c := range map[string]struct {
		ask  work.Ask
		here int // calls done here as well: the cause may lie in the worker alone
	}{
		"no ride in it":       {work.Ask{Rides: ride("empty")}, 0},
		"the same ride twice": {work.Ask{Rides: append(ride(short), ride(short)...), Across: true}, 0},
		"one of several":      {work.Ask{Rides: append(ride("empty"), ride(short)...), Across: true}, 0},
		"nothing left":        {work.Ask{Rides: ride("empty"), File: &work.File{Form: work.InFormat, Format: formats.Samples}}, 0},
		"missing":             {work.Ask{Rides: ride("missing")}, 1},
	} {
		_, want := here.Do(t.Context(), &c.ask, silently)
		at := &counted{Doer: here}
		_, got := work.Aside{Second: &second{do: here}, Here: at}.Do(t.Context(), &c.ask, silently)
		if want == nil || got == nil || want.Error() != got.Error() || at.times != c.here {
			t.Errorf("%s: %v, want %v; done here %d times", name, got, want, at.times)
		}
		var input, wanted *sensors.InputError
		if errors.As(want, &wanted) != errors.As(got, &input) {
			t.Errorf("%s: %T, want %T", name, got, want)
		}
		var u work.Unreadable
		if name == "missing" != errors.As(got, &u) {
			t.Errorf("%s: whether it was read", name)
		}
	}
	_, err := here.Do(t.Context(), &work.Ask{Rides: ride("spoilt")}, silently)
	if err == nil || strings.Contains(err.Error(), "my ride") {
		t.Errorf("a spoilt file: %v", err)
	}
}
