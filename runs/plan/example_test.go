package plan_test

import (
	"fmt"

	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/plan"
)

// A screen is thought to cost 6 % of drag. How many pairs with and without it
// show that, in a light wind?
func ExampleMake() {
	bike := effect.Load{CdA: measure.Value{X: 0.55, SE: 0.05}, Crr: measure.Value{X: 0.018, SE: 0.003}, Mass: 290, Density: 1.2, Gravity: 9.81}
	p, err := plan.Make(plan.Question{Setups: 2, CdA: 0.06}, plan.DefaultConditions(bike, 1))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Enough, p.Pairs >= 2 && p.Pairs <= 8, p.Chance >= 0.8)
	// Output: true true true
}
