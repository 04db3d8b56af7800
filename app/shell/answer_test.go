package shell_test

import (
	"testing"

	"stillair/app/platform/platformtest"
)

// TestAnswerOfARide opens the invented ride, which has two setups, finds the
// answer on its page, and goes from there to the whole comparison.
func TestAnswerOfARide(t *testing.T) {
	if testing.Short() {
		t.Skip("measures a whole ride")
	}
	h := open(t, platformtest.NewMemory(), quiet, &outlet{})
	h.touch("Results")
	h.touch("Look at an invented ride")
	h.await("more drag")
	h.await("Sure (95 %: ")
	h.await("Power at 120 km/h: +")
	h.touch("tall screen, against")
	h.await("What that means on the road")
}
