package shown

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Normal95 is the factor from a standard error to half of a 95 % interval
// where the errors are normal.
const Normal95 = 1.959963984540054

// Parts returns x and half, rounded by the rule of the package doc. If half is
// not known, x is alone, with three significant digits.
func Parts(x, half float64) (number, spread string) {
	if !finite(x) {
		return "–", ""
	}
	if !finite(half) || half <= 0 {
		return significant(x, 3), ""
	}
	decimals := place(half)
	if decimals < 0 {
		unit := math.Pow10(-decimals)
		return Fixed(math.RoundToEven(x/unit)*unit, 0), Fixed(math.RoundToEven(half/unit)*unit, 0)
	}
	return Fixed(x, decimals), Fixed(half, decimals)
}

// PlusMinus returns "x ± half" of Parts.
func PlusMinus(x, half float64) string {
	number, spread := Parts(x, half)
	if spread == "" {
		return number
	}
	return number + " ± " + spread
}

// place returns the number of decimals for an uncertainty.
func place(half float64) int {
	exponent := int(math.Floor(math.Log10(half)))
	if lead := half / math.Pow10(exponent); lead < 2.95 {
		exponent--
	}
	return min(-exponent, 9)
}

// Fixed returns x with the decimals and a proper minus sign, never −0. From
// 10 000 on its digits stand in groups of three, separated by a space that breaks
// no line: the SI brochure's way (9th edition, 5.4.4), and the same in every
// language.
func Fixed(x float64, decimals int) string {
	if !finite(x) {
		return "–"
	}
	digits, negative := strings.CutPrefix(strconv.FormatFloat(x, 'f', decimals, 64), "-")
	whole, rest, _ := strings.Cut(digits, ".")
	if rest != "" {
		rest = "." + rest
	}
	if len(whole) > 4 {
		for i := len(whole) - 3; i > 0; i -= 3 {
			whole = whole[:i] + "\u00a0" + whole[i:]
		}
	}
	if negative && strings.Trim(digits, "0.") != "" {
		return "−" + whole + rest
	}
	return whole + rest
}

// significant returns x with that many significant digits, without exponent.
func significant(x float64, digits int) string {
	if x == 0 {
		return "0"
	}
	decimals := digits - 1 - int(math.Floor(math.Log10(math.Abs(x))))
	return Fixed(x, max(0, min(decimals, 9)))
}

// Moment returns a time of the ride as minutes and seconds since its start.
func Moment(seconds float64) string {
	if !finite(seconds) {
		return "–"
	}
	sign := ""
	if seconds < 0 {
		sign, seconds = "−", -seconds
	}
	tenths := int64(math.Round(seconds * 10))
	minutes, rest := tenths/600, tenths%600
	if minutes >= 60 {
		return fmt.Sprintf("%s%d:%02d:%02d.%d", sign, minutes/60, minutes%60, rest/10, rest%10)
	}
	return fmt.Sprintf("%s%d:%02d.%d", sign, minutes, rest/10, rest%10)
}

// Duration returns a length of time in words, to the second: "13 min 43 s".
func Duration(seconds float64) string {
	if !finite(seconds) || seconds < 0 {
		return "–"
	}
	s := int64(math.Round(seconds))
	switch {
	case s < 60:
		return fmt.Sprintf("%d s", s)
	case s < 3600:
		return fmt.Sprintf("%d min %d s", s/60, s%60)
	}
	return fmt.Sprintf("%d h %d min", s/3600, s%3600/60)
}

// Heading returns a compass bearing in words: "E 84°".
func Heading(degrees float64) string { return Style{}.Heading(degrees) }

// Heading is a compass bearing in the letters of the language.
func (s Style) Heading(degrees float64) string {
	if !finite(degrees) {
		return "–"
	}
	names := [...]string{"N", "NE", "E", "SE", "S", "SW", "W", "NW"}
	if s.Language == German {
		names = [...]string{"N", "NO", "O", "SO", "S", "SW", "W", "NW"}
	}
	d := math.Mod(math.Mod(degrees, 360)+360, 360)
	return fmt.Sprintf("%s %.0f°", names[int(math.Round(d/45))%8], d)
}

// Moment is a time of the ride with the decimal sign of the language.
func (s Style) Moment(seconds float64) string { return s.point(Moment(seconds)) }
