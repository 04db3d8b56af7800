package sensors

import (
	"math"
	"slices"

	"stillair/sensors/finding"
)

// What a receiver may give where it lost the sky: a speed of 0 for some seconds on the
// way, often with places that go on.
const (
	zeroSpeed   = 0.05 // m/s that a speed of 0 may be written as
	mostZeros   = 5    // fixes over which a speed beside one that is 0 is looked at
	besideZeros = 2    // fixes that are left out beside one that is surely false
	zeroLook    = 1.0  // s on either side over which places are compared
	wanders     = 6.0  // m/s that places may seem to move at while the bike stands: receivers wander by some metres (common practice)
	heldAtZero  = 1.0  // m/s up to which receivers call slow riding 0 (common practice)
)

const codeFalseZero finding.Code = "log.false_zero"

// WithoutFalseZeros gives the log without fixes whose speed is 0 while the bike moved: no
// motorcycle gets from there to the speeds beside them, or their places move on. A note
// says how many there were; log itself is not changed.
func WithoutFalseZeros(log *Log) *Log {
	wrong := make([]bool, len(log.Fixes))
	for i := range log.Fixes {
		wrong[i] = log.Fixes[i].Speed <= zeroSpeed && (leaps(log.Fixes, i) || travels(log.Fixes, i))
	}
	if !slices.Contains(wrong, true) {
		return log
	}
	wrong = besideWrong(log.Fixes, wrong)
	out := *log
	out.Fixes = nil
	for i, f := range log.Fixes {
		if !wrong[i] {
			out.Fixes = append(out.Fixes, f)
		}
	}
	out.Notes = append(slices.Clone(log.Notes), Note{Count: len(log.Fixes) - len(out.Fixes), What: finding.New(codeFalseZero)})
	return &out
}

// leaps reports whether a fix that stands has one beside it that no motorcycle can
// reach from standing, or stop from, and that the one beyond it bears out.
func leaps(fixes []Fix, i int) bool {
	for _, way := range [2]int{-1, 1} {
		for k := 1; k <= mostZeros; k++ {
			j, beyond := i+way*k, i+way*(k+1)
			if min(j, beyond) < 0 || max(j, beyond) >= len(fixes) {
				break
			}
			if tooHard(fixes[i], fixes[j], heldAtZero) && fixes[beyond].Speed > zeroSpeed && !tooHard(fixes[j], fixes[beyond], heldAtZero) {
				return true
			}
		}
	}
	return false
}

// travels reports whether places around a fix that stands move on.
func travels(fixes []Fix, i int) bool {
	a, b := i, i
	for a > 0 && fixes[i].T-fixes[a].T < zeroLook {
		a--
	}
	for b < len(fixes)-1 && fixes[b].T-fixes[i].T < zeroLook {
		b++
	}
	if a == i || b == i || !fixes[a].HasPosition() || !fixes[b].HasPosition() || !fixes[i].HasPosition() {
		return false
	}
	speed := func(from, to int) float64 {
		east, north := between(fixes[from], fixes[to])
		return math.Hypot(east, north) / apart(fixes[from], fixes[to])
	}
	return speed(a, b) > wanders && speed(a, i) > wanders/2 && speed(i, b) > wanders/2
}

// besideWrong adds the zeros next to wrong ones: a receiver that gives 0 for some seconds
// began or ended with it where the bike was too slow to tell.
func besideWrong(fixes []Fix, wrong []bool) []bool {
	out := slices.Clone(wrong)
	for i := range wrong {
		for _, way := range [2]int{-1, 1} {
			for k := i; wrong[i] && k >= 0 && k < len(fixes) && fixes[k].Speed <= zeroSpeed && max(k-i, i-k) <= besideZeros; k += way {
				out[k] = true
			}
		}
	}
	return out
}
