package shell

import (
	"context"
	"slices"
	"time"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/view"
	"stillair/app/work"
	"stillair/export/results"
	"stillair/export/shown"
	"stillair/runs/season"
)

// seasonal is the season that was opened last.
type seasonal struct {
	share  float64 // of the measuring that is done
	doc    *results.SeasonDocument
	left   []view.Left
	loads  []view.SetupLoad
	bike   int
	cancel context.CancelFunc
}

// within is how long after a run its opposite may begin.
const within = time.Hour

// openSeason combines all rides in the background from what is kept of each;
// those of which nothing is kept are measured first.
func (s *Shell) openSeason() {
	if s.seasonal.cancel != nil {
		s.seasonal.cancel()
	}
	ctx, cancel := context.WithCancel(s.ctx)
	s.seasonal = seasonal{cancel: cancel}
	s.push(s.seasonScreen)
	do, pairs, rides := s.work, s.rollOns(), slices.Clone(s.rides)
	show := s.showShare(ctx, screens.PlaceResults, &s.seasonal.share)
	g := gathering{library: s.library, by: keptBy(s.screen.C.System), rides: rides,
		measure: func(i int) (work.Measured, error) {
			ask := &work.Ask{Rides: []work.Ride{{ID: rides[i].ID, Values: rides[i].About.Values}}, RollOns: pairs}
			answer, err := do.Do(ctx, ask, func(part float64) { show((float64(i) + part) / float64(len(rides))) })
			if err != nil {
				return work.Measured{}, err
			}
			m := answer.Rides[0]
			s.cfg.Do(func() { s.keepFound(rides[i], m) })
			return m, nil
		}}
	go func() {
		rides, loads, left := g.gather(ctx)
		doc := results.NewSeason(rides, "", within)
		s.cfg.Do(func() {
			if ctx.Err() != nil {
				return
			}
			s.seasonal.doc, s.seasonal.left, s.seasonal.loads = doc, left, loads
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
	return s.screen.C.Season(view.SeasonAsk{Season: s.seasonal.doc, Bike: s.seasonal.bike, Rides: s.rides, Left: s.seasonal.left, Loads: s.seasonal.loads, Garage: s.garage})
}

func (s *Shell) seasonScreen() *kit.Page {
	if s.seasonal.doc == nil {
		return s.screen.Busy(s.screen.C.Book.Effects.Reading, s.seasonal.share, func() {
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
	library library
	by      string
	rides   []store.Session
	measure func(i int) (work.Measured, error) // a ride of which nothing is kept
}

// gather gives what each ride measured, the latest road load of each setup, and
// the rides that could not be read.
func (g *gathering) gather(ctx context.Context) (rides []season.Ride, loads []view.SetupLoad, left []view.Left) {
	for i, r := range g.rides {
		if ctx.Err() != nil {
			return nil, nil, nil
		}
		doc := g.library.sessions.KeptResults(r.ID, g.by, r.About.Values)
		if doc == nil {
			m, err := g.measure(i)
			if err != nil {
				left = append(left, view.Left{Ride: r, Why: err})
				continue
			}
			doc = m.Season
		}
		ride := doc.SeasonRideOf(r.ID)
		ride.Started = r.About.Started
		rides = append(rides, ride)
		for _, l := range doc.RoadLoad {
			if load, ok := l.Load(); ok && !slices.ContainsFunc(loads, func(x view.SetupLoad) bool { return x.Bike == doc.Bike && x.Setup == l.Setup }) {
				loads = append(loads, view.SetupLoad{Bike: doc.Bike, Setup: l.Setup, Load: load})
			}
		}
	}
	return rides, loads, left
}
