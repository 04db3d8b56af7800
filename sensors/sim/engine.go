package sim

import "math"

// torqueStep is the spacing of the torque table, 1/min.
const torqueStep = 50.0

// engine looks torques up in an evenly spaced table.
type engine struct {
	Engine
	full []float64
	last float64 // engine speed of the last point
}

func newEngine(e Engine) *engine {
	en := &engine{Engine: e}
	if len(e.Torque) == 0 {
		en.full = []float64{0, 0}
		return en
	}
	en.last = e.Torque[len(e.Torque)-1].RPM
	for n := 0.0; n <= en.last+torqueStep; n += torqueStep {
		en.full = append(en.full, torqueAt(e.Torque, n))
	}
	return en
}

// torqueAt interpolates a torque curve; below its first point the torque is
// that of the first, above its last that of the last.
func torqueAt(points []TorquePoint, rpm float64) float64 {
	for i, p := range points {
		if rpm > p.RPM {
			continue
		}
		if i == 0 {
			return p.Nm
		}
		q := points[i-1]
		return q.Nm + (p.Nm-q.Nm)*(rpm-q.RPM)/(p.RPM-q.RPM)
	}
	return points[len(points)-1].Nm
}

// fullTorque returns the full-throttle torque at the crank, Nm.
func (e *engine) fullTorque(rpm float64) float64 {
	x := rpm / torqueStep
	i := int(x)
	if i >= len(e.full)-1 {
		return e.full[len(e.full)-1]
	}
	return e.full[i] + (x-float64(i))*(e.full[i+1]-e.full[i])
}

// drag returns the torque that turns the engine with closed throttle, Nm.
func (e *engine) drag(rpm float64) float64 {
	if e.last == 0 {
		return 0
	}
	return e.DragTorque * (0.5 + 0.5*min(rpm/e.last, 1))
}

// force returns the force at the road for a throttle opening at an engine
// speed, with turn radians of crank per metre.
func (e *engine) force(throttle, rpm, turn float64) float64 {
	torque := throttle*e.fullTorque(rpm) - (1-throttle)*e.drag(rpm)
	if torque > 0 {
		torque *= e.Efficiency
	}
	return torque * turn
}

// turnOf returns the radians of crank per metre in a gear.
func turnOf(rpmPerMPS float64) float64 { return rpmPerMPS * math.Pi / 30 }
