package shell

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"stillair/app/platform"
	"stillair/app/recorder"
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/view"
	"stillair/app/work"
	"stillair/export/session"
	"stillair/fusion/live"
	"stillair/runs"
	"stillair/sensors"
)

// beat is how often the screen looks at the recorder. Drawing more often takes
// time from a browser's sensors and shows a rider nothing new.
const beat = 500 * time.Millisecond

// calm is the least time between two drawings of the screen before the ride.
const calm = 4 * beat

// bike is the bike chosen last, nil if there is none.
func (s *Shell) bike() *store.Bike {
	for i := range s.garage {
		if s.garage[i].ID == s.choices.Bike {
			return &s.garage[i]
		}
	}
	if len(s.garage) > 0 {
		return &s.garage[0]
	}
	return nil
}

func (s *Shell) readyState() view.ReadyState {
	st := view.ReadyState{Bike: s.bike(), Setup: s.choices.Setup, Air: s.choices.Air, Free: s.free, Ticked: s.ticked, Coarse: s.dev.CoarseTiming,
		Permit: s.dev.Permit != nil, NoGuide: s.choices.GuideSet, Obstacles: s.obstacles}
	st.AirEntered, st.AirOld = s.airAge()
	if s.watch != nil {
		st.Senses, _ = s.watch.Senses()
	}
	st.Permit = st.Permit && slices.ContainsFunc(st.Senses, func(x recorder.Sense) bool { return x.Condition == sensors.Asking })
	return st
}

func (s *Shell) ready() *kit.Page {
	v := s.screen.C.Ready(s.readyState())
	s.last = fmt.Sprint(v)
	return s.screen.Ready(v, s.notice, screens.ReadyActions{
		Start:  s.startRide,
		Permit: s.dev.Permit,
		Bike:   func() { s.goTo(screens.PlaceBikes) },
		Guide:  func() { s.openGuide() },
		Air:    s.openAir,
		Notify: s.askToNotify,
		Tick: func(i int) {
			s.ticked[i] = !s.ticked[i]
			s.again()
		},
		Dismiss: func() {
			s.notice = screens.NoticeText{}
			s.again()
		},
	})
}

func (s *Shell) startWatch() {
	if s.watch == nil && s.rec == nil && !s.starting && !s.hidden && s.trying.stop == nil {
		s.watch = recorder.StartWatch(s.ctx, s.source(), s.dev.Clock)
	}
}

// none is the result of a job without one.
type none struct{}

// stopped stops a watch, so that its sensors are free; nil is none.
func stopped(w *recorder.Watch) func() none {
	return func() none {
		if w != nil {
			w.Stop()
		}
		return none{}
	}
}

// tick updates the screen from the sensors and the recorder.
func (s *Shell) tick() {
	for {
		select {
		case <-s.ctx.Done():
			return
		case <-s.dev.Clock.After(beat):
			s.cfg.Do(s.follow)
		}
	}
}

// mostWaits is how many beats drawing waits for a finger to lift.
const mostWaits = 3

// follow draws what changed, but not under a finger.
func (s *Shell) follow() {
	if !s.rodeOff() && (s.screen.Kit.Holding() || s.screen.Kit.Touched() && s.waited < mostWaits) {
		s.waited++
		return
	}
	s.waited = 0
	switch {
	case s.rec != nil:
		s.followRide()
	case s.place == screens.PlaceRide && len(s.stacks[s.place]) == 1:
		s.lookForObstacles()
		now := s.dev.Clock.Elapsed()
		if v := s.screen.C.Ready(s.readyState()); fmt.Sprint(v) != s.last && now-s.drawn >= calm {
			s.drawn = now
			s.again()
		}
	}
}

// liveFilter is the live filter as the recorder sees it.
type liveFilter struct{ f *live.Filter }

func (l liveFilter) Motion(m sensors.Motion) { l.f.Motion(m) }
func (l liveFilter) Fix(f sensors.Fix)       { l.f.Fix(f) }
func (l liveFilter) Estimate() recorder.Estimate {
	st := l.f.State()
	return recorder.Estimate{Speed: st.Speed, Accel: st.Accel, Distance: st.Distance}
}

func (s *Shell) recorderConfig() recorder.Config {
	ride, about := sensors.UnknownRide(), store.About{}
	ride.Air = s.choices.Air.SI()
	if b := s.bike(); b != nil {
		ride = b.Ride(s.choices.Setup, s.choices.Air.SI())
		about.Bike, about.Setup = b.Name, s.choices.Setup
	}
	if s.choices.Wind != nil {
		ride.WindSD = *s.choices.Wind
	}
	ride.Station = s.choices.Station.SI()
	about.AirEntered, about.AirOld = s.airAge()
	ride.Axes = "specific force up"
	kind := "phone"
	if s.dev.CoarseTiming {
		kind = work.Browser
	}
	return recorder.Config{Sessions: s.library.sessions, Clock: s.dev.Clock, Awake: s.awake(), Source: s.source(), Filter: liveFilter{live.New()},
		Ride: ride, About: about, Header: session.Header{Start: math.NaN(), Started: s.dev.Clock.Wall(), Device: kind, Program: Program, Origin: "recorded"},
		Analyse:  s.ofLeg(true),
		Together: s.ofLeg(false)}
}

// ofLeg gives what measures a leg of a ride, briefly or in full, while it continues.
func (s *Shell) ofLeg(brief bool) func(context.Context, *sensors.Log) (*runs.Result, error) {
	do, pairs, clock := s.work, s.rollOns(), s.dev.Clock
	return func(ctx context.Context, leg *sensors.Log) (*runs.Result, error) {
		answer, err := do.Do(ctx, &work.Ask{Leg: leg, Brief: brief, RollOns: pairs}, breathe(clock))
		if err != nil {
			return nil, err
		}
		return answer.Rides[0].Result, nil
	}
}

