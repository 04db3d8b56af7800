// Package jsontext validates JSON texts of unknown origin before they are
// parsed: complete, not nested too deeply. It also finds line numbers and
// shifts decimal points, which keeps a change of unit by a power of ten exact.
package jsontext

import (
	"bytes"
	"strconv"
	"strings"

	"github.com/tidwall/gjson"

	"stillair/sensors/finding"
)

// deepest nesting that any of our formats could hold; a parser that works by
// recursion is safe below it.
const deepest = 32

// Check returns a finding if b is not one whole JSON text, else nil.
func Check(b []byte) *finding.Error {
	depth, inString := 0, false
	for i := 0; i < len(b); i++ {
		switch c := b[i]; {
		case inString && c == '\\':
			i++
		case c == '"':
			inString = !inString
		case inString:
		case c == '{' || c == '[':
			if depth++; depth > deepest {
				return finding.Fail("json.deep", finding.Count("most", deepest))
			}
		case c == '}' || c == ']':
			depth--
		}
	}
	if !gjson.ValidBytes(b) {
		return finding.Fail("json.not_whole")
	}
	return nil
}

// Line returns the 1-based line of an offset in b.
func Line(b []byte, offset int) int {
	return 1 + bytes.Count(b[:min(max(offset, 0), len(b))], []byte{'\n'})
}

// Shift returns the number that a JSON number literal stands for times
// 10^places, correctly rounded, which a multiplication would not always be.
func Shift(literal string, places int) float64 {
	mantissa, exponent, has := strings.Cut(strings.ToLower(literal), "e")
	e := 0
	if has {
		var err error
		if e, err = strconv.Atoi(strings.TrimPrefix(exponent, "+")); err != nil {
			e = 0
			mantissa = literal // an exponent of absurd size; left to ParseFloat
			places = 0
		}
	}
	v, err := strconv.ParseFloat(mantissa+"e"+strconv.Itoa(e+places), 64)
	if err != nil {
		v, _ = strconv.ParseFloat(literal, 64)
	}
	return v
}

// Shifted returns the decimal literal of v·10^places, so that Shift by −places
// gives v back.
func Shifted(v float64, places int) string {
	mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(v, 'e', -1, 64), "e")
	e, _ := strconv.Atoi(exponent) // FormatFloat writes it
	return decimal(mantissa, e+places)
}

// decimal writes mantissa·10^e, without an exponent if that is short.
func decimal(mantissa string, e int) string {
	sign := ""
	if strings.HasPrefix(mantissa, "-") {
		sign, mantissa = "-", mantissa[1:]
	}
	whole, fraction, _ := strings.Cut(mantissa, ".")
	digits := strings.TrimLeft(whole+fraction, "0")
	if digits == "" {
		return sign + "0"
	}
	point := e + len(digits) - len(fraction) // its position in digits
	switch {
	case point > 21 || point < -6:
		return sign + digits + "e" + strconv.Itoa(point-len(digits))
	case point <= 0:
		return sign + "0." + strings.Repeat("0", -point) + digits
	case point >= len(digits):
		return sign + digits + strings.Repeat("0", point-len(digits))
	}
	return sign + digits[:point] + "." + digits[point:]
}
