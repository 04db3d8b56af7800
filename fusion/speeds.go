package fusion

// Speeds is the track reduced to its speed, within the given spans only; nil
// keeps all of it. T, V and VSD are parallel, and every other slice of samples
// is nil. It shares no large slices with the track, so that the track can be
// garbage-collected.
func (tr *Track) Speeds(within []Span) *Track {
	out := &Track{Still: tr.Still, Gaps: tr.Gaps, GNSSOnly: tr.GNSSOnly, Lag: tr.Lag, Mounts: tr.Mounts, Receiver: tr.Receiver, Notes: tr.Notes}
	if within == nil {
		out.T, out.V, out.VSD = tr.T, tr.V, tr.VSD
		return out
	}
	kept := make([]int, 0, len(tr.T))
	for i, t := range tr.T {
		if contains(within, t) {
			kept = append(kept, i)
		}
	}
	out.T, out.V = make([]float64, len(kept)), make([]float64, len(kept))
	if len(tr.VSD) == len(tr.T) {
		out.VSD = make([]float64, len(kept))
	}
	for k, i := range kept {
		out.T[k], out.V[k] = tr.T[i], tr.V[i]
		if out.VSD != nil {
			out.VSD[k] = tr.VSD[i]
		}
	}
	return out
}

func contains(spans []Span, t float64) bool {
	for _, s := range spans {
		if s.Contains(t) {
			return true
		}
	}
	return false
}
