package foreign

import "math"

// event is an action of the rider, with its true values.
type event struct {
	kind          string // "" if it is not a run
	gear          int
	share         float64            // of full throttle
	from, to      float64            // s
	moved, rolled float64            // s: first movement, and one foot further
	passed        map[string]float64 // s: when a speed was reached, by the mark
	antic         antic              // of a launch
}

// marks are the speeds of a launch by the names that results give them.
var marks = map[string]float64{"0-60 km/h": 60 * kmh, "0-100 km/h": 100 * kmh}

func (w *world) stand(seconds float64) { w.until(standing, seconds, never) }

func (w *world) brake(hard, to float64) {
	w.want = hard
	w.until(braking, 60, func() bool { return w.v <= to })
}

// accelerate is at part throttle, with a different opening each time that also
// fluctuates.
func (w *world) accelerate(share, to float64) {
	share = math.Min(0.95, share*math.Exp(0.15*w.rng.NormFloat64()))
	phase, size, period := w.between(0, 2*math.Pi), w.between(0.03, 0.15), w.between(2, 6)
	w.throttle = func(t float64) float64 {
		return share * math.Min(1, t/0.6) * (1 + size*math.Sin(phase+2*math.Pi*t/period))
	}
	w.until(driving, 60, func() bool { return w.v >= to })
}

func (w *world) hold(v, seconds float64) {
	w.gear, w.want = w.gearFor(v), v
	w.until(holding, seconds, never)
}

// turnRound turns back onto the same line.
func (w *world) turnRound() {
	if w.gear = 0; w.v < 3 {
		w.accelerate(0.3, 4)
	}
	w.want = 4.5
	from := w.heading
	w.yaw = 0.45
	w.until(holding, 30, func() bool { return w.heading-from >= math.Pi })
	w.yaw, w.heading = 0, from+math.Pi
}

// takeUp is one of five shapes of clutch engagement over a time in s.
func takeUp(shape int, took float64) func(float64) float64 {
	return func(t float64) float64 {
		x := math.Min(1, t/took)
		switch shape {
		case 0:
			return x
		case 1:
			return 1 - math.Exp(-2.5*t/took)
		case 2:
			return 0.5 - 0.5*math.Cos(math.Pi*x)
		case 3:
			return 0.35 + 0.65*x
		}
		return x * x
	}
}

// start is a launch, with or without a creep before it.
func (w *world) start(to float64, creep bool) {
	w.stand(w.between(4, 9))
	if w.gear = 0; creep {
		w.throttle = func(float64) float64 { return 0.05 }
		w.until(driving, 2, func() bool { return w.v > 0.8 })
	}
	w.throttle = takeUp(w.rng.IntN(5), w.between(0.25, 1))
	d := event{kind: "launch", from: w.t, passed: map[string]float64{}}
	begun := w.way
	w.until(driving, 40, func() bool {
		if d.moved == 0 && w.v > 0.01 {
			d.moved, begun = w.t, w.way
		}
		if d.rolled == 0 && d.moved > 0 && w.way-begun >= 0.3048 {
			d.rolled = w.t
		}
		for name, v := range marks {
			if d.passed[name] == 0 && w.v >= v {
				d.passed[name] = w.t
			}
		}
		return w.v >= to
	})
	d.to = w.t
	w.events = append(w.events, d)
}

// rollOn is at full throttle, in one gear if possible.
func (w *world) rollOn(from, to float64) {
	w.hold(from, 6)
	for w.v > from+0.3 {
		w.hold(from, 1)
	}
	w.gear = w.gearFor(to)
	open := w.between(0.1, 0.4)
	w.throttle = func(t float64) float64 { return math.Min(1, t/open) }
	d := event{kind: "roll-on", from: w.t}
	w.until(driving, 45, func() bool { return w.v >= to })
	d.to = w.t
	w.events = append(w.events, d)
}

// pull is at full throttle, or at a share of it, in one gear.
func (w *world) pull(gear int, from, to, share float64) {
	w.hold(from, 4)
	for range 20 {
		if math.Abs(w.v-from) > 0.5 {
			w.hold(from, 1)
		}
	}
	w.gear = gear
	d := event{kind: "pull", from: w.t, gear: gear, share: share}
	if share < 1 {
		d.kind = ""
		w.accelerate(share, to)
	} else {
		open := w.between(0.1, 0.4)
		w.throttle = func(t float64) float64 { return math.Min(1, t/open) }
		w.until(driving, 45, func() bool { return w.v >= to })
	}
	d.to = w.t
	w.events = append(w.events, d)
	w.until(engineBraking, 0.8, never) // as usual before braking
}

// roll is a coast-down.
func (w *world) roll(from, to float64) {
	w.accelerate(0.5, from)
	w.hold(from, w.between(2, 5))
	w.sits()
	d := event{kind: "coast-down", from: w.t}
	w.until(coasting, 200, func() bool { return w.v <= to })
	d.to = w.t
	w.events = append(w.events, d)
}

// letGo closes the throttle in gear.
func (w *world) letGo(gear int, to float64) {
	w.gear = gear
	w.until(engineBraking, 60, func() bool { return w.v <= to })
}

func (w *world) stopAndTurn(hard float64) {
	w.brake(hard, 0)
	w.stand(3)
	w.turnRound()
}

func (w *world) end() {
	w.brake(2, 0)
	w.stand(8)
}

// flatOut is full throttle from standstill over a distance in m, and then a halt.
func (w *world) flatOut(far float64) {
	w.gear, w.throttle = 0, takeUp(0, 0.5)
	d := event{kind: "pass", from: w.t}
	begun := w.way
	w.until(driving, 400, func() bool { return w.way-begun >= far })
	d.to = w.t
	w.events = append(w.events, d)
}

// cruise accelerates through the gears at part throttle and holds a speed over a
// distance in m.
func (w *world) cruise(share, v, far float64) {
	w.gear = 0
	w.accelerate(share, v)
	for begun := w.way; w.way-begun < far; {
		w.hold(v*w.between(0.99, 1.01), w.between(3, 8))
	}
}
