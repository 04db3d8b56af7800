package shown

import (
	"fmt"
	"math"

	"stillair/sensors/units"
)

// System is the units that a person wants to read.
type System string

// The systems.
const (
	Metric   System = "metric"
	Imperial System = "imperial"
	Both     System = "both"
)

// ParseSystem returns the system of that name.
func ParseSystem(name string) (System, error) {
	switch s := System(name); s {
	case Metric, Imperial, Both:
		return s, nil
	}
	return "", fmt.Errorf("units %q are not known; use metric, imperial or both", name)
}

// Unit is how one quantity is shown: a name and its size in SI.
type Unit struct {
	Name string
	SI   float64
}

// Quantity is a physical quantity with its unit in either system.
type Quantity struct{ Metric, Imperial Unit }

// The quantities that are shown.
var (
	Speed       = Quantity{Unit{"km/h", units.KMH}, Unit{"mph", units.MPH}}
	Wind        = Quantity{Unit{"m/s", 1}, Unit{"mph", units.MPH}}
	Distance    = Quantity{Unit{"m", 1}, Unit{"ft", units.Foot}}
	Journey     = Quantity{Unit{"km", 1000}, Unit{"mi", units.Mile}}
	Force       = Quantity{Unit{"N", 1}, Unit{"lbf", units.PoundForce}}
	Power       = Quantity{Unit{"kW", units.Kilowatt}, Unit{"hp", units.Horsepower}}
	Mass        = Quantity{Unit{"kg", 1}, Unit{"lb", units.Pound}}
	Area        = Quantity{Unit{"m²", 1}, Unit{"ft²", units.Foot * units.Foot}}
	Time        = Quantity{Unit{"s", 1}, Unit{"s", 1}}
	Accel       = Quantity{Unit{"m/s²", 1}, Unit{"ft/s²", units.Foot}}
	Pressure    = Quantity{Unit{"hPa", units.Hectopascal}, Unit{"inHg", units.MercuryInch}}
	Tyre        = Quantity{Unit{"bar", units.Bar}, Unit{"psi", units.PSI}}
	EngineSpeed = Quantity{Unit{"rpm", 1}, Unit{"rpm", 1}}
	Plain       = Quantity{Unit{"", 1}, Unit{"", 1}}
)

// First returns the unit that the system puts first.
func (s System) First(q Quantity) Unit {
	if s == Imperial {
		return q.Imperial
	}
	return q.Metric
}

// in calls show for each unit that the system shows and joins the answers.
func (s System) in(q Quantity, show func(Unit) string) string {
	first := show(s.First(q))
	if s != Both || q.Metric == q.Imperial {
		return first
	}
	return first + " (" + show(q.Imperial) + ")"
}

// Number returns x, in SI, with the decimals in each unit.
func (s System) Number(q Quantity, x float64, decimals int) string {
	if !finite(x) {
		return "–"
	}
	return s.in(q, func(u Unit) string { return fmt.Sprintf("%s %s", Fixed(x/u.SI, decimals), u.Name) })
}

// PlusMinus returns x ± half, both in SI, in each unit.
func (s System) PlusMinus(q Quantity, x, half float64) string {
	if !finite(x) {
		return "–"
	}
	return s.in(q, func(u Unit) string { return PlusMinus(x/u.SI, half/u.SI) + " " + u.Name })
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
