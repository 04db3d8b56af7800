package mend

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// The words that say how a file's signs are meant.
const (
	AxesUp   = "specific force up"
	AxesDown = "specific force down"
)

// Force brings the specific force of motion to m/s², in place. The note is nil
// where nothing was to be done.
func Force(file string, motion []sensors.Motion) (*sensors.Note, error) {
	size := ForceSize(motion)
	unit, scale := ForceUnit(size)
	switch {
	case unit == "" && size < 3:
		return nil, &sensors.InputError{File: file,
			What:   finding.Said(fmt.Sprintf("the acceleration without vibration is %.2g m/s², so gravity is not in it", size)),
			Remedy: finding.Said("record the accelerometer itself, which reads 9.8 at rest, not linear acceleration")}
	case unit == "":
		return nil, &sensors.InputError{File: file,
			What:   finding.Said(fmt.Sprintf("the acceleration without vibration is %.3g, which is not the size of gravity (9.8 m/s²)", size)),
			Remedy: finding.Said("give specific force in m/s²")}
	case scale == 1:
		return nil, nil
	}
	for i := range motion {
		motion[i].Force = r3.Scale(scale, motion[i].Force)
	}
	return &sensors.Note{File: file, Count: 1,
		What: finding.Said(fmt.Sprintf("the acceleration is in %s (%.3g at rest) and is converted to m/s²", unit, size))}, nil
}

// Settle finds the unit of the turn rate and the sign of the force, which
// takes motion and fixes together, and puts both right in place. axes is what
// was told of the sign, and it is believed; "" asks the log. It returns what is
// known of the axes afterwards: AxesUp, or "" where nothing tells.
func Settle(log *sensors.Log, file, axes string) string {
	say := func(count int, text string) {
		log.Notes = append(log.Notes, sensors.Note{File: file, Count: count, What: finding.Said(text)})
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
		say(1, "the turn rate is in deg/s and is converted to rad/s")
	case scale > 1:
		say(1, "the turn rate was in rad/s already and is not converted from deg/s")
	}
	if scale != 1 {
		for i := range log.Motion {
			log.Motion[i].Turn = r3.Scale(scale, log.Motion[i].Turn)
		}
	}
	if n := dropTurnSpikes(log.Motion); n > 0 {
		say(n, fmt.Sprintf("a turn rate above %d rad/s cannot be; it is taken as absent", mostTurn))
	}
	down := yaw.Known && yaw.Down
	switch {
	case axes == AxesDown:
		turnOver(log.Motion)
	case axes == AxesUp && down:
		say(1, "bends say that specific force points down at rest, and it was told to point up; that is believed, so left and right may be exchanged")
	case axes == "" && down:
		say(1, "specific force points down at rest, as bends show, and is turned over")
		turnOver(log.Motion)
	case axes == "" && !yaw.Known:
		if HasTurn(log.Motion) {
			say(1, "nothing tells whether specific force points up or down, neither words nor a bend; it is taken as up (only left and right depend on it)")
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
