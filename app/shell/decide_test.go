package shell_test

import (
	"testing"

	"stillair/app/platform/platformtest"
)

// TestPlanningATest asks for a plan that will do and for one that cannot
// succeed.
func TestPlanningATest(t *testing.T) {
	h := open(t, platformtest.NewMemory(), quiet, &outlet{})
	h.touch("Compare")
	h.touch("Plan a test")
	h.touch("20 %")
	h.await("pairs with each setup will do")
	h.touch("2 %")
	h.touch("Breezy")
	h.await("It cannot be done like this")
	h.await("A calmer day, with half the wind")
	h.touch("Top speed")
	h.await("It goes about")
	h.touch("Back")
	h.await("Nothing to compare yet")
	h.touch("Rides compared")
	h.await("No other ride was measured yet")
}
