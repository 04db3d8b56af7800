package sheets

import (
	"bytes"
	"time"
)

// layouts are the formats of a moment in words. A fraction of a second may
// follow each, after a point or a comma (package time).
var layouts = [...]string{
	time.RFC3339, "2006-01-02 15:04:05Z07:00", "2006-01-02 15:04:05 -0700", "2006-01-02T15:04:05-0700",
	"2006-01-02T15:04:05", "2006-01-02 15:04:05", "2006/01/02 15:04:05", "02.01.2006 15:04:05", "15:04:05",
}

// moment reads a moment in words, in s since 1970, or since midnight if it has no
// date. zoned is false if it has no time zone; guess is the layout to try first,
// and is set to the one that fits.
func moment(c []byte, guess *int) (s float64, zoned, ok bool) {
	if !isMoment(c) {
		return 0, false, false
	}
	text := string(c)
	if len(c) > 20 && c[13] == '-' && c[16] == '-' { // 2026-06-14 12-00-00_123
		b := bytes.Clone(c)
		b[13], b[16] = ':', ':'
		if b[19] == '_' || b[19] == ':' {
			b[19] = '.'
		}
		text = string(b)
	}
	for i := range layouts {
		n := (i + *guess) % len(layouts)
		t, err := time.Parse(layouts[n], text)
		if err != nil {
			continue
		}
		*guess = n
		if t.Year() == 0 {
			t = t.AddDate(1970, 0, 0)
		}
		return float64(t.Unix()) + float64(t.Nanosecond())*1e-9, n < 4, true
	}
	return 0, false, false
}

// isMoment reports whether a cell may be a moment in words.
func isMoment(c []byte) bool {
	return len(c) >= 8 && len(c) <= 40 && c[0] >= '0' && c[0] <= '9' && (bytes.Count(c, []byte{':'}) >= 2 || bytes.Count(c, []byte{'-'}) >= 4)
}
