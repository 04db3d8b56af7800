package shown_test

import (
	"fmt"

	"stillair/export/shown"
)

// A figure with half of its 95 % interval, to the digits that this supports.
func ExamplePlusMinus() {
	fmt.Println(shown.PlusMinus(0.5512, 0.0171))
	fmt.Println(shown.Imperial.PlusMinus(shown.Power, 74570, 745.7))
	// Output:
	// 0.551 ± 0.017
	// 100.0 ± 1.0 hp
}
