package effect

import (
	"math"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// Burn is fuel consumption that the rider measured with a known setup.
type Burn struct {
	Speed    float64       // steady speed of the measurement, m/s
	PerMetre measure.Value // m³ of fuel per metre: 5 l/100 km is 5e-8
}

// Willans is the elasticity of fuel to road power on the Willans line: a change
// of 1 % in power is a change of Share·1 % in fuel.
type Willans struct {
	Share    measure.Value
	Measured bool // false: the share is assumed, for engines in general
}

// AssumedWillans is the share taken when consumption is known at fewer than
// two speeds: 0.8 ± 0.1, common practice for spark-ignition engines at part
// load, where a fifth or so of the fuel turns the engine itself.
func AssumedWillans() Willans { return Willans{Share: measure.Value{X: 0.8, SE: 0.1}} }

// FitWillans finds the share at a's speed from consumption at two sufficiently
// different speeds: fuel per second is linear in road power.
func FitWillans(l Load, a, b Burn) (Willans, error) {
	pa, pb := l.Power(a.Speed).X, l.Power(b.Speed).X
	if math.Abs(pb-pa) < 0.25*pa {
		return Willans{}, finding.Fail("worth.speeds_alike")
	}
	fa, fb := a.PerMetre.Times(a.Speed), b.PerMetre.Times(b.Speed)
	k := pa / (pb - pa)
	share := k * (fb.X/fa.X - 1)
	se := math.Abs(k) * fb.X / fa.X * math.Hypot(fa.SE/fa.X, fb.SE/fb.X)
	if share <= 0 || share > 1.5 {
		return Willans{}, finding.Fail("worth.bad_burn", finding.Num("share", share))
	}
	return Willans{Share: measure.Value{X: share, SE: se}, Measured: true}, nil
}

// Fuel is consumption at the speed of the measurement with the change made,
// m³ per metre, and how much that is more than before.
type Fuel struct {
	PerMetre measure.Value
	More     measure.Value
}

// Fuel applies the change to the consumption b, measured with the setup whose
// load is l.
func (c Change) Fuel(l Load, b Burn, w Willans) Fuel {
	r := c.Relative(l, b.Speed)
	f := b.PerMetre
	more := measure.Value{
		X:  f.X * w.Share.X * r.X,
		SE: norm3(f.SE*w.Share.X*r.X, f.X*w.Share.SE*r.X, f.X*w.Share.X*r.SE),
	}
	after := measure.Value{
		X:  f.X + more.X,
		SE: norm3(f.SE*(1+w.Share.X*r.X), f.X*w.Share.SE*r.X, f.X*w.Share.X*r.SE),
	}
	return Fuel{PerMetre: after, More: more}
}

// Marginal efficiency from petrol to the tyre. The Willans line of a
// spark-ignition engine rises by its indicated efficiency, 0.35 to 0.40
// (Heywood, Internal Combustion Engine Fundamentals, on part load), and gearbox
// and chain pass on nine tenths (common practice): 0.33 ± 0.04. A litre of
// petrol gives 32 MJ (44 MJ/kg at 0.73 kg/l, the same book, appendix D).
const (
	tyreEfficiency, tyreEfficiencySE = 0.33, 0.04
	petrolHeat                       = 32e9 // J/m³
)

// AboutFuel is how much more petrol the change takes at the steady speed v in
// m/s, m³ per metre, where the bike's own consumption is not known: a rough
// figure for engines in general.
func (c Change) AboutFuel(l Load, v float64) measure.Value {
	more := c.Power(l, v).Times(1 / (v * tyreEfficiency * petrolHeat))
	more.SE = math.Hypot(more.SE, more.X*tyreEfficiencySE/tyreEfficiency)
	return more
}

// Range is how far a tank of the given volume in m³ goes, in m.
func Range(tank float64, perMetre measure.Value) measure.Value {
	return measure.Value{X: tank / perMetre.X, SE: tank * perMetre.SE / (perMetre.X * perMetre.X)}
}

func norm3(a, b, c float64) float64 { return math.Hypot(math.Hypot(a, b), c) }
