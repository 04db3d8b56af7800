package fusion

// Options steer the smoother. The zero value is what a ride normally needs:
// every noise is learned from the recording.
type Options struct {
	// Progress, where set, is called now and then with the share of the work
	// done, from 0 to 1, on the goroutine that called Smooth.
	Progress func(share float64)
}

func (o Options) progress(share float64) {
	if o.Progress != nil {
		o.Progress(share)
	}
}
