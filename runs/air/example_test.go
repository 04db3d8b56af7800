package air_test

import (
	"fmt"

	"stillair/runs/air"
	"stillair/runs/measure"
	"stillair/sensors/units"
)

// Air of 40 % humidity at 10 °C and 730 mmHg, an example value quoted for
// CIPM-2007: 1.19569 kg/m³.
func ExampleMoistDensity() {
	fmt.Printf("%.4f kg/m³\n", air.MoistDensity(10, 730*units.MercuryMM, 0.4))
	// Output: 1.1957 kg/m³
}

// The uncertainty of the density follows from those of the air's values.
func ExampleState_Density() {
	s := air.State{Temperature: measure.Value{X: 18, SE: 2}, Pressure: measure.Value{X: 100900, SE: 100}, Humidity: measure.Value{X: 0.6, SE: 0.2}}
	d := s.Density()
	fmt.Printf("%.3f ± %.3f kg/m³\n", d.X, d.SE)
	// Output: 1.202 ± 0.009 kg/m³
}
