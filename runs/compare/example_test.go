package compare_test

import (
	"fmt"

	"stillair/runs/compare"
	"stillair/runs/measure"
)

// Three pulls with each of two exhausts: mean power in W. Does the second give
// more, where two per cent matter?
func ExampleJudge() {
	before := []measure.Value{{X: 50100}, {X: 49900}, {X: 50000}}
	after := []measure.Value{{X: 52100}, {X: 52000}, {X: 51900}}
	d, err := compare.Repeated(before, after)
	if err != nil {
		fmt.Println(err)
		return
	}
	v := compare.Judge([]compare.Difference{d}, 0.02)[0]
	fmt.Printf("%s, %.1f %% (%.1f to %.1f)\n", v.Finding, v.Percent, v.CIPercent[0], v.CIPercent[1])
	// Output: compare.differs, 4.0 % (3.5 to 4.5)
}
