package repair

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// The values of "axes" in a file.
const (
	AxesUp   = "specific force up"
	AxesDown = "specific force down"
)

// AxesWords is the remedy that names both.
func AxesWords() finding.Finding {
	return finding.New("axes.write", finding.Text("up", AxesUp), finding.Text("down", AxesDown))
}

// Force converts the specific force of motion to m/s², in place. The note is
// nil if nothing was changed.
func Force(file string, motion []sensors.Motion) (*sensors.Note, error) {
	size := ForceSize(motion)
	unit, scale := ForceUnit(size)
	switch {
	case unit == "" && size < 3:
		return nil, &sensors.InputError{File: file,
			What:   finding.New("force.no_gravity", finding.Acceleration("size", size)),
			Remedy: finding.New("force.record_raw")}
	case unit == "":
		return nil, &sensors.InputError{File: file,
			What:   finding.New("force.not_gravity", finding.Num("size", size)),
			Remedy: finding.New("force.give_mps2")}
	case scale == 1:
		return nil, nil
	}
	for i := range motion {
		motion[i].Force = r3.Scale(scale, motion[i].Force)
	}
	return &sensors.Note{File: file, Count: 1,
		What: finding.New("force.converted", finding.Text("unit", unit), finding.Num("size", size))}, nil
}

// Settle finds the unit of the turn rate and the sign of the force, which needs both
// motion and fixes, and corrects them in place. axes is the stated sign, which is
// accepted; "" infers it from the log. It returns the axes afterwards: AxesUp, or ""
// if they are not known.
func Settle(log *sensors.Log, file, axes string) string {
	say := func(count int, what finding.Finding) {
		log.Notes = append(log.Notes, sensors.Note{File: file, Count: count, What: what})
	}
	yaw := Sign(log)
	scale := 1.0
	switch {
	case yaw.Known:
		scale = yaw.Scale
	case MostTurn(log.Motion) > 6:
		scale = math.Pi / 180
	}
	switch {
	case scale < 1:
		say(1, finding.New("turn.converted"))
	case scale > 1:
		say(1, finding.New("turn.in_radians"))
	}
	if scale != 1 {
		for i := range log.Motion {
			log.Motion[i].Turn = r3.Scale(scale, log.Motion[i].Turn)
		}
	}
	if n := dropTurnSpikes(log.Motion); n > 0 {
		say(n, finding.New("turn.impossible", finding.TurnRate("most", mostTurn)))
	}
	down := yaw.Known && yaw.Down
	switch {
	case axes == AxesDown:
		turnOver(log.Motion)
	case axes == AxesUp && down:
		say(1, finding.New("axes.contradicted"))
	case axes == "" && down:
		say(1, finding.New("axes.turned_over"))
		turnOver(log.Motion)
	case axes == "" && !yaw.Known:
		if HasTurn(log.Motion) {
			say(1, finding.New("axes.unknown"))
		}
		return ""
	}
	return AxesUp
}

func turnOver(motion []sensors.Motion) {
	for i := range motion {
		motion[i].Force = r3.Scale(-1, motion[i].Force)
	}
}

// mostTurn in rad/s; the gyroscopes of phones end at 35 (common practice).
const mostTurn = 100

func dropTurnSpikes(motion []sensors.Motion) (n int) {
	nan := math.NaN()
	for i, m := range motion {
		if r3.Norm(m.Turn) > mostTurn {
			motion[i].Turn = r3.Vec{X: nan, Y: nan, Z: nan}
			n++
		}
	}
	return n
}
