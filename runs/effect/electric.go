package effect

import (
	"math"

	"stillair/runs/measure"
)

// AssumedDrive is the share of a battery's energy that an electric motorcycle
// brings to the road at a steady speed, through inverter, motor and chain or
// belt: 0.85 ± 0.05 (common practice).
func AssumedDrive() measure.Value { return measure.Value{X: 0.85, SE: 0.05} }

// Electric is the energy out of the battery at the steady speed v, J per metre,
// where the drive brings a share of it to the road. Lights and the like are not
// in it.
func (l Load) Electric(v float64, drive measure.Value) measure.Value {
	f := l.Force(v)
	x := f.X / drive.X
	return measure.Value{X: x, SE: math.Abs(x) * math.Hypot(f.SE/f.X, drive.SE/drive.X)}
}
