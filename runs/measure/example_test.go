package measure_test

import (
	"fmt"

	"stillair/runs/measure"
)

// Half of a 95 % interval is 1.96 standard errors where these are known, and
// more where they come from few degrees of freedom (Student's t, any table).
func ExampleQuantile() {
	fmt.Printf("%.3f\n", measure.Quantile(0.95, 5))
	v := measure.Value{X: 0.551, SE: 0.008}
	ci := v.Interval(0.95, 5)
	fmt.Printf("%.3f to %.3f\n", ci[0], ci[1])
	// Output:
	// 2.571
	// 0.530 to 0.572
}
