package shell

import (
	"strconv"

	"stillair/app/formats"
	"stillair/app/screens"
	"stillair/app/store"
	"stillair/app/work"
)

// Acts are actions that a rider, a sensor or the clock can trigger, in any order
// and at any time, for stress tests. They run on the drawing goroutine.
func (s *Shell) Acts(ride string) []func() {
	n := 0
	h := &screens.Handing{}
	mass := 290.0
	return []func(){
		s.again, s.follow, s.goBack,
		func() { s.goTo(screens.Place(n % 5)); n++ },
		func() { s.openRide(ride) },
		func() {
			note := strconv.Itoa(n)
			s.update(ride, func(a *store.About) { a.Note = note })
		},
		func() { s.computeWith(store.Values{Mass: &mass}) },
		func() { s.withSession(s.library.sessions.Delete, ride, func() {}) },
		func() { s.bringBack(ride) },
		s.openDeleted,
		func() { s.keepBike(store.Bike{Name: "bike " + strconv.Itoa(n)}, func(error) {}); n++ },
		func() { s.choose("", strconv.Itoa(n)) },
		func() { s.changed(func(c *store.Choices) { c.Units = []string{"metric", "imperial"}[n%2] }) },
		func() { s.changed(func(c *store.Choices) { c.Language = []string{"en", "de"}[n%2] }) },
		s.giving(h, s.fileOf(work.AsRecorded)), s.giving(h, s.fileOf(work.Elsewhere)), s.giving(h, s.inFormat(formats.Report)),
		func() { s.compared.chosen = map[string]bool{ride: true}; s.compareRides() },
		func() { s.setHearing(n%2 == 0) },
		s.startRide, s.startRide, // touched twice
		func() {
			if s.rec != nil {
				s.endRide()
			}
		},
		s.openPlan,
	}
}

// Settled reports whether no job is waiting and nothing is being recorded.
func (s *Shell) Settled() bool {
	s.jobs.mu.Lock()
	defer s.jobs.mu.Unlock()
	return len(s.jobs.list) == 0 && s.rec == nil && !s.starting
}
