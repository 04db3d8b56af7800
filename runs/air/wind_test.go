package air_test

import (
	"math"
	"testing"

	"stillair/runs/air"
	"stillair/sensors/units"
)

// TestApparentWind checks the worked example of 40 CFR 1037.528: wind of 7.1
// mi/h at 47° to the direction of travel, vehicle at 64.9 mi/h: air speed 69.93
// mi/h, yaw 4.26°.
func TestApparentWind(t *testing.T) {
	speed, yaw := air.Apparent(64.9*units.MPH, 7.1*units.MPH, 47*units.Degree)
	check{"air speed, mi/h", speed / units.MPH, 69.93, 0.006}.run(t)
	check{"yaw, degrees", yaw / units.Degree, 4.26, 0.005}.run(t)
}

// TestCyclistsPower balances the worked example of Martin et al., J. Applied
// Biomechanics 14 (1998) 276, as quoted in open code: 471.8 m in 56.42 s from
// 8.28 to 8.45 m/s on a climb of 0.3 %, wind 2.94 m/s from 310° with a course
// of 340°, drag area with wheels 0.2609 m²: 213 W at the crank. Rolling
// resistance 0.0032, bearings 0.091 + 0.0087·v N, wheel inertia 0.14 kg·m² at
// 0.311 m and 97.698 % of a chain are from memory.
func TestCyclistsPower(t *testing.T) {
	const mass, gravity, density, seconds = 90.0, 9.81, 1.2234, 56.42
	v := 471.8 / seconds
	wind, yaw := air.Apparent(v, 2.94, (310-340)*units.Degree)
	ahead := wind * math.Cos(yaw)
	force := density/2*(0.2565+0.0044)*ahead*ahead + mass*gravity*(0.0032+0.003) + 0.091 + 0.0087*v
	gained := (mass + 0.14/(0.311*0.311)) * (8.45*8.45 - 8.28*8.28) / 2 / seconds
	check{"power, W", (force*v + gained) / 0.97698, 213, 0.5}.run(t)
}

// TestAcross: a wind along the road has no cross-wind except through the
// uncertainty of the station's direction.
func TestAcross(t *testing.T) {
	along, across := air.Across(4, 200, 20), air.Across(4, 110, 20)
	check{"along the road, m/s", along.X, 0, 1e-12}.run(t)
	check{"across the road, m/s", across.X, 2, 1e-12}.run(t)
	if !(along.SE > 0.3 && along.SE < 1 && across.SE > 0.5 && across.SE < 1) {
		t.Errorf("along ± %.2f, across ± %.2f m/s", along.SE, across.SE)
	}
}
