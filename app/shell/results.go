package shell

import (
	"context"
	"errors"
	"fmt"
	"time"

	"stillair/app/recorder"
	"stillair/app/relabel"
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/work"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/marks"
	"stillair/sensors"
	"stillair/sensors/units"
)

// opened is the open recording with its results.
type opened struct {
	id       string // empty: the invented ride
	ses      store.Session
	res      *runs.Result
	coarse   bool
	saved    string           // how the recording ended, just after the ride
	copy     *screens.Copying // the step after that; nil: none
	share    float64          // of the measuring that is done
	err      error
	cancel   context.CancelFunc
	recorded sensors.Ride // as recorded, before values that were changed
	senses   []recorder.Sense
	table    *relabel.Table // the setups it is measured with, and the halts
}

func (s *Shell) ridesList() *kit.Page {
	on := screens.RidesActions{Open: s.openRide, Demo: s.openDemo, Deleted: s.openDeleted}
	if len(s.rides) > 0 {
		on.Season = s.openSeason
	}
	return s.screen.Rides(s.screen.C.Rides(s.rides), len(s.deleted), on)
}

// rollOns are those that riders of either system of units ask for; nil: the usual.
func (s *Shell) rollOns() []marks.SpeedPair {
	if s.screen.C.System == shown.Imperial {
		return append(marks.DefaultPairs(), marks.SpeedPair{Name: "40-70 mph", From: 40 * units.MPH, To: 70 * units.MPH})
	}
	return nil
}

// asked is a recording as it is to be measured.
func (s *Shell) asked(r store.Session) work.Ride {
	return work.Ride{ID: r.ID, Title: s.screen.C.RideRow(r).Title, Values: r.About.Values}
}

// openRide measures a recording and shows it.
func (s *Shell) openRide(id string) {
	var ses store.Session
	for _, r := range s.rides {
		if r.ID == id {
			ses = r
		}
	}
	s.measure(opened{id: id, ses: ses}, work.Ride{ID: id, Values: ses.About.Values})
}

// openDemo simulates a ride and shows its results.
func (s *Shell) openDemo() {
	about := store.About{Name: s.screen.C.Book.Rides.DemoName, Started: s.dev.Clock.Wall(), Measured: s.dev.Clock.Wall()}
	s.measure(opened{ses: store.Session{About: about}}, work.Ride{Invented: true})
}

// measure measures a ride in the background, shows the progress, and then the
// results.
func (s *Shell) measure(o opened, ride work.Ride) {
	if s.opened.cancel != nil {
		s.opened.cancel()
	}
	ctx, cancel := context.WithCancel(s.ctx)
	o.cancel = cancel
	s.opened = o
	s.push(s.rideScreen)
	do, ask, tell := s.work, &work.Ask{Rides: []work.Ride{ride}, RollOns: s.rollOns()}, s.progress(ctx)
	go func() {
		answer, err := do.Do(ctx, ask, tell)
		s.cfg.Do(func() {
			if ctx.Err() == nil {
				s.measured(answer, err)
			}
		})
	}()
}

// measured shows what was found in the open ride.
func (s *Shell) measured(answer *work.Answer, err error) {
	o := &s.opened
	o.err = err
	if answer != nil && len(answer.Rides) == 1 {
		m := answer.Rides[0]
		o.recorded, o.coarse, o.senses, o.table = m.Recorded, m.Coarse, m.Senses, m.Table
		if err == nil {
			o.res = m.Result
		}
	}
	s.again()
	s.announceResults()
	if err == nil && o.id != "" {
		s.keepFound(o.ses, answer.Rides[0])
	}
}

// progress returns the function that the analysis calls to report its
// progress. Where one thread does everything, as in a browser, it also lets
// the screen be drawn.
func (s *Shell) progress(ctx context.Context) func(share float64) {
	last := time.Duration(0)
	return func(part float64) {
		now := s.dev.Clock.Elapsed()
		if now-last < beat/2 || ctx.Err() != nil {
			return
		}
		last = now
		s.cfg.Do(func() {
			if ctx.Err() == nil && s.opened.res == nil && s.rec == nil {
				s.opened.share = part
				s.again()
			}
		})
		<-s.dev.Clock.After(time.Millisecond)
	}
}

// keepFound keeps what was found in a ride.
func (s *Shell) keepFound(ses store.Session, m work.Measured) {
	now, by := s.dev.Clock.Wall(), keptBy(s.screen.C.System)
	s.changeRide(func(l library) error {
		return errors.Join(l.sessions.KeepResults(ses.ID, by, ses.About.Values, m.Season),
			l.sessions.Update(ses.ID, func(a *store.About) { a.Found, a.Metres, a.Measured = m.Found, m.Metres, now }))
	})
}

// update changes what is known of a ride and reads the list again.
func (s *Shell) update(id string, change func(*store.About)) {
	s.changeRide(func(l library) error { return l.sessions.Update(id, change) })
}

// changeRide changes what is kept of rides; the open one is then as it was read
// again.
func (s *Shell) changeRide(do func(library) error) {
	s.change(do, func(error) {
		for _, r := range s.rides {
			if r.ID == s.opened.id {
				s.opened.ses = r
			}
		}
	})
}

func (s *Shell) rideScreen() *kit.Page {
	o := &s.opened
	title := s.screen.C.RideRow(o.ses).Title
	edit := s.edit
	if o.id == "" {
		edit = nil
	}
	switch {
	case o.err != nil:
		return s.screen.Failed(title, s.whyFailed(o.err), s.goBack, edit)
	case o.res == nil:
		return s.screen.Busy(title, o.share, s.leaveRide)
	}
	v := s.screen.C.Ride(o.ses, o.res, o.senses, o.coarse)
	v.Invented, v.Saved = o.id == "", o.saved
	v.Answers = s.screen.C.Answers(o.res, s.compareAsk(s.bikeOf(o.res)))
	return s.screen.Ride(v, screens.RideActions{Back: s.goBack, Edit: edit,
		Advice: func() { s.push(func() *kit.Page { return s.screen.Advice(s.screen.C.Advice(o.res), s.goBack) }) },
		Run:    s.openRun, Power: s.openPower, Compare: s.compareOpened, Copy: o.copy,
		Load: func(i int) {
			s.push(func() *kit.Page { return s.screen.Load(s.screen.C.Load(o.res, o.res.RoadLoads[i]), s.goBack) })
		}})
}

func (s *Shell) leaveRide() {
	s.opened.cancel()
	s.back()
}

func (s *Shell) whyFailed(err error) string {
	t := s.screen.C.Book.Trouble
	var u work.Unreadable
	switch {
	case errors.As(err, &u):
		return fmt.Sprintf(t.CannotRead, s.screen.C.Error(u.Unwrap()))
	case noRide(err):
		return t.NoRide
	}
	return fmt.Sprintf(t.AnalysisFailed, s.screen.C.Error(err))
}

func (s *Shell) openRun(id int) {
	for _, r := range s.opened.res.Runs {
		if r.ID == id {
			s.push(func() *kit.Page { return s.screen.Run(s.screen.C.Run(s.opened.res, r), s.goBack) })
		}
	}
}

// Demo opens the invented ride.
func (s *Shell) Demo() {
	s.goTo(screens.PlaceResults)
	s.openDemo()
}
