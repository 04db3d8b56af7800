package sourcetest

import (
	"math"
	"slices"
)

func finite(v ...float64) bool { return countNaN(v...) == 0 && !anyInf(v...) }

func anyInf(v ...float64) bool {
	return slices.ContainsFunc(v, func(x float64) bool { return math.IsInf(x, 0) })
}

func countNaN(v ...float64) (n int) {
	for _, x := range v {
		if math.IsNaN(x) {
			n++
		}
	}
	return n
}
