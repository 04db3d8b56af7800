package shell_test

import (
	"testing"
	"time"

	"stillair/app/platform/platformtest"
	"stillair/app/store"
)

// TestStationWindIsKept enters the wind at a weather station: it is kept with the
// time. A direction above 360° is refused.
func TestStationWindIsKept(t *testing.T) {
	files := platformtest.NewMemory()
	h := open(t, files, quiet, &outlet{})
	h.touch("Air today")
	h.await("Only if one is near")
	h.typeInto(4, "4.5")
	h.typeInto(5, "361")
	h.typeInto(5, "230")
	var c store.Choices
	for deadline := time.Now().Add(10 * time.Second); c.Station.From == nil && time.Now().Before(deadline); time.Sleep(10 * time.Millisecond) {
		var err error
		if c, err = store.ReadChoices(files); err != nil {
			t.Fatal(err)
		}
	}
	if w := c.Station.SI(); w.Speed != 4.5 || w.FromDeg != 230 {
		t.Fatalf("kept %+v, want 4.5 m/s from 230°", w)
	}
	if c.AirEntered.Station.IsZero() {
		t.Error("when it was typed is not kept")
	}
}
