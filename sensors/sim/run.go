package sim

import (
	"errors"

	"stillair/sensors"
)

// errNoEngine is returned until the motion is there.
var errNoEngine = errors.New("sim: the equations of motion are not in yet")

type player struct{}

// Run rides the scenario. The same scenario and seed give the same ride. The
// error names the act that cannot be ridden, such as a speed that the bike
// does not reach.
func Run(sc Scenario, seed uint64) (*Ride, error) { return nil, errNoEngine }

// Source returns the ride's log as a source that delivers at once, in order
// of time.
func (r *Ride) Source() sensors.Source { return nil }
