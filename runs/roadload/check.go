package roadload

import (
	"errors"
	"fmt"
	"math"
)

// Why a fit is not possible. Each says what is missing.
var (
	ErrNoRuns       = errors.New("there is no coast-down to fit")
	ErrOneDirection = errors.New("no coast-down has a partner in the other direction: ride the road both ways, or wind and slope pass for drag")
	ErrMass         = errors.New("the mass of bike and rider is not known: weigh them, or add rider and luggage to the bike's mass in its papers")
	ErrDensity      = errors.New("the air density is not known: it follows from temperature and pressure")
	ErrSpeedRange   = errors.New("the coast-downs cover too small a range of speed to tell drag from rolling resistance: start faster or roll longer")
	ErrSamples      = errors.New("the coast-down holds too few usable fixes")
	ErrNoFit        = errors.New("the coast-downs do not agree with any drag area and rolling resistance")
	ErrOptions      = errors.New("the expected wind, slope and noise must be greater than zero")
)

const (
	minFixes      = 5
	minSpeedRatio = 1.1 // of the fastest fix to the slowest
)

// check refuses runs that cannot be fitted, and says what is missing.
func check(runs []Run, opts Options) error {
	if len(runs) == 0 {
		return ErrNoRuns
	}
	n := opts.Noise
	for _, x := range []float64{opts.WindSD, opts.GradeSD, opts.Gravity,
		n.GustSD, n.GustTime, n.WhiteSD, n.DriftSD, n.DriftTime} {
		if !(x > 0) || math.IsInf(x, 0) {
			return ErrOptions
		}
	}
	for _, r := range runs {
		if err := r.check(); err != nil {
			return fmt.Errorf("run %d: %w", r.ID, err)
		}
	}
	return checkSetups(runs)
}

func (r *Run) check() error {
	switch {
	case !(r.Mass > 0) || !(r.Inertia >= r.Mass) || math.IsInf(r.Inertia, 0):
		return ErrMass
	case !(r.Density > 0) || math.IsInf(r.Density, 0):
		return ErrDensity
	case len(r.T) < minFixes || len(r.V) != len(r.T) || r.Pos != nil && len(r.Pos) != len(r.T),
		r.Height != nil && len(r.Height) != len(r.T), r.Alt != nil && len(r.Alt) != len(r.T):
		return ErrSamples
	case r.Setup < 0 || math.Abs(r.Dir) != 1:
		return ErrOneDirection
	}
	for i := range r.T {
		sum := r.T[i] + r.V[i]
		if r.Pos != nil {
			sum += r.Pos[i]
		}
		if math.IsNaN(sum) || math.IsInf(sum, 0) {
			return fmt.Errorf("fix %d is not a number: %w", i+1, ErrSamples)
		}
		if i > 0 && r.T[i] <= r.T[i-1] {
			return fmt.Errorf("fix %d is not later than the one before: %w", i+1, ErrSamples)
		}
	}
	return nil
}

// checkSetups asks of every setup for a pair and a range of speed.
func checkSetups(runs []Run) error {
	type pairOf struct{ setup, pair int }
	ways := map[pairOf][2]bool{}
	paired := map[int]bool{}
	slow, fast := map[int]float64{}, map[int]float64{}
	setups := 0
	for _, r := range runs {
		setups = max(setups, r.Setup+1)
		w := ways[pairOf{r.Setup, r.Pair}]
		w[way(r.Dir)] = true
		ways[pairOf{r.Setup, r.Pair}] = w
		paired[r.Setup] = paired[r.Setup] || r.Pair != 0 && w[0] && w[1]
		if _, seen := slow[r.Setup]; !seen {
			slow[r.Setup] = math.Inf(1)
		}
		for _, v := range r.V {
			slow[r.Setup], fast[r.Setup] = math.Min(slow[r.Setup], v), math.Max(fast[r.Setup], v)
		}
	}
	for s := range setups {
		switch {
		case !paired[s]:
			return fmt.Errorf("setup %d: %w", s+1, ErrOneDirection)
		case fast[s] < minSpeedRatio*slow[s]:
			return fmt.Errorf("setup %d: %w", s+1, ErrSpeedRange)
		}
	}
	return nil
}
