package plain

import (
	"bytes"
	"encoding/csv"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"github.com/tidwall/gjson"
	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/internal/repair"
)

// random returns a log with full digits in every number, and with each field
// sometimes absent.
func random(seed uint64) *sensors.Log {
	rng := rand.New(rand.NewPCG(seed, 7))
	maybe := func(v float64) float64 {
		if rng.IntN(4) == 0 {
			return math.NaN()
		}
		return v
	}
	turns := rng.IntN(3) > 0
	at := rng.NormFloat64() * 1e4
	log := &sensors.Log{}
	for range 400 {
		at += rng.ExpFloat64() / 100
		m := sensors.Motion{T: at, Force: r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: 9.8 + rng.NormFloat64()},
			Turn: r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}}
		if turns && rng.IntN(9) > 0 {
			m.Turn = r3.Vec{X: rng.NormFloat64() / 3, Y: rng.NormFloat64() * 1e-12, Z: rng.NormFloat64()}
		}
		log.Motion = append(log.Motion, m)
	}
	at = log.Motion[0].T
	for range 30 {
		at += 0.02 + rng.Float64()/20
		f := sensors.Fix{T: at, Speed: 40 * rng.Float64(), SpeedSD: maybe(rng.Float64()), LatDeg: math.NaN(), LonDeg: math.NaN(),
			HSD: maybe(5 * rng.Float64()), Alt: maybe(1000 * rng.NormFloat64()), BearingDeg: maybe(360 * rng.Float64())}
		if rng.IntN(3) > 0 {
			f.LatDeg, f.LonDeg = 90*(2*rng.Float64()-1), 180*(2*rng.Float64()-1)
		}
		if rng.IntN(3) > 0 {
			f.UTC = time.Unix(1.7e9+rng.Int64N(1e7), rng.Int64N(1e9)).UTC()
		}
		log.Fixes = append(log.Fixes, f)
		log.Pressure = append(log.Pressure, sensors.Pressure{T: at, Pa: 1e5 + rng.NormFloat64()*1000})
	}
	log.Ride = sensors.Ride{Bike: "blue \"naked\" 700, ü\n", Mass: maybe(200 + 100*rng.Float64()), MassSD: maybe(3 * rng.Float64()),
		RotatingMass: maybe(10 * rng.Float64()), WindSD: maybe(rng.Float64()), LimitRPM: maybe(1000 + 9000*rng.Float64()), Cylinders: rng.IntN(5), Axes: repair.AxesUp,
		Station: sensors.Wind{Speed: maybe(10 * rng.Float64()), FromDeg: maybe(360 * rng.Float64())},
		Air:     sensors.Air{Temperature: maybe(20 * rng.NormFloat64()), TemperatureEnd: maybe(20 * rng.NormFloat64()), Pressure: maybe(1e5 + 1000*rng.NormFloat64()), Humidity: maybe(rng.Float64())},
		Gears:   []sensors.Gear{{Name: "4", RPMPerMPS: 165 * (0.5 + rng.Float64())}, {Name: "top", RPMPerMPS: 100}},
		Setups:  []sensors.Setup{{From: rng.Float64(), Name: "panniers off", Mass: math.NaN(), Tyres: "2.5 bar", Notes: "strap\n„loose“"}, {From: 10 + rng.Float64(), Name: "", Mass: 300 + rng.Float64()}}}
	return log
}

// TestWhatIsWrittenIsReadBack to the last bit, from a folder and from a zip.
func TestWhatIsWrittenIsReadBack(t *testing.T) {
	for seed := range uint64(40) {
		want := random(seed)
		dir := filepath.Join(t.TempDir(), "ride")
		if err := Write(dir, want); err != nil {
			t.Fatal(err)
		}
		fromFolder, err := Read(dir)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		var z bytes.Buffer
		if err := WriteZip(&z, want); err != nil {
			t.Fatal(err)
		}
		fromZip, err := ReadZip(bytes.NewReader(z.Bytes()), int64(z.Len()), "ride.zip")
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		for name, got := range map[string]*sensors.Log{"folder": fromFolder, "zip": fromZip} {
			if d := differs(got, want); d != "" {
				t.Fatalf("seed %d, %s: %s", seed, name, d)
			}
		}
	}
}

// differs compares bit by bit, with NaN equal to NaN.
func differs(a, b *sensors.Log) string {
	for _, part := range []struct {
		name string
		a, b any
	}{{"motion", a.Motion, b.Motion}, {"fixes", a.Fixes, b.Fixes}, {"pressure", a.Pressure, b.Pressure}, {"ride", a.Ride, b.Ride}} {
		if d := bitwise(reflect.ValueOf(part.a), reflect.ValueOf(part.b)); d != "" {
			return part.name + d
		}
	}
	return ""
}

func bitwise(a, b reflect.Value) string {
	switch a.Kind() {
	case reflect.Float64:
		if x, y := a.Float(), b.Float(); math.Float64bits(x) != math.Float64bits(y) && !(math.IsNaN(x) && math.IsNaN(y)) {
			return " is not the same number"
		}
	case reflect.Slice:
		if a.Len() != b.Len() {
			return " has another length"
		}
		for i := range a.Len() {
			if d := bitwise(a.Index(i), b.Index(i)); d != "" {
				return "[]" + d
			}
		}
	case reflect.Struct:
		if at, ok := a.Interface().(time.Time); ok {
			if !at.Equal(b.Interface().(time.Time)) {
				return " is another time"
			}
			return ""
		}
		for i := range a.NumField() {
			if d := bitwise(a.Field(i), b.Field(i)); d != "" {
				return "." + a.Type().Field(i).Name + d
			}
		}
	default:
		if !a.Equal(b) {
			return " is another value"
		}
	}
	return ""
}

// TestWrittenFilesAreStandard: Go's own CSV reader, an independent
// implementation of RFC 4180, reads as many rows as were written; the ride is
// valid JSON.
func TestWrittenFilesAreStandard(t *testing.T) {
	log := random(3)
	dir := t.TempDir()
	if err := Write(dir, log); err != nil {
		t.Fatal(err)
	}
	for name, rows := range map[string]int{motionFile: len(log.Motion), gnssFile: len(log.Fixes), pressureFile: len(log.Pressure)} {
		b, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		records, err := csv.NewReader(bytes.NewReader(b)).ReadAll()
		if err != nil || len(records) != rows+1 {
			t.Errorf("%s: %d records, %v; want %d", name, len(records), err, rows+1)
		}
		if bytes.Count(b, []byte("\r\n")) != rows+1 {
			t.Errorf("%s: lines do not end as RFC 4180 has it", name)
		}
	}
	b, err := os.ReadFile(filepath.Join(dir, rideFile))
	if err != nil || !gjson.ValidBytes(b) {
		t.Errorf("ride.json: %v\n%s", err, b)
	}
}

func TestWriteReportsAFullDisk(t *testing.T) {
	if err := WriteZip(fullDisk{}, random(1)); err == nil {
		t.Error("no error although nothing could be written")
	}
	if err := Write("/dev/null/ride", random(1)); err == nil {
		t.Error("no error for a folder that cannot be made")
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, os.ErrClosed }
