package session

import (
	"math"
	"os"
	"path/filepath"
	"testing"
)

// TestOldRecordings reads recordings that earlier programs wrote: those of the
// first program that wrote session files, and those of the last one of version 1.
// They are invented rides of 70 s (see invented), closed, cut off, and with one
// damaged part. The samples read from them never change.
func TestOldRecordings(t *testing.T) {
	log := invented(70, 4)
	for _, c := range []struct {
		name            string
		motion, fixes   int // as Python's zlib and json count them in the whole members
		sounds, remarks int
		force, speed    float64 // sums over the samples, from the same
		closed          bool
		missing         int
	}{
		{name: "first-closed", motion: 280, fixes: 70, remarks: 1, force: 2750.50156, speed: 681.6209, closed: true},
		{name: "first-cut-off", motion: 274, fixes: 68, force: 2692.41185, speed: 665.3773},
		{name: "first-damaged", motion: 276, fixes: 69, remarks: 1, force: 2715.01752, speed: 677.3781, closed: true, missing: 1},
		{name: "with-sound-closed", motion: 280, fixes: 70, sounds: 140, remarks: 1, force: 2750.50156, speed: 535.72, closed: true},
		{name: "with-sound-cut-off", motion: 274, fixes: 69, sounds: 138, force: 2692.41185, speed: 516.192},
		{name: "with-sound-damaged", motion: 275, fixes: 68, sounds: 138, remarks: 1, force: 2702.08809, speed: 524.865, closed: true, missing: 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, err := os.Open(filepath.Join("testdata", "version1", c.name+".jsonl.gz"))
			if err != nil {
				t.Fatal(err)
			}
			defer f.Close()
			all, err := ReadAll(f, c.name)
			if err != nil || len(all) != 1 {
				t.Fatalf("%d recordings: %v", len(all), err)
			}
			rec := all[0]
			if len(rec.Log.Motion) != c.motion || len(rec.Log.Fixes) != c.fixes || len(rec.Log.Sound) != c.sounds || len(rec.Remarks) != c.remarks ||
				rec.Closed != c.closed || len(rec.Missing) != c.missing || len(rec.Unstored) != 0 {
				t.Errorf("%d of motion, %d fixes, %d of sound, %d remarks, closed %v, missing %v, unstored %v", len(rec.Log.Motion), len(rec.Log.Fixes),
					len(rec.Log.Sound), len(rec.Remarks), rec.Closed, rec.Missing, rec.Unstored)
			}
			if rec.Name != "invented ride" || rec.Header.ID != (ID{}) || rec.Header.Device != "invented phone" || rec.Log.Ride.Mass != 290 || len(rec.Log.Ride.Setups) != 2 {
				t.Errorf("%q, %+v, %+v", rec.Name, rec.Header, rec.Log.Ride)
			}
			force, speed := 0.0, 0.0
			for _, m := range rec.Log.Motion {
				force += m.Force.Z
			}
			for _, f := range rec.Log.Fixes {
				speed += f.Speed
			}
			if math.Abs(force-c.force) > 1e-6 || math.Abs(speed-c.speed) > 1e-6 {
				t.Errorf("sums %.6f and %.6f, want %.6f and %.6f", force, speed, c.force, c.speed)
			}
			if first := rec.Log.Motion[0]; first != log.Motion[0] {
				t.Errorf("the first reading is %v", first)
			}
		})
	}
}