// slice is how long an analysis may block the program while it records: less
// than the time from one reading of motion to the next, since a browser drops
// a reading that nobody takes.
const slice = 8 * time.Millisecond

// breathe returns the function that an analysis calls to let the recording
// continue where one thread does everything, as in a browser.
func breathe(clock platform.Clock) func(share float64) {
	rested := clock.Elapsed()
	return func(float64) {
		if clock.Elapsed()-rested < slice {
			return
		}
		<-clock.After(time.Millisecond)
		rested = clock.Elapsed()
	}
}

// startRide is the rider's tap.
func (s *Shell) startRide() {
	if s.dev.Permit != nil {
		s.dev.Permit()
	}
	if s.starting || s.rec != nil {
		return // touched twice
	}
	s.notice = screens.NoticeText{}
	s.record()
}

// record begins a recording.
func (s *Shell) record() {
	watch, test, ctx, cfg, random := s.watch, s.trying.stop, s.ctx, s.recorderConfig(), s.dev.Random
	s.starting, s.watch = true, nil
	type begun struct {
		rec *recorder.Recording
		err error
	}
	aside(s, func() begun {
		stopped(watch)()
		if test != nil {
			test()
		}
		id, err := session.NewID(random)
		if err != nil {
			return begun{nil, err}
		}
		cfg.Header.ID = id
		rec, err := recorder.Start(ctx, cfg)
		return begun{rec, err}
	}, func(b begun) {
		s.starting = false
		if b.err != nil {
			s.notice = screens.NoticeText{Title: s.screen.C.StartTrouble(b.err)}
			s.startWatch()
		}
		s.rec, s.riding, s.spoken, s.pocket = b.rec, nil, nil, pocket{}
		s.show()
	})
}

func (s *Shell) followRide() {
	select {
	case <-s.rec.Done():
		s.rideEnded()
		return
	default:
	}
	st := s.rec.Status()
	s.notify(st)
	if s.choices.Aloud && st.Phase == recorder.Standing && st.Leg != nil && st.Leg != s.spoken {
		s.spoken = st.Leg
		s.say()
	}
	if s.followPocket(st) || s.asking != nil && !s.rodeOff() {
		return
	}
	if s.asking != nil || s.riding == nil || !s.riding.Update(s.ridden(st)) {
		s.showRiding()
	}
}

// rodeOff reports whether a question that was asked while standing is still open
// when the bike moves again.
func (s *Shell) rodeOff() bool {
	return s.asking != nil && s.rec != nil && s.rec.Status().Phase == recorder.Moving
}

// showRiding draws the riding screen, or the question that is open on it. No
// question stays open while the bike moves.
func (s *Shell) showRiding() {
	if s.rodeOff() {
		s.asking = nil
	}
	if s.asking != nil {
		s.set(s.asking())
		return
	}
	if s.pocket.dark {
		s.showPocket()
		return
	}
	st := s.rec.Status()
	on := screens.RidingActions{End: s.endRide, Setup: s.askSetup, Read: s.readMissing}
	if s.dev.Background == nil || st.Kept.AwakeErr != nil {
		on.Pocket = s.intoPocket // it takes a lit screen
	}
	if s.dev.Voice != nil {
		on.Say = s.say
	}
	s.riding = s.screen.Riding(s.ridden(st), on)
	s.set(s.riding.Root)
}

// say says the results of the last leg aloud.
func (s *Shell) say() {
	if s.dev.Voice == nil {
		return
	}
	var words []string
	for _, l := range s.screen.C.Riding(s.rec.Status()).Last {
		words = append(words, l.Spoken)
	}
	if len(words) == 0 {
		return
	}
	voice, tag := s.dev.Voice, s.screen.C.Book.Tag
	go func() {
		// A voice that fails does no harm: the words are on the screen.
		_ = voice.Say(strings.Join(words, " "), tag)
	}()
}

// rescue offers a ride whose end the storage did not accept as a file: what the
// storage holds, and after it the rest. Unless the rider saves it elsewhere, the
// rest is lost when the app closes.
func (s *Shell) rescue(id string, unstored []byte) {
	if len(unstored) == 0 || s.dev.Share == nil {
		return
	}
	l, ctx, share := s.library, s.ctx, s.dev.Share
	aside(s, func() error {
		name, data, err := l.sessions.Bytes(id)
		if err != nil {
			data = nil // the rest alone is a recording too
		}
		return share.Share(ctx, name, gzipType, append(data, unstored...))
	}, s.problem)
}

// askForCopy makes the results begin with the step of saving the ride elsewhere
// too.
func (s *Shell) askForCopy() {
	if s.dev.Share == nil {
		return
	}
	c := &screens.Copying{Why: s.screen.C.Copied(s.dev.CoarseTiming, s.obstacles)}
	c.Save = s.giving(&c.Handing, s.fileOf(work.AsRecorded))
	s.opened.copy = c
}

// rideEnded shows how the ride ended, and measures it.
func (s *Shell) rideEnded() {
	st, id := s.rec.Status(), s.rec.ID()
	s.rescue(id, s.rec.Unstored())
	s.rec, s.riding, s.asking = nil, nil, nil
	s.ticked = [6]bool{}
	s.place = screens.PlaceResults
	s.home(s.place)
	s.change(func(library) error { return nil }, func(error) {
		s.startWatch()
		s.openRide(id)
		s.opened.saved = s.screen.C.Ended(st)
		s.askForCopy()
	})
}
