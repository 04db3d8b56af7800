package shell_test

import (
	"bytes"
	"math"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/sim"
)

// TestARideIsComputedAnewWithOtherValues measures a ride, changes its mass and
// measures it again: the results say so, and the recording is unchanged to the
// byte.
func TestARideIsComputedAnewWithOtherValues(t *testing.T) {
	if testing.Short() {
		t.Skip("measures a whole ride three times")
	}
	files := platformtest.NewMemory()
	sessions := store.NewSessions(files, platform.NewSystemClock())
	id := recordedRide(t, sessions, shortRide(t), store.About{Name: "to be weighed"})
	_, before, err := sessions.Bytes(id)
	if err != nil {
		t.Fatal(err)
	}
	h := open(t, files, quiet, &outlet{})
	h.touch("Results")
	h.touch("to be weighed")
	h.await("Calculated with 290 ± 6 kg")
	h.await("These are the recorded values.")
	h.touch("Name, notes, share")
	h.touch("Values used in the calculation")
	h.typeInto(0, "300")
	h.touch("Save")
	h.await("Calculated with 300 ± 6 kg")
	h.await("You changed values after the ride")
	h.touch("Name, notes, share")
	h.touch("Values used in the calculation")
	h.touch("As recorded")
	h.await("Calculated with 290 ± 6 kg")
	_, after, err := sessions.Bytes(id)
	if err != nil || !bytes.Equal(before, after) {
		t.Errorf("the recording changed (%v)", err)
	}
}

// recordedRide is a closed session of a ride of 290 kg.
func recordedRide(t *testing.T, sessions *store.Sessions, ride *sim.Ride, about store.About) string {
	t.Helper()
	id, f, err := sessions.Begin(about)
	if err != nil {
		t.Fatal(err)
	}
	recorded := ride.Log.Ride
	recorded.Mass, recorded.MassSD = 290, 3
	w, err := session.NewWriter(session.ToFile(f), session.Header{ID: session.ID{1}}, recorded)
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
	return id
}

// TestGearsAndBikeOfARideAreChanged changes a gear of a ride, adds another, and
// then applies the bike's present values.
func TestGearsAndBikeOfARideAreChanged(t *testing.T) {
	files := platformtest.NewMemory()
	sessions, bikes := store.NewSessions(files, platform.NewSystemClock()), store.NewBikes(files, platform.NewSystemClock())
	mass, lighter := 290.0, 280.0
	bike, err := bikes.Put(store.Bike{Name: "test bike", Mass: &mass, Gears: []store.Gear{{Name: "1", RPMPerMPS: 360}}})
	if err != nil {
		t.Fatal(err)
	}
	id := riddenWith(t, sessions, bike)
	bike.Mass, bike.Gears = &lighter, []store.Gear{{Name: "1", RPMPerMPS: 342}}
	if _, err := bikes.Put(bike); err != nil {
		t.Fatal(err)
	}
	h := open(t, files, quiet, &outlet{})
	values := func(want func(store.Values) bool) {
		t.Helper()
		for end := time.Now().Add(20 * time.Second); ; time.Sleep(20 * time.Millisecond) {
			ses, err := sessions.Get(id)
			if err != nil {
				t.Fatal(err)
			}
			if v := ses.About.Values; v != nil && want(*v) {
				return
			}
			if time.Now().After(end) {
				t.Fatalf("kept %+v", ses.About.Values)
			}
		}
	}
	edit := func() {
		h.await("not measured yet")
		h.touch("test ride")
		h.await("There is no ride")
		h.touch("Name, notes, share")
		h.touch("Values used in the calculation")
	}
	h.touch("Results")
	edit()
	h.typeInto(3, "11000") // at 100 km/h
	h.touch("Add a gear")
	h.typeInto(4, "7200")
	h.touch("Save")
	values(func(v store.Values) bool {
		return v.Mass == nil && v.Gears["1"] != nil && math.Abs(*v.Gears["1"]-396) < 0.1 && v.Gears["2"] != nil
	})
	h.await("There is no ride")
	h.touch("Back")
	edit()
	h.touch("Take test bike as it is now")
	h.touch("Save")
	values(func(v store.Values) bool { return v.Mass != nil && *v.Mass == 280 && *v.Gears["1"] == 342 })
}

// riddenWith is an empty recording made with a bike.
func riddenWith(t *testing.T, sessions *store.Sessions, b store.Bike) string {
	t.Helper()
	id, f, err := sessions.Begin(store.About{Name: "test ride", Bike: b.Name})
	if err != nil {
		t.Fatal(err)
	}
	w, err := session.NewWriter(session.ToFile(f), session.Header{ID: session.ID{1}}, b.Ride("", store.Air{}.SI()))
	if err != nil {
		t.Fatal(err)
	}
	w.Motion(sensors.Motion{T: 1})
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return id
}
