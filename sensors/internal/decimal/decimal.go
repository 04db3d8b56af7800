// Package decimal parses the numbers of tables: fast, exact, and with the words
// that programs write for missing values.
package decimal

import (
	"bytes"
	"math"
	"strconv"
)

// Cell is the kind of content of a cell.
type Cell int

// The kinds of cell.
const (
	Filled Cell = iota
	Empty       // nothing, or a word for nothing
	Broken      // something that is not a finite number
)

// exactPow10 are the powers of ten that a float64 holds exactly.
var exactPow10 = [...]float64{1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11,
	1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22}

// Read reads a cell; it returns NaN for anything but a finite number.
//
// Plain decimals of up to 15 digits are read by hand, exactly: digits and
// power of ten are both whole in a float64, so their one division is correctly
// rounded (W. D. Clinger, How to read floating point numbers accurately, 1990).
// All others go to strconv.
func Read(b []byte) (float64, Cell) {
	b = bytes.TrimSpace(b)
	if len(b) == 0 {
		return math.NaN(), Empty
	}
	if v, ok := short(b); ok {
		return v, Filled
	}
	v, err := strconv.ParseFloat(string(b), 64)
	switch {
	case err != nil && isNothing(b):
		return math.NaN(), Empty
	case err != nil || math.IsInf(v, 0):
		return math.NaN(), Broken
	case math.IsNaN(v):
		return math.NaN(), Empty
	}
	return v, Filled
}

func short(b []byte) (float64, bool) {
	const mostDigits = 15 // 10^15 < 2^53
	digits := b
	if b[0] == '-' {
		digits = b[1:]
	}
	if len(digits) == 0 || len(digits) > mostDigits+1 {
		return 0, false
	}
	var mantissa uint64
	point := -1
	for i, c := range digits {
		switch {
		case c >= '0' && c <= '9':
			mantissa = mantissa*10 + uint64(c-'0')
		case c == '.' && point < 0 && len(digits) > 1:
			point = i
		default:
			return 0, false
		}
	}
	if mantissa >= 1<<53 {
		return 0, false
	}
	v := float64(mantissa)
	if point >= 0 {
		v /= exactPow10[len(digits)-1-point]
	}
	if b[0] == '-' {
		v = -v
	}
	return v, true
}

// isNothing reports whether a cell contains a word for a missing value.
func isNothing(b []byte) bool {
	switch string(bytes.ToLower(b)) {
	case "null", "na", "n/a", "none", "-", "nan(ind)", "-nan":
		return true
	}
	return false
}
