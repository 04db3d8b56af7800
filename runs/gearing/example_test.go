package gearing_test

import (
	"fmt"

	"stillair/runs/gearing"
)

// The outer diameter of a rear tyre: 17 inches of rim and two sidewalls of 55 %
// of 180 mm.
func ExampleParseTyre() {
	t, err := gearing.ParseTyre("180/55 R17")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4f m\n", t.Diameter())
	// Output: 0.6298 m
}
