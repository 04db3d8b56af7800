package runs

import (
	"math"

	"stillair/fusion"
	"stillair/runs/marks"
)

// allowForScale adds the uncertainty of a corrected scale of the receiver's
// speeds to the marks of a run: they are measured again on a track that is
// faster by a standard error of the scale, and each change is added to its mark
// in quadrature.
func (r *Run) allowForScale(track *fusion.Track, breaks []fusion.Span, pairs []marks.SpeedPair, se float64) {
	if se == 0 {
		return
	}
	other := *r
	other.measure(track.Scaled(1+se), breaks, pairs)
	for i := range r.Marks {
		for _, m := range other.Marks {
			if m.Name == r.Marks[i].Name {
				widen(&r.Marks[i].Time, m.Time)
				widen(&r.Marks[i].Rollout, m.Rollout)
				widen(&r.Marks[i].Speed, m.Speed)
				widen(&r.Marks[i].Distance, m.Distance)
			}
		}
	}
}

// widen adds the difference to another value to the uncertainty.
func widen(v *Value, other Value) {
	if v.Known() && other.Known() {
		v.SE = math.Hypot(v.SE, other.X-v.X)
	}
}
