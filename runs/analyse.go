package runs

import (
	"context"
	"errors"

	"stillair/runs/marks"
	"stillair/sensors"
)

// Stage names a part of the analysis, for showing progress.
type Stage string

// The stages of an analysis, in order.
const (
	Smoothing Stage = "smoothing"
	Finding   Stage = "finding runs"
	Measuring Stage = "measuring"
	Fitting   Stage = "fitting the road load"
)

// Options says what to compute. The zero value is what most riders want.
type Options struct {
	RollOns  []marks.SpeedPair                // nil: marks.DefaultPairs
	Progress func(stage Stage, share float64) // share of the whole done, 0 to 1; may be nil; called from one goroutine
}

// ErrNoMotion is returned for a log that holds too little to smooth.
var ErrNoMotion = errors.New("the log holds no ride: it needs motion samples and satellite fixes with speed")

// Analyse computes everything a ride has to tell. The log is not changed.
func Analyse(ctx context.Context, log *sensors.Log, opts Options) (*Result, error) {
	return nil, ErrNoMotion
}
