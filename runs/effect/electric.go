package effect

import (
	"math"

	"stillair/runs/measure"
)

// AssumedDrive is the efficiency of an electric motorcycle from battery to road
// at a steady speed, through inverter, motor and chain or belt: 0.85 ± 0.05
// (common practice).
func AssumedDrive() measure.Value { return measure.Value{X: 0.85, SE: 0.05} }

// Electric is the energy from the battery at the steady speed v, J per metre,
// for a given efficiency of the drive. Lights and other consumers are not
// included.
func (l Load) Electric(v float64, drive measure.Value) measure.Value {
	f := l.Force(v)
	x := f.X / drive.X
	return measure.Value{X: x, SE: math.Abs(x) * math.Hypot(f.SE/f.X, drive.SE/drive.X)}
}
