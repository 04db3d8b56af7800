package sensors

import "stillair/sensors/finding"

// CodeHole is the code of a gap during which the device kept a sensor from
// delivering, with its length ("for") and reason ("why").
const CodeHole finding.Code = "sensor.hole"

// Hole is a gap during which the device kept a sensor from delivering.
type Hole struct {
	From, To float64 // s on the log's clock
	Why      finding.Finding
}

// Seconds is the length of the gap.
func (h Hole) Seconds() float64 { return h.To - h.From }

// Finding is the finding about the gap.
func (h Hole) Finding() finding.Finding {
	return finding.New(CodeHole, finding.Time("for", h.Seconds()), finding.Of("why", h.Why)).Within(h.From, h.To)
}

// State marks the gap in a log. A gap is reported at its end: until then its length is
// not known, and times in a log do not go back.
func (h Hole) State(s Sensor) State {
	return State{T: h.To, Sensor: s, Condition: Silent, Detail: h.Finding()}
}

// Hole returns the gap that a state marks.
func (s State) Hole() (h Hole, ok bool) {
	length, ok := s.Detail.Arg("for")
	if s.Detail.Code != CodeHole || !ok || !(length.X >= 0) {
		return Hole{}, false
	}
	h = Hole{From: s.T - length.X, To: s.T}
	if why, ok := s.Detail.Arg("why"); ok && why.Finding != nil {
		h.Why = *why.Finding
	}
	return h, true
}

// Holes are the gaps of a log in order, each once for all sensors.
func (l *Log) Holes() (holes []Hole) {
	for _, s := range l.States {
		h, ok := s.Hole()
		if !ok {
			continue
		}
		if n := len(holes); n == 0 || h.From >= holes[n-1].To {
			holes = append(holes, h)
		}
	}
	return holes
}
