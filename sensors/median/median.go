// Package median finds the middle of numbers without sorting them.
package median

import (
	"math"
	"slices"
)

// Of is the median of x, which is not changed: the middle value, the mean of the two
// in the middle for an even number, NaN for none.
func Of(x []float64) float64 { return In(slices.Clone(x)) }

// In is Of, but may reorder x. It takes time in proportion to the length of x
// (Hoare, Algorithm 65: find, 1961).
func In(x []float64) float64 {
	n := len(x)
	if n == 0 {
		return math.NaN()
	}
	upper := nth(x, n/2)
	if n%2 == 1 {
		return upper
	}
	return (slices.Max(x[:n/2]) + upper) / 2
}

// nth reorders x so that the n-th smallest value is in its place, with none larger
// before it and none smaller after it, and returns it.
func nth(x []float64, k int) float64 {
	for lo, hi := 0, len(x)-1; lo < hi; {
		pivot := middle(x[lo], x[(lo+hi)/2], x[hi])
		i, j := lo, hi
		for i <= j {
			for x[i] < pivot {
				i++
			}
			for x[j] > pivot {
				j--
			}
			if i <= j {
				x[i], x[j] = x[j], x[i]
				i, j = i+1, j-1
			}
		}
		switch {
		case k <= j:
			hi = j
		case k >= i:
			lo = i
		default:
			return x[k]
		}
	}
	return x[k]
}

func middle(a, b, c float64) float64 { return max(min(a, b), min(max(a, b), c)) }
