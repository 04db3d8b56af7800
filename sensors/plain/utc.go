package plain

import (
	"bytes"
	"math"
	"strconv"
	"time"

	"stillair/sensors/internal/decimal"
)

// utcMillis reads milliseconds since 1970 to the nanosecond, or returns the
// zero time. A time before satellites broadcast any, or far ahead, is broken.
func utcMillis(b []byte) (time.Time, decimal.Cell) {
	b = bytes.TrimSpace(b)
	whole, fraction, _ := bytes.Cut(b, []byte("."))
	ms, err := strconv.ParseInt(string(whole), 10, 64)
	if err != nil || bytes.ContainsAny(fraction, "eE") {
		v, state := decimal.Read(b)
		if state != decimal.Filled {
			return time.Time{}, state
		}
		if math.Abs(v) > 1e15 {
			return time.Time{}, decimal.Broken
		}
		ms, fraction = int64(math.Round(v)), nil
	}
	var ns int64
	for i := range 6 {
		ns *= 10
		if i < len(fraction) {
			if fraction[i] < '0' || fraction[i] > '9' {
				return time.Time{}, decimal.Broken
			}
			ns += int64(fraction[i] - '0')
		}
	}
	at := time.UnixMilli(ms).Add(time.Duration(ns)).UTC()
	if at.Year() < 1980 || at.Year() > 2200 {
		return time.Time{}, decimal.Broken
	}
	return at, decimal.Filled
}
