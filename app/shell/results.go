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
	"stillair/export/results"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/marks"
	"stillair/sensors"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// opened is the recording that is open, and what it has to tell.
type opened struct {
	id     string // empty: the invented ride
	ses    store.Session
	res    *runs.Result
	coarse bool
	saved  string           // how the recording ended, just after the ride
	copy   *screens.Copying // the step after that; nil: none
	share  float64          // of the measuring that is done
	err    error
	cancel context.CancelFunc
	told   sensors.Ride // as recorded, before values that were changed
	senses []recorder.Sense
	table  *relabel.Table // the setups it is measured with, and the halts
}

func (s *Shell) ridesList() *kit.Page {
	on := screens.RidesActions{Open: s.openRide, Demo: s.openDemo, Deleted: s.openDeleted}
	if len(s.rides) > 0 {
		on.Season = s.openSeason
	}
	return s.screen.Rides(s.screen.C.Rides(s.rides), len(s.deleted), on)
}

// options are the roll-ons that riders of either system of units ask for.
func (s *Shell) options(progress func(runs.Stage, float64)) runs.Options {
	o := runs.Options{Progress: progress}
	if s.screen.C.System == shown.Imperial {
		o.RollOns = append(marks.DefaultPairs(), marks.SpeedPair{Name: "40-70 mph", From: 40 * units.MPH, To: 70 * units.MPH})
	}
	return o
}

// openRide has a recording measured and shows it.
func (s *Shell) openRide(id string) {
	var ses store.Session
	for _, r := range s.rides {
		if r.ID == id {
			ses = r
		}
	}
	l := s.library
	s.measure(opened{id: id, ses: ses}, func() (reading, error) {
		rec, err := l.sessions.Read(id)
		if err != nil {
			return reading{}, unreadable{err}
		}
		told := rec.Log.Ride
		rec.Log.Ride = ses.About.Values.Apply(told)
		return reading{rec.Log, told, rec.Header.Device == browser}, nil
	})
}

// openDemo simulates an invented ride and shows what it has to tell.
func (s *Shell) openDemo() {
	about := store.About{Name: s.screen.C.Book.Rides.DemoName, Started: s.dev.Clock.Wall(), Measured: s.dev.Clock.Wall()}
	s.measure(opened{ses: store.Session{About: about}}, func() (reading, error) {
		ride, err := sim.Run(sim.DemoScenario(sim.Naked()), 1)
		if err != nil {
			return reading{}, err
		}
		return reading{log: ride.Log, told: ride.Log.Ride}, nil
	})
}

// reading is a recording that was read to be measured.
type reading struct {
	log    *sensors.Log
	told   sensors.Ride // as recorded, before values that were changed
	coarse bool
}

// measure reads a log and analyses it aside, shows how far that is, and then
// the results.
func (s *Shell) measure(o opened, read func() (reading, error)) {
	if s.opened.cancel != nil {
		s.opened.cancel()
	}
	ctx, cancel := context.WithCancel(s.ctx)
	o.cancel = cancel
	s.opened = o
	s.push(s.rideScreen)
	opts := s.options(s.progress(ctx))
	go func() {
		got, err := read()
		var res *runs.Result
		var senses []recorder.Sense
		var table *relabel.Table
		if err == nil {
			senses, table = recorder.Sensed(got.log), relabel.TableOf(got.log)
			s.cfg.Do(func() {
				if ctx.Err() == nil {
					s.opened.told = got.told
				}
			})
			res, err = runs.Analyse(ctx, got.log, opts)
		}
		s.cfg.Do(func() {
			if ctx.Err() != nil {
				return
			}
			s.opened.res, s.opened.err, s.opened.coarse, s.opened.senses, s.opened.table = res, err, got.coarse, senses, table
			s.again()
			s.announceResults()
			if err == nil && o.id != "" {
				s.keepFound(o.ses, summed(res))
			}
		})
	}()
}

// progress gives what the analysis calls to say how far it is. Where one
// thread does everything, as in a browser, it also lets the screen be drawn.
func (s *Shell) progress(ctx context.Context) func(runs.Stage, float64) {
	last := time.Duration(0)
	return func(_ runs.Stage, part float64) {
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

// summary is what is kept of a ride's results.
type summary struct {
	found  store.Found
	metres float64
	doc    *results.Document // what a season needs
}

func summed(res *runs.Result) summary {
	out := summary{found: foundIn(res), doc: results.From(res).ForSeason()}
	if tr := res.Track; tr != nil && len(tr.S) > 0 {
		out.metres = tr.S[len(tr.S)-1]
	}
	return out
}

// keepFound keeps what was found in a ride.
func (s *Shell) keepFound(ses store.Session, x summary) {
	now, by := s.dev.Clock.Wall(), keptBy(s.screen.C.System)
	s.changeRide(func(l library) error {
		return errors.Join(l.sessions.KeepResults(ses.ID, by, ses.About.Values, x.doc),
			l.sessions.Update(ses.ID, func(a *store.About) { a.Found, a.Metres, a.Measured = x.found, x.metres, now }))
	})
}

// foundIn counts what was found.
func foundIn(res *runs.Result) store.Found {
	var f store.Found
	for _, r := range res.Runs {
		switch {
		case !r.Accepted():
			f.Rejected++
		case r.Kind == runs.Launch:
			f.Launches++
		case r.Kind == runs.RollOn:
			f.RollOns++
		case r.Kind == runs.CoastDown:
			f.CoastDowns++
		}
	}
	for _, l := range res.RoadLoads {
		f.Pairs += l.Pairs
	}
	return f
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
	var u unreadable
	switch {
	case errors.As(err, &u):
		return fmt.Sprintf(t.CannotRead, s.screen.C.Error(u.error))
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
