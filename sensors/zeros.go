package sensors

import (
	"math"
	"slices"

	"stillair/sensors/finding"
)

// A receiver that has lost the satellites may report a speed of 0 for some seconds
// while moving, often with positions that continue.
const (
	zeroSpeed   = 0.05 // m/s up to which a speed counts as 0
	mostZeros   = 5    // fixes over which a speed next to a zero is checked
	besideZeros = 2    // fixes that are left out next to one that is certainly false
	zeroLook    = 1.0  // s on each side over which positions are compared
	wanders     = 6.0  // m/s of apparent motion of positions at a standstill: receivers wander by some metres (common practice)
	heldAtZero  = 1.0  // m/s up to which receivers call slow riding 0 (common practice)
)

const codeFalseZero finding.Code = "log.false_zero"

// WithoutFalseZeros returns the log without fixes whose speed is 0 while the bike was
// moving: no motorcycle can get from there to the neighbouring speeds, or their positions
// continue to move. A note says how many there were; log itself is not changed.
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

// leaps reports whether a zero has a neighbour that no motorcycle can reach from a
// standstill, or stop from, and that is confirmed by the next one.
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

// travels reports whether the positions around a zero move on.
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

// besideWrong adds the zeros next to wrong ones: a receiver that reports 0 for some
// seconds may have begun or ended while the bike was too slow to show it.
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
