package marks

import "stillair/runs/measure"

// Mark is one figure measured in a run. Fields that do not apply are NaN.
type Mark struct {
	Name     string        // "0-100 km/h", "1/4 mile", "60-100 km/h", "100-0 km/h"
	Time     measure.Value // s from first movement, or from the first speed of the pair
	Rollout  measure.Value // s from one foot (0.3048 m) after first movement; launches only
	Speed    measure.Value // m/s at the mark; for 1/8 and 1/4 mile the mean over the last 66 ft
	Distance measure.Value // m covered from first movement, or from the first speed of the pair
}

// Headline is the main time of the mark, and whether it counts from the
// rollout, which is preferred: the first foot depends on how the clutch
// engages, and first movement is less certain.
func (m Mark) Headline() (t measure.Value, rolledOut bool) {
	if m.Rollout.Known() {
		return m.Rollout, true
	}
	return m.Time, false
}
