package input

import (
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/plain"
	"stillair/sensors/sim"
)

// memory is a session's store.
type memory struct{ bytes.Buffer }

func (m *memory) Append(p []byte) error { _, err := m.Write(p); return err }
func (m *memory) Sync() error           { return nil }

// recordings writes one simulated ride in every form into a folder.
func recordings(t *testing.T) (dir string, log *sensors.Log) {
	t.Helper()
	for _, p := range sim.Presets() {
		if p.Name != "roll-ons" {
			continue
		}
		ride, err := sim.Run(p.Scenario(sim.Naked()), 1)
		if err != nil {
			t.Fatal(err)
		}
		log = minute(ride.Log)
	}
	dir = t.TempDir()
	put := func(name string, data []byte) {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	var m memory
	var zip, text bytes.Buffer
	if err := errors.Join(session.Write(&m, log, session.Header{ID: session.ID{1}, Origin: "simulated"}), plain.WriteZip(&zip, log), plain.Write(filepath.Join(dir, "folder"), log)); err != nil {
		t.Fatal(err)
	}
	gz, err := gzip.NewReader(bytes.NewReader(m.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := io.Copy(&text, gz); err != nil {
		t.Fatal(err)
	}
	put("session", m.Bytes()) // recognised by its content, not its name
	put("unpacked.txt", text.Bytes())
	put("log.dat", zip.Bytes())
	put("browser", []byte(browserLines(60)))
	put("sentences", []byte(sentences(60)))
	put("results.json", []byte(`{"version": 1, "defaults": [], "runs": []}`))
	put("picture", []byte("\x89PNG\r\n\x1a\n\x00"))
	return dir, log
}

// minute returns the log's first minute.
func minute(log *sensors.Log) *sensors.Log {
	end := log.Motion[0].T + 60
	out := &sensors.Log{Ride: log.Ride}
	for _, m := range log.Motion {
		if m.T < end {
			out.Motion = append(out.Motion, m)
		}
	}
	for _, f := range log.Fixes {
		if f.T < end {
			out.Fixes = append(out.Fixes, f)
		}
	}
	for _, p := range log.Pressure {
		if p.T < end {
			out.Pressure = append(out.Pressure, p)
		}
	}
	return out
}

// TestEveryForm opens the ride in every form and expects the same samples.
func TestEveryForm(t *testing.T) {
	dir, log := recordings(t)
	tests := []struct {
		name string
		kind Kind
	}{
		{"session", Session}, {"unpacked.txt", Session}, {"log.dat", PlainLog}, {"folder", PlainLog}, {"folder/motion.csv", PlainLog},
	}
	for _, tt := range tests {
		r, err := Open(filepath.Join(dir, tt.name))
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		if r.Kind != tt.kind || len(r.Log.Motion) != len(log.Motion) || len(r.Log.Fixes) != len(log.Fixes) || len(r.Log.Pressure) != len(log.Pressure) {
			t.Errorf("%s: a %s of %d motion, %d fixes, %d pressures; want %d, %d, %d", tt.name, r.Kind, len(r.Log.Motion), len(r.Log.Fixes), len(r.Log.Pressure),
				len(log.Motion), len(log.Fixes), len(log.Pressure))
		}
		if r.Log.Ride.Bike != log.Ride.Bike || r.Log.Ride.Mass != log.Ride.Mass {
			t.Errorf("%s: ride %+v", tt.name, r.Log.Ride)
		}
		if (r.Session != nil) != (tt.kind == Session) {
			t.Errorf("%s: session %v", tt.name, r.Session)
		}
	}
}

// TestOthers checks that a file that is not a recording is refused with its kind.
func TestOthers(t *testing.T) {
	dir, _ := recordings(t)
	for name, says := range map[string]string{"results.json": "input.results", "picture": "input.not_text", "none": "input.no_such_file"} {
		_, err := Open(filepath.Join(dir, name))
		var input *sensors.InputError
		if !errors.As(err, &input) || !strings.Contains(err.Error(), says) || input.Remedy.IsZero() || !strings.Contains(input.File, name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// browserLines is what a page writes with the names of the W3C.
func browserLines(seconds int) string {
	var b strings.Builder
	for i := range seconds {
		for k := range 10 {
			fmt.Fprintf(&b, `{"accelerationIncludingGravity":{"x":0.1,"y":0.2,"z":9.8},"rotationRate":{"alpha":0,"beta":0,"gamma":0},"interval":100,"timeStamp":%d}`+"\n", 1000*i+100*k)
		}
		fmt.Fprintf(&b, `{"coords":{"latitude":48.1,"longitude":11.5,"speed":12.5,"accuracy":5},"timestamp":%d,"timeStamp":%d}`+"\n", 1781438400000+1000*i, 1000*i+250)
	}
	return b.String()
}

// sentences is what a receiver writes, with the time of arrival before each.
func sentences(seconds int) string {
	var b strings.Builder
	for i := range seconds {
		body := fmt.Sprintf("GPRMC,1200%02d.00,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W", i)
		sum := byte(0)
		for _, c := range []byte(body) {
			sum ^= c
		}
		fmt.Fprintf(&b, "%d.250,$%s*%02X\r\n", i, body, sum)
	}
	return b.String()
}

// TestStreams opens what a browser and what a receiver wrote.
func TestStreams(t *testing.T) {
	dir, _ := recordings(t)
	for _, tt := range []struct {
		name          string
		kind          Kind
		motion, fixes int
	}{{"browser", JSONLines, 600, 60}, {"sentences", NMEA, 0, 60}} {
		r, err := Open(filepath.Join(dir, tt.name))
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		if r.Kind != tt.kind || len(r.Log.Motion) != tt.motion || len(r.Log.Fixes) != tt.fixes {
			t.Errorf("%s: a %s of %d motion and %d fixes", tt.name, r.Kind, len(r.Log.Motion), len(r.Log.Fixes))
		}
	}
}
