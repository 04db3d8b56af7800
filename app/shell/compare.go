package shell

import (
	"context"
	"fmt"
	"math"
	"time"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/view"
	"stillair/runs"
	"stillair/sensors"
)

// comparing is what the rider chose to compare, and what came of it.
type comparing struct {
	speed   int             // place of the speed at which differences are told
	chosen  map[string]bool // IDs of rides
	rides   []runs.Named    // the chosen ones, measured
	across  []runs.Comparison
	trouble string
	share   float64 // of the measuring that is done
	cancel  context.CancelFunc
}

// compare shows how setups differ: those of the one ride that was chosen or is
// open, and those of several rides.
func (s *Shell) compare() *kit.Page {
	on := screens.CompareActions{Guide: s.openGuide, Plan: s.openPlan, Rides: s.pickRides,
		Speed: func(i int) {
			s.compared.speed = i
			s.again()
		}}
	if c := s.compared; len(c.across) > 0 {
		return s.screen.Compare(s.screen.C.DecideAcross(c.rides, c.across, s.compareAsk(c.rides[0].Result.Ride.Bike)), on)
	}
	res, title := s.opened.res, s.screen.C.RideRow(s.opened.ses).Title
	if len(s.compared.rides) == 1 {
		res, title = s.compared.rides[0].Result, s.compared.rides[0].Name
	}
	return s.screen.Compare(s.screen.C.Decide(res, fmt.Sprintf(s.screen.C.Book.Worth.Within, title), s.compareAsk(s.bikeOf(res))), on)
}

// bikeOf names the bike of a result, or else that of the open ride.
func (s *Shell) bikeOf(res *runs.Result) string {
	if res != nil && res.Ride.Bike != "" {
		return res.Ride.Bike
	}
	return s.opened.ses.About.Bike
}

// compareOpened shows how the setups of the open ride differ.
func (s *Shell) compareOpened() {
	s.compared.rides, s.compared.across = nil, nil
	s.home(screens.PlaceCompare)
	s.goTo(screens.PlaceCompare)
}

// compareAsk takes consumption and highest engine speed from the bike of that
// name.
func (s *Shell) compareAsk(bike string) view.CompareAsk {
	ask := view.CompareAsk{Speed: s.compared.speed, LimitRPM: math.Inf(1)}
	for _, b := range s.garage {
		if b.Name != bike {
			continue
		}
		ask.Fuel = b.Fuel
		if b.LimitRPM != nil {
			ask.LimitRPM = *b.LimitRPM
		}
	}
	return ask
}

// pickRides lets the rider choose the rides to compare.
func (s *Shell) pickRides() {
	if s.compared.chosen == nil {
		s.compared.chosen = map[string]bool{}
	}
	s.compared.trouble = ""
	s.push(func() *kit.Page {
		var measured []store.Session
		for _, r := range s.rides {
			if !r.About.Measured.IsZero() {
				measured = append(measured, r)
			}
		}
		c := &s.compared
		return s.screen.PickRides(s.screen.C.Rides(measured), c.chosen, c.trouble, func(id string) {
			c.chosen[id] = !c.chosen[id]
			s.again()
		}, s.goBack, s.compareRides)
	})
}

// compareRides has the chosen rides measured aside, one after another, and
// compares them.
func (s *Shell) compareRides() {
	var todo []store.Session
	for _, r := range s.rides {
		if s.compared.chosen[r.ID] {
			todo = append(todo, r)
		}
	}
	c := &s.compared
	if c.rides, c.across = nil, nil; len(todo) == 0 {
		s.back()
		return
	}
	if c.cancel != nil {
		c.cancel()
	}
	ctx, cancel := context.WithCancel(s.ctx)
	c.share, c.cancel = 0, cancel
	s.push(func() *kit.Page {
		return s.screen.Busy(s.screen.C.Book.Worth.Reading, s.compared.share, func() {
			cancel()
			s.back()
		})
	})
	all := s.measuring(ctx, todo)
	go func() {
		named, err := measureAll(ctx, all)
		var across []runs.Comparison
		if err == nil && len(named) > 1 {
			across, err = runs.Across(named, runs.Asked{})
		}
		letGo(named)
		s.cfg.Do(func() {
			if ctx.Err() == nil {
				s.comparedRides(named, across, err)
			}
		})
	}()
}

func (s *Shell) comparedRides(named []runs.Named, across []runs.Comparison, err error) {
	c, p := &s.compared, screens.PlaceCompare
	if err != nil {
		c.trouble = fmt.Sprintf(s.screen.C.Book.Worth.CannotDo, s.screen.C.Error(err))
		s.cut(p, 2)
	} else {
		c.rides, c.across = named, across
		s.home(p)
	}
	if s.place == p {
		s.show()
	}
}

// letGo keeps of measured rides what the screen shows, since a phone has little
// memory.
func letGo(named []runs.Named) {
	for i := range named {
		slim := *named[i].Result
		slim.Track, slim.Estimate, slim.Runs = nil, nil, nil
		named[i].Result = &slim
	}
}

// measuring is a ride that is to be measured.
type measuring struct {
	title string
	opts  runs.Options
	read  func() (*sensors.Log, error)
}

// measuring says what measureAll needs of rides.
func (s *Shell) measuring(ctx context.Context, todo []store.Session) []measuring {
	l := s.library
	var out []measuring
	for i, r := range todo {
		out = append(out, measuring{title: s.screen.C.RideRow(r).Title, read: func() (*sensors.Log, error) { return l.log(r) },
			opts: s.options(func(_ runs.Stage, part float64) {
				s.showShare(ctx, screens.PlaceCompare, &s.compared.share, (float64(i)+part)/float64(len(todo)))
			})})
	}
	return out
}

// measureAll measures rides one after another.
func measureAll(ctx context.Context, todo []measuring) ([]runs.Named, error) {
	var out []runs.Named
	for _, m := range todo {
		log, err := m.read()
		if err != nil {
			return nil, err
		}
		res, err := runs.Analyse(ctx, log, m.opts)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", m.title, err)
		}
		out = append(out, runs.Named{Name: m.title, Result: res})
	}
	return out, nil
}

// showShare shows how far the measuring of several rides is that a place waits
// for, and lets a browser draw it. So far is written to shown.
func (s *Shell) showShare(ctx context.Context, place screens.Place, shown *float64, share float64) {
	s.cfg.Do(func() {
		if ctx.Err() == nil && s.rec == nil && s.place == place && share-*shown > 0.02 {
			*shown = share
			s.again()
		}
	})
	<-s.dev.Clock.After(time.Millisecond)
}
