package results

import (
	"math"
	"strconv"

	"stillair/runs"
)

// Digits kept.
const (
	timeDecimals = 4 // of times on the log's clock: 0.1 ms
	digits       = 6 // significant, of everything else
	seDigits     = 3 // significant, of standard errors
)

// number returns x rounded to significant digits, nil where it is not finite.
func number(x float64, digits int) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64)
	if err != nil {
		return nil
	}
	return &rounded
}

// moment returns a time on the log's clock, nil where it is not finite.
func moment(t float64) *float64 {
	if math.IsNaN(t) || math.IsInf(t, 0) {
		return nil
	}
	scale := math.Pow10(timeDecimals)
	rounded := math.Round(t*scale) / scale
	return &rounded
}

// value returns both parts of a value; without an X there is no SE.
func value(v runs.Value) (x, se *float64) {
	if x = number(v.X, digits); x == nil {
		return nil, nil
	}
	return x, number(v.SE, seDigits)
}

// pair returns an interval, nil where either end is not finite.
func pair(ci [2]float64) *[2]float64 {
	low, high := number(ci[0], digits), number(ci[1], digits)
	if low == nil || high == nil {
		return nil
	}
	return &[2]float64{*low, *high}
}
