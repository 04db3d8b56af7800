package shell_test

import (
	"bytes"
	"testing"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/export/session"
)

// TestARideIsComputedAnewWithOtherValues has a ride measured, changes its mass
// and has it measured anew: the results say so, and the recording stays as it is
// to the byte.
func TestARideIsComputedAnewWithOtherValues(t *testing.T) {
	if testing.Short() {
		t.Skip("measures a whole ride three times")
	}
	files := platformtest.NewMemory()
	sessions := store.NewSessions(files, platform.NewSystemClock())
	ride := shortRide(t)
	id, f, err := sessions.Begin(store.About{Name: "to be weighed"})
	if err != nil {
		t.Fatal(err)
	}
	told := ride.Log.Ride
	told.Mass, told.MassSD = 290, 3
	w, err := session.NewWriter(session.ToFile(f), session.Header{}, told)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range ride.Log.Motion {
		w.Motion(m)
	}
	for _, x := range ride.Log.Fixes {
		w.Fix(x)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	_, before, err := sessions.Bytes(id)
	if err != nil {
		t.Fatal(err)
	}
	h := open(t, files, quiet, &outlet{})
	h.touch("Results")
	h.touch("to be weighed")
	h.await("Computed with 290 kg ± 3 kg")
	h.await("That is as recorded.")
	h.touch("Name, notes, share")
	h.touch("Values it is computed with")
	h.typeInto(0, "300")
	h.touch("Save")
	h.await("Computed with 300 kg ± 3 kg")
	h.await("You changed values after the ride")
	h.touch("Name, notes, share")
	h.touch("Values it is computed with")
	h.touch("As recorded")
	h.await("Computed with 290 kg ± 3 kg")
	_, after, err := sessions.Bytes(id)
	if err != nil || !bytes.Equal(before, after) {
		t.Errorf("the recording changed (%v)", err)
	}
}
