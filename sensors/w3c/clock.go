package w3c

import (
	"math"
	"slices"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// mostSpeed in m/s, above which a fix is impossible, as in package repair.
const mostSpeed = 150.0

// place sets the time of arrival of each position on the clock of the motion
// events, by the first applicable way of the package comment.
func (s *stream) place() error {
	way, said := s.way()
	if way == nil {
		return s.fail(0, finding.New("w3c.no_arrival"), finding.New("w3c.stamp_or_order"))
	}
	lost := 0
	for _, p := range s.positions {
		f := p.fix
		f.T = way(p) / 1000
		if math.IsNaN(f.T) || f.Speed > mostSpeed {
			lost++
			continue
		}
		s.log.Fixes = append(s.log.Fixes, f)
	}
	if said != "" {
		s.log.Notes = append(s.log.Notes, sensors.Note{File: s.name, Count: len(s.log.Fixes), What: finding.New(said)})
	}
	if lost > 0 {
		s.log.Notes = append(s.log.Notes, sensors.Note{File: s.name, Count: lost,
			What: finding.New("w3c.position_left_out", finding.Speed("most", mostSpeed))})
	}
	if len(s.log.Fixes) == 0 {
		return s.fail(0, finding.New("w3c.no_arrivals"), finding.New("w3c.stamp"))
	}
	s.positions = nil
	return nil
}

// way returns the function for a position's arrival, in ms on the motion
// events' clock, and a note about it; nil if there is none.
func (s *stream) way() (func(arrived) float64, finding.Code) {
	first, last := 1000*s.log.Motion[0].T, 1000*s.log.Motion[len(s.log.Motion)-1].T
	on := func(ms float64) bool { return ms > first-60_000 && ms < last+60_000 }
	epochMotion := isEpoch(first)
	switch {
	case s.most(func(p arrived) bool { return on(p.own) }):
		return func(p arrived) float64 { return p.own }, ""
	case s.inOrderOfArrival():
		return func(p arrived) float64 { return p.behind }, ""
	case epochMotion && s.most(func(p arrived) bool { return on(p.epoch) }):
		return func(p arrived) float64 { return p.epoch },
			"w3c.arrival_is_acquisition"
	case !math.IsNaN(s.timeOrigin) && s.most(func(p arrived) bool { return on(p.epoch - s.timeOrigin) }):
		return func(p arrived) float64 { return p.epoch - s.timeOrigin },
			"w3c.arrival_by_origin"
	}
	return nil, ""
}

func (s *stream) most(ok func(arrived) bool) bool {
	n := 0
	for _, p := range s.positions {
		if ok(p) {
			n++
		}
	}
	return 2*n > len(s.positions)
}

// inOrderOfArrival reports whether the lines are in order of arrival: then the
// difference between the motion event before a position and the position's own
// timestamp is constant, within the few seconds that a receiver may take.
func (s *stream) inOrderOfArrival() bool {
	var diffs []float64
	for _, p := range s.positions {
		if d := p.behind - p.epoch; !math.IsNaN(d) {
			diffs = append(diffs, d)
		}
	}
	if 2*len(diffs) <= len(s.positions) {
		return false
	}
	slices.Sort(diffs)
	n := len(diffs) - 1
	return diffs[n*9/10]-diffs[n/10] < 3000
}
