package runs

import (
	"context"
	"testing"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// TestDriveThatNeverLetsGo rolls a bike out and back twice. With a clutch entered it
// gets a road load; with a drive that always turns with the wheel, none of the runs
// counts, whatever its curve looks like, and both the runs and the ride give the
// reason.
func TestDriveThatNeverLetsGo(t *testing.T) {
	t.Parallel()
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = sim.CoastPairs(2, 90*units.KMH, 35*units.KMH)
	ride, err := sim.Run(sc, 5)
	if err != nil {
		t.Fatal(err)
	}
	for _, drive := range []sensors.Drive{sensors.NoDrive, sensors.DriveClutch, sensors.DriveVariator, sensors.DriveElectric} {
		log := *ride.Log
		log.Ride.Drive = drive
		res, err := Analyse(context.Background(), &log, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := len(res.RoadLoads) == 1; got != drive.RollsFree() {
			t.Errorf("%q: %d road loads", drive, len(res.RoadLoads))
		}
		if got := finding.Any(res.Warnings, codeNeverRolls); got == drive.RollsFree() {
			t.Errorf("%q: warnings %v", drive, res.Warnings)
		}
		coasts := 0
		for _, r := range res.Runs {
			if r.Kind != CoastDown {
				continue
			}
			coasts++
			if finding.Any(r.Reasons, codeHeldByDrive) == drive.RollsFree() {
				t.Errorf("%q: run %d has reasons %v", drive, r.ID, r.Reasons)
			}
		}
		if coasts < 4 {
			t.Errorf("%q: %d of 4 rolls found", drive, coasts)
		}
	}
}
