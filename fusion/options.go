package fusion

// Options configures the smoother. The zero value is right for most rides: all
// noise parameters are learned from the recording.
type Options struct {
	// Progress, where set, is called with the share of the work done, from 0 to
	// 1, before Smooth returns and never twice at once: often enough that a
	// program with one thread can do other things within the call.
	Progress func(share float64)
}

func (o Options) progress(share float64) {
	if o.Progress != nil {
		o.Progress(share)
	}
}

// rising makes a progress function monotonic.
func rising(done func(share float64)) func(share float64) {
	most := 0.0
	return func(share float64) {
		most = max(most, share)
		done(most)
	}
}

// between returns a progress function for a part of the work.
func (o Options) between(from, to float64) func(share float64) {
	return func(share float64) { o.progress(from + share*(to-from)) }
}
