package roadload

import "fmt"

// check refuses runs that cannot be fitted, and says what is missing.
func check(runs []Run) error {
	if len(runs) == 0 {
		return ErrNoRuns
	}
	for _, r := range runs {
		switch {
		case !(r.Mass > 0) || !(r.Inertia >= r.Mass):
			return fmt.Errorf("run %d: %w", r.ID, ErrMass)
		case !(r.Density > 0):
			return fmt.Errorf("run %d: %w", r.ID, ErrDensity)
		}
	}
	return nil
}
