package runs

import (
	"stillair/runs/detect"
	"stillair/sensors/finding"
)

// heldByDrive takes for no coast-down what a bike did whose drive never lets the
// wheel go. A belt or a motor that turns with the wheel holds it back by a force
// of its own: friction, and with regeneration a good part of what the motor can
// give. That force is not known, and hangs on speed, temperature and charge, so
// that no drag area and no rolling resistance can be separated from it.
func (result *Result) heldByDrive(found []detect.Found) []detect.Found {
	if result.Ride.Drive.RollsFree() {
		return found
	}
	rolled := false
	for i := range found {
		if found[i].Kind == CoastDown {
			found[i].Reasons = append(found[i].Reasons, finding.New(codeHeldByDrive))
			rolled = true
		}
	}
	if rolled {
		result.Warnings = append(result.Warnings, finding.New(codeNeverRolls))
	}
	return found
}
