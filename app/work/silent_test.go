package work

import (
	"bytes"
	"crypto/rand"
	"testing"

	"stillair/export/session"
	"stillair/sensors"
)

// TestASharedRideIsSilent checks that a shared ride has no sound, and everything
// else.
func TestASharedRideIsSilent(t *testing.T) {
	log := &sensors.Log{Ride: sensors.UnknownRide()}
	for i := range 50 {
		log.Fixes = append(log.Fixes, sensors.NewFix(float64(i), 20))
		log.Sound = append(log.Sound, sensors.Sound{T: float64(i), Rate: sensors.SoundRate, Level: []int16{1, 2, 3}})
	}
	rec := &session.Recording{Log: log, Name: "to the lake", Remarks: []session.Remark{{T: 3, Text: "rain"}}}
	data, err := silent([]byte("as recorded"), rec, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	got, err := session.Read(bytes.NewReader(data), "shared")
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Log.Sound) != 0 || len(got.Log.Fixes) != 50 || got.Name != "to the lake" || len(got.Remarks) != 1 {
		t.Errorf("shared %d stretches of sound, %d fixes, %q, %v", len(got.Log.Sound), len(got.Log.Fixes), got.Name, got.Remarks)
	}
	if len(log.Sound) != 50 {
		t.Error("the recording itself was changed")
	}
	log.Sound = nil
	if data, err := silent([]byte("as recorded"), rec, rand.Reader); err != nil || string(data) != "as recorded" {
		t.Errorf("a ride without sound is shared as %q, %v", data, err)
	}
}
