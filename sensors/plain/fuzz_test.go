package plain

import (
	"bytes"
	"errors"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/spoil"
)

// mustBeSound fails unless there is either an InputError with a remedy or a
// valid log.
func mustBeSound(t *testing.T, log *sensors.Log, err error) {
	t.Helper()
	var input *sensors.InputError
	if err != nil {
		if !errors.As(err, &input) || input.Remedy.IsZero() {
			t.Fatalf("an error without a remedy: %v", err)
		}
		return
	}
	last := math.Inf(-1)
	for _, m := range log.Motion {
		if !(m.T > last) || math.IsInf(m.T, 0) || !(r3.Norm(m.Force) < 1000) || !m.HasTurn() && !math.IsNaN(m.Turn.X) {
			t.Fatalf("motion %+v after %g", m, last)
		}
		last = m.T
	}
	last = math.Inf(-1)
	for _, f := range log.Fixes {
		if !(f.T > last) || !(f.Speed >= 0 && f.Speed <= 150) || math.IsNaN(f.LatDeg) != math.IsNaN(f.LonDeg) || f.BearingDeg >= 360 || f.BearingDeg < 0 {
			t.Fatalf("fix %+v after %g", f, last)
		}
		last = f.T
	}
	last = math.Inf(-1)
	for _, p := range log.Pressure {
		if !(p.T > last) || !(p.Pa >= leastPa && p.Pa <= mostPa) {
			t.Fatalf("pressure %+v after %g", p, last)
		}
		last = p.T
	}
}

// small is the good log cut to a few rows, as seed.
func small(name string, rows int) string {
	lines := strings.SplitAfter(string(sheet(nil)[name].Data), "\n")
	return strings.Join(lines[:rows], "")
}

func FuzzRead(f *testing.F) {
	motion, gnss, pressure := small(motionFile, 20), small(gnssFile, 5), small(pressureFile, 5)
	f.Add(motion, gnss, pressure, `{"axes": "specific force down", "setups": [{"from_s": 3}]}`)
	f.Add(strings.ReplaceAll(motion, ".", ""), strings.ReplaceAll(gnss, "20", "2e1"), "", "")
	f.Add(strings.ReplaceAll(motion, "9.79", `"9.79"`), gnss, "t_s,pressure_pa\n1,1013.25\n0,1013", `{}`)
	f.Add("t_s,ax_mps2,ay_mps2,az_mps2\n1e308,0,0,9.8\n-1e308,0,0,9.8\n0,NaN,inf,\n", gnss, pressure, `{"mass_kg": 1e400}`)
	f.Fuzz(func(t *testing.T, motion, gnss, pressure, ride string) {
		fsys := fstest.MapFS{}
		for name, text := range map[string]string{motionFile: motion, gnssFile: gnss, pressureFile: pressure, rideFile: ride} {
			if text != "" || name == motionFile {
				fsys[name] = &fstest.MapFile{Data: []byte(text)}
			}
		}
		log, err := ReadFS(fsys, "ride")
		mustBeSound(t, log, err)
		if err != nil {
			return
		}
		// A log that was read can be written and read again.
		var b bytes.Buffer
		if err := WriteZip(&b, log); err != nil {
			t.Fatal(err)
		}
		again, err := ReadZip(bytes.NewReader(b.Bytes()), int64(b.Len()), "ride.zip")
		mustBeSound(t, again, err)
	})
}

func FuzzZip(f *testing.F) {
	var b bytes.Buffer
	log, err := ReadFS(sheet(nil), "ride")
	if err != nil {
		f.Fatal(err)
	}
	log.Motion, log.Fixes, log.Pressure = log.Motion[:20], log.Fixes[:1], nil
	if err := WriteZip(&b, log); err != nil {
		f.Fatal(err)
	}
	f.Add(b.Bytes())
	f.Add([]byte("PK\x05\x06" + strings.Repeat("\x00", 18)))
	f.Fuzz(func(t *testing.T, b []byte) {
		log, err := ReadZip(bytes.NewReader(b), int64(len(b)), "ride.zip")
		mustBeSound(t, log, err)
	})
}

func FuzzDecodeRide(f *testing.F) {
	f.Add(`{"version": 1, "bike": "b", "mass_kg": 290, "air": {"pressure_hpa": 1009, "humidity_pct": 57}, "gears": [{"name": "4", "rpm_per_mps": 165}], "setups": [{"from_s": 0, "mass_kg": 300.5}]}`)
	f.Add(`{"mass_kg": 2.9e2, "air": {"humidity_pct": 1E+1}, "wind_sd_mps": 0.1e-5}`)
	f.Fuzz(func(t *testing.T, text string) {
		ride, _, err := DecodeRide([]byte(text), "ride.json")
		var input *sensors.InputError
		if err != nil {
			if !errors.As(err, &input) || input.Remedy.IsZero() {
				t.Fatalf("an error without a remedy: %v", err)
			}
			return
		}
		again, _, err := DecodeRide(EncodeRide(ride), "again")
		if err != nil {
			t.Fatalf("what was written is not read: %v\n%s", err, EncodeRide(ride))
		}
		if ride.Axes != "" {
			ride.Axes = again.Axes // a log in memory is written, whose force points up
		}
		if d := differs(&sensors.Log{Ride: again}, &sensors.Log{Ride: ride}); d != "" {
			t.Fatalf("%s: %+v became %+v", d, ride, again)
		}
	})
}

// FuzzFields reads logs with changed rows and fields.
func FuzzFields(f *testing.F) {
	f.Add([]byte{1, 2, 70}, []byte{9, 80, 90}, []byte{3, 3, 3})
	f.Add([]byte{0, 0, 20, 90, 0, 66, 200, 128, 69}, []byte{40, 100, 81}, []byte{})
	motion, gnss, pressure := small(motionFile, 20), small(gnssFile, 6), small(pressureFile, 5)
	f.Fuzz(func(t *testing.T, m, g, p []byte) {
		fsys := fstest.MapFS{motionFile: {Data: []byte(spoil.Text(motion, ",", m))}, gnssFile: {Data: []byte(spoil.Text(gnss, ",", g))},
			pressureFile: {Data: []byte(spoil.Text(pressure, ",", p))}}
		log, err := ReadFS(fsys, "ride")
		mustBeSound(t, log, err)
	})
}
