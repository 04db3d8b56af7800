package fusion_test

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// exactStarts is a log without any error: three times a rest, seven seconds of
// constant acceleration, a cruise, braking to rest.
func exactStarts(accel, rest float64) *sensors.Log {
	const period = 40.0
	speed := func(t float64) (v, a float64) {
		u := t - rest - period*math.Max(0, math.Floor((t-rest)/period))
		top := 7 * accel
		switch {
		case u < 0:
			return 0, 0
		case u < 7:
			return accel * u, accel
		case u < 17:
			return top, 0
		case u < 17+top/5:
			return top - 5*(u-17), -5
		}
		return 0, 0
	}
	log := &sensors.Log{}
	mount := r3.NewRotation(1.1, r3.Vec{X: 1, Y: 2, Z: -0.5})
	for i := range 13000 {
		t := float64(i) * 0.01
		_, a := speed(t)
		log.Motion = append(log.Motion, sensors.Motion{T: t, Force: mount.Rotate(r3.Vec{X: a, Z: 9.80665})})
		if i%100 == 37 {
			v, _ := speed(t - 0.25)
			log.Fixes = append(log.Fixes, sensors.NewFix(t, v))
		}
	}
	return log
}
