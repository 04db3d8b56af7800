package sensors

import (
	"math"
	"slices"

	"stillair/sensors/finding"
	"stillair/sensors/median"
)

// Limits for motion stamped in bursts, as by a program that receives many
// readings at a time and stamps them all on arrival.
const (
	within     = 0.25 // of the usual interval; readings of one burst are closer
	mostWithin = 0.5  // share of the intervals from which the stamps are taken as bursts
	restless   = 4.0  // usual lengths of a burst beyond which there is a gap before it
)

const codeBursts finding.Code = "log.bursts"

// Spread returns the log with evenly spaced times for motion that was stamped
// in bursts: the last reading of a burst keeps its stamp, as it had just been
// measured, and the others are interpolated between it and the last of the
// burst before. A note states how many readings a burst has, and the scatter of
// the last stamps about the mean of their neighbours, which is the remaining
// jitter. log itself is not changed.
func Spread(log *Log) *Log {
	every, inBursts := rhythm(log.Motion)
	if !inBursts {
		return log
	}
	out := *log
	out.Motion = slices.Clone(log.Motion)
	ends := lasts(out.Motion, every)
	usual := float64(len(out.Motion)) / float64(len(ends)) * every
	from := -1
	for _, end := range ends {
		n := float64(end - from)
		span := n * every
		if from >= 0 && out.Motion[end].T-out.Motion[from].T < restless*math.Max(usual, span) {
			span = out.Motion[end].T - out.Motion[from].T
		}
		for i := from + 1; i < end; i++ {
			out.Motion[i].T = out.Motion[end].T - span*float64(end-i)/n
		}
		from = end
	}
	out.Notes = append(slices.Clone(log.Notes), Note{Count: len(ends), What: finding.New(codeBursts,
		finding.Count("readings", int(math.Round(usual/every))), finding.Time("jitter", jitter(log.Motion, ends)))})
	return &out
}

// rhythm is the mean interval over many readings, s, and whether most intervals are
// far shorter.
func rhythm(all []Motion) (every float64, inBursts bool) {
	const over = 256
	if len(all) < 2*over {
		return 0, false
	}
	var steps []float64
	for i := over; i < len(all); i += over / 4 {
		steps = append(steps, (all[i].T-all[i-over].T)/over)
	}
	every = median.Of(steps)
	n := 0
	for i := 1; i < len(all); i++ {
		if all[i].T-all[i-1].T < within*every {
			n++
		}
	}
	return every, float64(n) > mostWithin*float64(len(all)-1)
}

// lasts are the indices of the last readings of bursts.
func lasts(all []Motion, every float64) (ends []int) {
	for i := range all {
		if i+1 == len(all) || all[i+1].T-all[i].T >= within*every {
			ends = append(ends, i)
		}
	}
	return ends
}

// jitter is the standard deviation of the stamps that end bursts: the median
// distance of each from the position between its neighbours expected from the
// numbers of readings, divided by its value for a normal deviation (0.6745·√1.5).
func jitter(all []Motion, ends []int) float64 {
	var off []float64
	for k := 1; k+1 < len(ends); k++ {
		a, b, c := ends[k-1], ends[k], ends[k+1]
		share := float64(b-a) / float64(c-a)
		off = append(off, math.Abs(all[b].T-all[a].T-share*(all[c].T-all[a].T)))
	}
	if len(off) == 0 {
		return 0
	}
	return median.Of(off) / (0.6745 * math.Sqrt(1.5))
}
