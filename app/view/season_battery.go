package view

import (
	"fmt"
	"slices"

	"stillair/app/store"
	"stillair/export/shown"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/sensors/units"
)

// kWh in J.
const kWh = 3.6e6

// perDistance is energy per distance, stored in J/m.
var perDistance = shown.Quantity{Metric: shown.Unit{Name: "Wh/km", SI: 3.6}, Imperial: shown.Unit{Name: "Wh/mi", SI: 3600 / units.Mile}}

// seasonBattery lists the battery energy that each setup of an electric bike needs.
func (c Context) seasonBattery(v *Season, bike string, ask SeasonAsk) {
	t := c.Book.Season
	i := slices.IndexFunc(ask.Garage, func(b store.Bike) bool { return b.Name == bike && b.Battery != nil })
	if i < 0 {
		return
	}
	battery, drive := *ask.Garage[i].Battery, effect.AssumedDrive()
	for _, l := range ask.Loads {
		if l.Bike != bike {
			continue
		}
		e := l.Load.Electric(c.reference(), drive)
		reach := effect.Range(battery*kWh, e)
		v.Battery = append(v.Battery, EffectLine{Name: c.setupName(l.Setup), Reading: c.of(perDistance, e),
			Words: fmt.Sprintf(t.RangeOf, c.of(shown.Journey, reach).Spoken(), c.Number(battery, 1)+" kWh")})
	}
	v.Steady = fmt.Sprintf(t.BatteryTitle, c.SpeedText(c.reference())+" "+c.SpeedUnit())
	percent := measure.Value{X: 100 * drive.X, SE: 100 * drive.SE}
	one := shown.Unit{Name: "%", SI: 1}
	v.Drive = fmt.Sprintf(t.BatteryHint, c.of(shown.Quantity{Metric: one, Imperial: one}, percent).Spoken())
}
