package view

import (
	"stillair/app/recorder"
	"stillair/runs"
	"stillair/sensors"
)

// oftenLoud is the share of the time from which sound counts as too loud.
const oftenLoud = 0.05

// soundLine states the condition of the microphone; Absent if it is not used.
func (c Context) soundLine(x recorder.Sense) SenseLine {
	t := c.Book.Hearing
	l := SenseLine{Sensor: sensors.SensorSound, Title: c.named(runs.FromSound), Words: t.Wait, Detail: c.senseDetail(x)}
	switch x.Condition {
	case "":
		l.Grade = Absent
	case sensors.Denied:
		l.Words, l.Grade = t.Denied, Doubtful
	case sensors.Missing:
		l.Words, l.Grade = t.Missing, Doubtful
	case sensors.Silent:
		l.Words, l.Grade = t.Silenced, Doubtful
	case sensors.Working:
		l.Words, l.Grade = t.Good, Fine
		if x.Clipped > oftenLoud {
			l.Words = t.Loud
		}
	case sensors.Asking:
		l.Words = c.Book.Senses.Asking
	}
	return l
}
