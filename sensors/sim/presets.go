package sim

import "stillair/sensors/units"

// Preset is a scenario that can be asked for by name.
type Preset struct {
	Name     string
	About    string              // what the ride holds, in one line
	Scenario func(Bike) Scenario // the ride on a bike
}

// Presets are the rides that are worth having by name, the demo first.
func Presets() []Preset {
	const from, to = 110 * units.KMH, 30 * units.KMH
	return []Preset{
		{"demo", "launches, roll-ons, pulls, and coast-downs with two setups", DemoScenario},
		{"short", "two launches and one pair of coast-downs, in a few minutes", riding(append(Launches(2, 115*units.KMH, 0), CoastPairs(1, from, to)...))},
		{"coast-downs", "five pairs from 110 to 30 km/h, out and back", riding(CoastPairs(5, from, to))},
		{"spoilt", "five pairs, three of them with a brake, a truck and a gear left in", riding(PerturbedCoast(5, from, to))},
		{"launches", "six launches to 130 km/h and a quarter mile", riding(Launches(6, 130*units.KMH, 410))},
		{"roll-ons", "six roll-ons from 60 to 120 km/h in top gear", riding(RollOns(6, 0, 60*units.KMH, 120*units.KMH))},
		{"pulls", "three pulls each way in the second highest gear", riding(Pulls(3, 0))},
		{"town", "forty minutes of town, with nothing in it to measure", riding([]Act{Town{Minutes: 40}})},
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
