package effect_test

import (
	"fmt"

	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/sensors/units"
)

// The power to hold 120 km/h, and the share of air drag in it.
func ExampleLoad_Power() {
	l := effect.Load{CdA: measure.Value{X: 0.55, SE: 0.01}, Crr: measure.Value{X: 0.018, SE: 0.0005}, Mass: 290, Density: 1.2, Gravity: 9.81}
	v := 120 * units.KMH
	p := l.Power(v)
	fmt.Printf("%.1f kW, %.0f %% of it air\n", p.X/1000, 100*l.AirShare(v))
	// Output: 13.9 kW, 88 % of it air
}
