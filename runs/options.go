package runs

import (
	"stillair/runs/marks"
	"stillair/sensors/finding"
)

// Stage is the code of a part of the analysis, for showing progress.
type Stage = finding.Code

// The stages of an analysis, in order.
const (
	Smoothing Stage = "stage.smoothing"
	Finding   Stage = "stage.finding"
	Measuring Stage = "stage.measuring"
	Fitting   Stage = "stage.fitting"
)

// Options configures the analysis. The zero value suits most riders.
type Options struct {
	RollOns  []marks.SpeedPair                // nil: marks.DefaultPairs
	Matters  float64                          // relative difference between setups that matters; 0: DefaultMatters
	Brief    bool                             // runs and marks only, for a halt: no road load, no power
	Progress func(stage Stage, share float64) // share done of the whole, 0 to 1; may be nil; never called concurrently
}

// pairs are the roll-ons to measure.
func (o Options) pairs() []marks.SpeedPair {
	if o.RollOns == nil {
		return marks.DefaultPairs()
	}
	return o.RollOns
}

// matters is the smallest relative difference that matters in comparisons.
func (o Options) matters() float64 {
	if o.Matters > 0 {
		return o.Matters
	}
	return DefaultMatters
}

func (o Options) progress(stage Stage, share float64) {
	if o.Progress != nil {
		o.Progress(stage, share)
	}
}
