package effect

import (
	"stillair/runs/measure"
	"stillair/runs/usual"
)

// Usual is the road load of an average motorcycle of that mass, kg, in air of
// that density, kg/m³, with its standard uncertainty as a guess for any other.
func Usual(mass, density, gravity float64) Load {
	return Load{CdA: measure.Value{X: usual.CdA, SE: usual.CdASD}, Crr: measure.Value{X: usual.Crr, SE: usual.CrrSD},
		K: usual.Growth, Mass: mass, Density: density, Gravity: gravity}
}
