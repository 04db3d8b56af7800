package view

import (
	"strings"
	"testing"

	"stillair/app/recorder"
	"stillair/app/text"
	"stillair/sensors"
)

// TestSoundIsSpokenOfOnlyWhereItIsUsed checks what is said about the
// microphone, and that a ride can begin whatever its condition.
func TestSoundIsSpokenOfOnlyWhereItIsUsed(t *testing.T) {
	c := Context{Book: text.English()}
	for _, tt := range []struct {
		name  string
		sense recorder.Sense
		words string
	}{
		{"not used", recorder.Sense{}, ""},
		{"works", recorder.Sense{Condition: sensors.Working}, c.Book.Hearing.Good},
		{"too loud", recorder.Sense{Condition: sensors.Working, Clipped: 0.3}, c.Book.Hearing.Loud},
		{"denied", recorder.Sense{Condition: sensors.Denied}, c.Book.Hearing.Denied},
		{"missing", recorder.Sense{Condition: sensors.Missing}, c.Book.Hearing.Missing},
		{"dies", recorder.Sense{Condition: sensors.Silent}, c.Book.Hearing.Silenced},
	} {
		tt.sense.Sensor = sensors.SensorSound
		fix := recorder.Sense{Sensor: sensors.SensorFix, Condition: sensors.Working, HSD: 3, Rate: 1}
		r := c.Ready(ReadyState{Senses: []recorder.Sense{fix, tt.sense}, Free: 1 << 40})
		said := ""
		for _, l := range r.Senses {
			if l.Sensor == sensors.SensorSound {
				said = l.Words
			}
		}
		if said != tt.words || !r.CanStart {
			t.Errorf("%s: says %q, want %q; can start: %v", tt.name, said, tt.words, r.CanStart)
		}
	}
}

// TestSoundTakesRoom checks that the stated recording time is shorter with sound.
func TestSoundTakesRoom(t *testing.T) {
	c := Context{Book: text.English()}
	detail := func(condition sensors.Condition) string {
		return c.storageLine(10*BytesPerHour, []recorder.Sense{{Sensor: sensors.SensorSound, Condition: condition}}).Words
	}
	without, with := detail(sensors.Missing), detail(sensors.Working)
	for _, tt := range []struct{ got, hours string }{{without, c.Duration(36000)}, {with, c.Duration(36000.0 * 12 / 23)}} {
		if !strings.Contains(tt.got, tt.hours) {
			t.Errorf("says %q, want %s in it", tt.got, tt.hours)
		}
	}
}
