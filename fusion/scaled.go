package fusion

// Scaled is the track with every speed, distance and acceleration multiplied by
// a factor, as if the receiver's speeds were. Its covariances are unchanged.
func (tr *Track) Scaled(by float64) *Track {
	out := *tr
	out.V, out.A, out.S, out.signed = larger(tr.V, by), larger(tr.A, by), larger(tr.S, by), larger(tr.Signed(), by)
	return &out
}

func larger(x []float64, by float64) []float64 {
	out := make([]float64, len(x))
	for i := range x {
		out[i] = x[i] * by
	}
	return out
}
