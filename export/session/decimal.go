package session

import (
	"math"
	"strconv"
)

// maxExact is the largest whole number below which every float64 step is
// exact: 2⁵³.
const maxExact = 1 << 53

// pow10 holds the powers of ten that a float64 holds exactly.
var pow10 = [...]float64{1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10,
	1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22}

// appendDecimal appends x rounded to the decimals, without trailing zeros; null
// where x is not a finite number.
func appendDecimal(dst []byte, x float64, decimals int) []byte {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return append(dst, "null"...)
	}
	scaled := math.Round(x * pow10[decimals])
	if math.Abs(scaled) >= maxExact {
		return strconv.AppendFloat(dst, x, 'g', -1, 64)
	}
	n := int64(scaled)
	if n < 0 {
		dst = append(dst, '-')
		n = -n
	}
	unit := int64(pow10[decimals])
	dst = strconv.AppendInt(dst, n/unit, 10)
	frac := n % unit
	if frac == 0 {
		return dst
	}
	dst = append(dst, '.')
	for unit /= 10; frac > 0; unit /= 10 {
		dst = append(dst, byte('0'+frac/unit))
		frac %= unit
	}
	return dst
}

// parseNumbers appends the numbers of the JSON array raw to dst; null becomes
// NaN. It reports false where raw is not an array of numbers and nulls.
func parseNumbers(dst []float64, raw string) ([]float64, bool) {
	s := scanner{text: raw}
	if !s.take('[') {
		return dst, false
	}
	if s.take(']') {
		return dst, s.atEnd()
	}
	for {
		x, ok := s.number()
		if !ok {
			return dst, false
		}
		dst = append(dst, x)
		if s.take(',') {
			continue
		}
		return dst, s.take(']') && s.atEnd()
	}
}

// scanner walks over the text of one JSON value.
type scanner struct {
	text string
	at   int
}

func (s *scanner) skipSpace() {
	for s.at < len(s.text) {
		switch s.text[s.at] {
		case ' ', '\t', '\r', '\n':
			s.at++
		default:
			return
		}
	}
}

func (s *scanner) take(c byte) bool {
	s.skipSpace()
	if s.at < len(s.text) && s.text[s.at] == c {
		s.at++
		return true
	}
	return false
}

func (s *scanner) atEnd() bool {
	s.skipSpace()
	return s.at == len(s.text)
}

// number reads one number or null. A decimal of up to 15 digits is a whole
// number below 2⁵³ divided by an exact power of ten, so one division gives the
// nearest float64 (Clinger, How to read floating point numbers accurately,
// PLDI 1990); anything else goes to strconv.
func (s *scanner) number() (float64, bool) {
	s.skipSpace()
	start := s.at
	negative := s.at < len(s.text) && s.text[s.at] == '-'
	if negative {
		s.at++
	}
	mantissa, digits, decimals := int64(0), 0, 0
	dot := false
	for ; s.at < len(s.text); s.at++ {
		c := s.text[s.at]
		if c >= '0' && c <= '9' {
			if digits < 18 {
				mantissa = mantissa*10 + int64(c-'0')
			}
			digits++
			if dot {
				decimals++
			}
			continue
		}
		if c != '.' || dot {
			break
		}
		dot = true
	}
	if digits == 0 || digits > 15 || s.inNumber() {
		return s.slowNumber(start)
	}
	x := float64(mantissa) / pow10[decimals]
	if negative {
		x = -x
	}
	return x, true
}

// inNumber reports whether the number continues with an exponent.
func (s *scanner) inNumber() bool {
	return s.at < len(s.text) && (s.text[s.at] == 'e' || s.text[s.at] == 'E')
}

// slowNumber reads what number left: exponents, many digits, null.
func (s *scanner) slowNumber(start int) (float64, bool) {
	end := start
	for end < len(s.text) && !isDelimiter(s.text[end]) {
		end++
	}
	s.at = end
	word := s.text[start:end]
	if word == "null" {
		return math.NaN(), true
	}
	if word == "" || (word[0] != '-' && (word[0] < '0' || word[0] > '9')) {
		return 0, false
	}
	x, err := strconv.ParseFloat(word, 64)
	return x, err == nil
}

func isDelimiter(c byte) bool {
	return c == ',' || c == ']' || c == '}' || c == ' ' || c == '\t' || c == '\r' || c == '\n'
}
