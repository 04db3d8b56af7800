package sim

import (
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// Preset is a scenario with a name.
type Preset struct {
	Name     string
	About    finding.Code        // contents of the ride, in one line
	Scenario func(Bike) Scenario // the ride on a bike
}

// Presets are the named rides, the demo first.
func Presets() []Preset {
	const from, to = 110 * units.KMH, 30 * units.KMH
	return []Preset{
		{"demo", "sim.demo", DemoScenario},
		{"short", "sim.short", riding(append(Launches(2, 115*units.KMH, 0), CoastPairs(1, from, to)...))},
		{"coast-downs", "sim.coastdowns", riding(CoastPairs(5, from, to))},
		{"spoilt", "sim.spoilt", riding(PerturbedCoast(5, from, to))},
		{"launches", "sim.launches", riding(Launches(6, 130*units.KMH, 410))},
		{"roll-ons", "sim.rollons", riding(RollOns(6, 0, 60*units.KMH, 120*units.KMH))},
		{"pulls", "sim.pulls", riding(Pulls(3, 0))},
		{"passes", "sim.passes", riding(Passes(2, 5000))},
		{"town", "sim.town", riding([]Act{Town{Minutes: 40}})},
	}
}

// riding is the default scenario with a plan that ends at rest.
func riding(plan []Act) func(Bike) Scenario {
	return func(b Bike) Scenario {
		sc := DefaultScenario(b)
		sc.Plan = append(plan[:len(plan):len(plan)], Brake{}, Stand{Seconds: 15})
		return sc
	}
}
