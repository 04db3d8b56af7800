package shell_test

import (
	"testing"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
)

// TestPlanningATest makes a plan that is sufficient and one that cannot
// succeed.
func TestPlanningATest(t *testing.T) {
	h := open(t, platformtest.NewMemory(), quiet, &outlet{})
	h.touch("Compare")
	h.touch("Plan a test")
	h.touch("20 %")
	h.await("pairs with each setup will do")
	h.touch("2 %")
	h.touch("Breezy")
	h.await("This plan cannot show it")
	h.await("A calmer day, with half the wind")
	h.touch("Top speed")
	h.await("Top speed so far, about")
	h.touch("Time")
	h.await("timed after 1 ft")
	h.touch("Power")
	h.await("Full throttle in one gear from")
	h.touch("Back")
	h.await("Nothing to compare yet")
	h.touch("Rides compared")
	h.await("No other ride has been measured yet")
}

// TestABikeByItsParts enters a bike by tyres, wheels, teeth and fuel, once
// wrongly, and checks that it is stored.
func TestABikeByItsParts(t *testing.T) {
	files := platformtest.NewMemory()
	h := open(t, files, quiet, &outlet{})
	h.touch("Bikes")
	h.touch("Add a bike")
	for i, text := range map[int]string{0: "test bike", 1: "290", 6: "120/70 R17", 7: "wide", 8: "10", 9: "13", 10: "44/70", 11: "13/37, 16/32", 12: "16/40",
		13: "10500", 14: "3", 15: "4.6"} {
		h.typeInto(i, text)
	}
	h.touch("Save")
	h.await("Write a tyre size like this")
	h.typeInto(7, "180/55 R17")
	h.touch("Save")
	h.await("Consumption needs the speed")
	h.typeInto(16, "100")
	h.touch("Save")
	h.await("290 kg as ridden")
	list, problems := store.NewBikes(files, platform.NewSystemClock()).List()
	if len(list) != 1 || len(problems) > 0 {
		t.Fatalf("kept %v, %v", list, problems)
	}
	b := list[0]
	if b.Wheels == nil || b.Wheels.RearTyre != "180/55 R17" || b.Box == nil || len(b.Box.Gears) != 2 || b.LimitRPM == nil || *b.LimitRPM != 10500 || b.Cylinders != 3 {
		t.Errorf("kept %+v", b)
	}
	if b.Fuel == nil || b.Fuel.LitresPer100Km != 4.6 || b.Fuel.SpeedMPS < 27.77 || b.Fuel.SpeedMPS > 27.78 { // 100 km/h
		t.Errorf("kept %+v", b.Fuel)
	}
	if r := b.Ride("", store.Air{}.SI()); len(r.Gears) != 2 || !(r.RotatingMass > 10) {
		t.Errorf("a ride gets %+v", r)
	}
}
