package shell_test

import (
	"testing"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/sensors"
)

// TestABikeThatNeverRollsFree: the drive is entered in the form of a bike and
// stored; the guide to coast-downs and their plan are replaced by what can be
// measured.
func TestABikeThatNeverRollsFree(t *testing.T) {
	files := platformtest.NewMemory()
	bikes := store.NewBikes(files, platform.NewSystemClock())
	mass := 300.0
	if _, err := bikes.Put(store.Bike{Name: "test bike", Mass: &mass}); err != nil {
		t.Fatal(err)
	}
	h := open(t, files, quiet, &outlet{})
	h.touch("More")
	h.touch("Guide to the first coast-down")
	h.await("Your first coast-down")
	h.touch("Back")
	h.touch("Bikes")
	h.touch("test bike")
	h.await("Drive")
	h.touch("Electric")
	h.touch("Save")
	h.await("Add a bike")
	all, err := bikes.List()
	if err != nil || len(all) != 1 || all[0].Drive != string(sensors.DriveElectric) {
		t.Fatalf("kept %+v, %v", all, err)
	}
	h.touch("More")
	h.touch("Guide to the first coast-down")
	h.await("The motor of an electric bike")
	h.touch("Back")
	h.touch("Compare")
	h.touch("Plan")
	h.await("Power")
	h.touch("Drag")
	h.await("This bike never rolls free")
}
