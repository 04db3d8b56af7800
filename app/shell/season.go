package shell

import (
	"context"
	"slices"
	"time"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/view"
	"stillair/export/results"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/season"
)

// seasonal is the season that was opened last.
type seasonal struct {
	share  float64 // of the measuring that is done
	doc    *results.SeasonDocument
	left   []view.Left
	bike   int
	cancel context.CancelFunc
}

// within is how long after a run its opposite may begin.
const within = time.Hour

// openSeason puts all rides together aside: from what is kept of each, and those
// of which nothing is kept are measured first.
func (s *Shell) openSeason() {
	if s.seasonal.cancel != nil {
		s.seasonal.cancel()
	}
	ctx, cancel := context.WithCancel(s.ctx)
	s.seasonal = seasonal{cancel: cancel}
	s.push(s.seasonScreen)
	opts, rides := s.options(nil), slices.Clone(s.rides)
	g := gathering{library: s.library, by: keptBy(s.screen.C.System), rides: rides,
		options: func(i int) runs.Options {
			opts := opts
			opts.Progress = func(_ runs.Stage, part float64) {
				s.showShare(ctx, screens.PlaceResults, &s.seasonal.share, (float64(i)+part)/float64(len(rides)))
			}
			return opts
		},
		measured: func(r store.Session, x summary) {
			s.cfg.Do(func() { s.keepFound(r, x) })
		}}
	go func() {
		rides, left := g.gather(ctx)
		doc := results.NewSeason(rides, "", within)
		s.cfg.Do(func() {
			if ctx.Err() != nil {
				return
			}
			s.seasonal.doc, s.seasonal.left = doc, left
			s.again()
			if s.dev.Announce != nil && s.rec == nil {
				s.dev.Announce(s.season().Lead.Spoken())
			}
		})
	}()
}

// keptBy names what results depend on beside the ride and its values: the
// program, and the roll-ons that are asked for.
func keptBy(system shown.System) string { return Program + ", " + string(system) }

func (s *Shell) season() view.Season {
	return s.screen.C.Season(view.SeasonAsk{Season: s.seasonal.doc, Bike: s.seasonal.bike, Rides: s.rides, Left: s.seasonal.left})
}

func (s *Shell) seasonScreen() *kit.Page {
	if s.seasonal.doc == nil {
		return s.screen.Busy(s.screen.C.Book.Worth.Reading, s.seasonal.share, func() {
			s.seasonal.cancel()
			s.back()
		})
	}
	return s.screen.Season(s.season(), screens.SeasonActions{Back: s.goBack, Open: s.openRide,
		Bike: func(i int) {
			s.seasonal.bike = i
			s.again()
		}})
}

// gathering is what putting rides together takes; it knows nothing of the Shell.
type gathering struct {
	library  library
	by       string
	rides    []store.Session
	options  func(i int) runs.Options
	measured func(store.Session, summary) // of which nothing was kept
}

// gather gives what each ride measured, and the rides that could not be read.
func (g *gathering) gather(ctx context.Context) (rides []season.Ride, left []view.Left) {
	for i, r := range g.rides {
		if ctx.Err() != nil {
			return nil, nil
		}
		doc := g.library.sessions.KeptResults(r.ID, g.by, r.About.Values)
		if doc == nil {
			var err error
			if doc, err = g.measure(ctx, i); err != nil {
				left = append(left, view.Left{Ride: r, Why: err})
				continue
			}
		}
		ride := doc.SeasonRideOf(r.ID)
		ride.Started = r.About.Started
		rides = append(rides, ride)
	}
	return rides, left
}

func (g *gathering) measure(ctx context.Context, i int) (*results.Document, error) {
	r := g.rides[i]
	log, err := g.library.log(r)
	if err != nil {
		return nil, err
	}
	res, err := runs.Analyse(ctx, log, g.options(i))
	if err != nil {
		return nil, err
	}
	x := summed(res)
	g.measured(r, x)
	return x.doc, nil
}
