package sourcetest

import (
	"fmt"
	"math"

	"stillair/sensors"
)

// Limits for sound, as wide as the others.
const (
	leastRate, mostRate = 100.0, 50000.0 // values a second
	longestStretch      = 2.0            // s, longer ones would be late for a screen and lost in a crash
)

func soundProblems(s sensors.Sound) (bad []string) {
	say := func(wrong bool, what string) {
		if wrong {
			bad = append(bad, "sound with "+what)
		}
	}
	say(len(s.Level) == 0, "no values")
	say(!(s.Rate >= leastRate && s.Rate <= mostRate), fmt.Sprintf("a rate outside %g to %g a second", leastRate, mostRate))
	say(float64(len(s.Level)) > longestStretch*s.Rate, fmt.Sprintf("a stretch longer than %g s", longestStretch))
	say(s.Clipped < 0, "fewer than no clipped readings")
	return bad
}

// oneAfterAnother checks that no stretch of sound begins before the end of the
// one before it, except by a part of a value.
func oneAfterAnother(f *first, calls []call) {
	end := math.Inf(-1)
	for i, c := range calls {
		if c.sound == nil {
			continue
		}
		if c.sound.T <= end-1/c.sound.Rate {
			f.add(i, "sound that begins before the stretch before it ended")
		}
		end = c.sound.End()
	}
}
