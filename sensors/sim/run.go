package sim

import (
	"stillair/sensors"
	"stillair/sensors/replay"
)

// Run rides the scenario. The same scenario and seed give the same ride. The
// error names the act that cannot be ridden, such as a speed that the bike
// does not reach.
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
