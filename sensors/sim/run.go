package sim

import (
	"stillair/sensors"
	"stillair/sensors/replay"
)

// Run rides the scenario. The same scenario and seed give the same ride. The
// error names an act that cannot be ridden, for instance because the bike does
// not reach the speed.
func Run(sc Scenario, seed uint64) (*Ride, error) {
	p, err := newPlayer(sc, seed)
	if err != nil {
		return nil, err
	}
	if err := p.playAll(); err != nil {
		return nil, err
	}
	return p.finish(), nil
}

// Source returns the ride's log as a source that delivers at once, in order
// of time.
func (r *Ride) Source() sensors.Source { return replay.New(r.Log) }
