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
	"stillair/app/work"
	"stillair/runs"
)

// comparing is what the rider chose to compare, and the result.
type comparing struct {
	speed   int             // index of the speed at which differences are stated
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
	return s.screen.Compare(s.screen.C.Decide(res, fmt.Sprintf(s.screen.C.Book.Effects.Within, title), s.compareAsk(s.bikeOf(res))), on)
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

// compareRides measures the chosen rides in the background, one after another,
// and compares them.
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
		return s.screen.Busy(s.screen.C.Book.Effects.Reading, s.compared.share, func() {
			cancel()
			s.back()
		})
	})
	do, ask, tell := s.work, &work.Ask{Across: true, RollOns: s.rollOns()}, s.showShare(ctx, screens.PlaceCompare, &s.compared.share)
	for _, r := range todo {
		ask.Rides = append(ask.Rides, s.asked(r))
	}
	go func() {
		answer, err := do.Do(ctx, ask, tell)
		s.cfg.Do(func() {
			if ctx.Err() == nil {
				s.comparedRides(ask.Rides, answer, err)
			}
		})
	}()
}

func (s *Shell) comparedRides(rides []work.Ride, answer *work.Answer, err error) {
	c, p := &s.compared, screens.PlaceCompare
	if err != nil {
		c.trouble = fmt.Sprintf(s.screen.C.Book.Effects.CannotDo, s.screen.C.Error(err))
		s.cut(p, 2)
	} else {
		c.rides, c.across = nil, answer.Across
		for i, m := range answer.Rides {
			c.rides = append(c.rides, runs.Named{Name: rides[i].Title, Result: m.Result})
		}
		s.home(p)
	}
	if s.place == p {
		s.show()
	}
}

// showShare returns the function that the measuring of several rides calls to
// show its progress and to let a browser draw it. The progress is written to
// shown.
func (s *Shell) showShare(ctx context.Context, place screens.Place, shown *float64) func(share float64) {
	return func(share float64) {
		s.cfg.Do(func() {
			if ctx.Err() == nil && s.rec == nil && s.place == place && share-*shown > 0.02 {
				*shown = share
				s.again()
			}
		})
		<-s.dev.Clock.After(time.Millisecond)
	}
}
