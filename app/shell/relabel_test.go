package shell_test

import (
	"bytes"
	"fmt"
	"math"
	"testing"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/sensors/sim"
)

// TestSetupsAreToldAfterTheRide records the invented ride without entering the
// second screen, names both setups afterwards, and gets the answer; the
// recording is unchanged to the byte.
func TestSetupsAreToldAfterTheRide(t *testing.T) {
	if testing.Short() {
		t.Skip("measures a whole ride twice")
	}
	ride, err := sim.Run(sim.DemoScenario(sim.Naked()), 1)
	if err != nil {
		t.Fatal(err)
	}
	begin, changed := ride.Log.Motion[0].T, ride.Log.Ride.Setups[1:]
	ride.Log.Ride.Setups = nil
	files := platformtest.NewMemory()
	sessions := store.NewSessions(files, platform.NewSystemClock())
	id := recordedRide(t, sessions, ride, store.About{Name: "nothing said"})
	_, before, err := sessions.Bytes(id)
	if err != nil {
		t.Fatal(err)
	}
	h := open(t, files, quiet, &outlet{})
	h.touch("Results")
	h.touch("nothing said")
	h.await("Calculated with 290 ± 6 kg")
	h.touch("Name, notes, share")
	h.touch("Setups of this ride")
	h.touch("no setup named")
	h.typeInto(0, "short screen")
	h.touch("Save")
	for _, x := range changed {
		at := math.Ceil(x.From - begin)
		h.touch("Another setup from a given time")
		h.typeInto(0, "99:99")
		h.typeInto(1, x.Name)
		h.touch("Save")
		h.await("Write minutes and seconds")
		h.typeInto(0, fmt.Sprintf("%d:%02d", int(at)/60, int(at)%60))
		h.touch("Save")
	}
	h.await("Did the weight change?")
	h.touch("tall screen")
	h.typeInto(1, "290")
	h.touch("Save")
	h.touch("Save")
	h.await("tall screen, against short screen")
	h.await("more drag")
	_, after, err := sessions.Bytes(id)
	if err != nil || !bytes.Equal(before, after) {
		t.Errorf("the recording changed (%v)", err)
	}
	ses, err := sessions.Get(id)
	if err != nil || ses.About.Values == nil || len(ses.About.Values.Setups) != len(changed)+1 {
		t.Fatalf("kept %+v, %v", ses.About.Values, err)
	}
	for _, s := range ses.About.Values.Setups {
		if s.Name == "tall screen" && (s.Mass == nil || *s.Mass != 290) {
			t.Errorf("the weight of %+v is lost", s)
		}
	}
}
