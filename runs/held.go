package runs

import (
	"stillair/runs/detect"
	"stillair/sensors/finding"
)

// heldByDrive rejects the coast-downs of a bike whose drive cannot be
// disengaged. A belt or a motor that turns with the wheel adds a retarding
// force: friction, and with regeneration a good part of the motor's force. That
// force is unknown and depends on speed, temperature and charge, so drag area
// and rolling resistance cannot be separated from it.
func (result *Result) rejectFixedDrive(found []detect.Found) []detect.Found {
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
