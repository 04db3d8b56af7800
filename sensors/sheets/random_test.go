package sheets

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"testing/fstest"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/sourcetest"
	"stillair/sensors/spoil"
	"stillair/sensors/units"
)

// choice draws one of several.
func choice[T any](rng *rand.Rand, of ...T) T { return of[rng.IntN(len(of))] }

// randomLayout writes the ride in a random layout: the variants found in
// loggers, in every combination.
func randomLayout(rng *rand.Rand, log *sensors.Log) (string, fstest.MapFS) {
	s := style{separator: choice(rng, byte(','), ';', '\t', '|'), time: choice(rng, 1, 1e-3, 1e-6, 1e-9), epoch: rng.IntN(2) == 0, words: rng.IntN(6) == 0}
	s.comma = s.separator != ',' && rng.IntN(2) == 0
	clock := choice(rng, "time", "timestamp", "t", "Zeit", "elapsed time", "recordedAt time")
	if unit := map[float64]string{1: "s", 1e-3: "ms", 1e-6: "us", 1e-9: "ns"}[s.time]; rng.IntN(2) == 0 && !s.words {
		clock += choice(rng, " ("+unit+")", "_"+unit, " ["+unit+"]")
	}
	force, forceUnit := 1.0, choice(rng, "", " (m/s^2)", "_mps2", " [m/s²]")
	if rng.IntN(2) == 0 {
		force, forceUnit = 1/units.StandardGravity, choice(rng, "", " (g)", " [G]")
	}
	turn, turnUnit := 1.0, choice(rng, "", " (rad/s)", "_radps")
	if rng.IntN(2) == 0 {
		turn, turnUnit = 180/math.Pi, choice(rng, " (deg/s)", "_dps", " [°/s]")
	}
	u := choice(rng, unit{" (m/s)", 1}, unit{"", 1}, unit{"_kmh", units.KMH}, unit{"", units.KMH}, unit{" [mph]", units.MPH}, unit{"", units.MPH}, unit{" (knots)", 1852.0 / 3600}, unit{"", 1852.0 / 3600}, unit{"_fps", 0.3048})
	acc := choice(rng, "acc", "Accelerometer ", "acceleration_", "ACCEL ", "Beschleunigung ")
	gyr := choice(rng, "gyro_", "Gyroscope ", "rotationRate.", "Angular velocity ")
	lat, lon, fast := choice(rng, "lat", "Latitude", "GPS latitude (deg)"), choice(rng, "lon", "lng", "Longitude", "GPS longitude (deg)"), choice(rng, "speed", "Velocity", "gps_speed", "Geschwindigkeit")+u.name
	axes := func(name, unit string) string {
		return name + "x" + unit + "|" + name + "y" + unit + "|" + name + "z" + unit
	}
	said := fmt.Sprintf("%q %v, %s, %s, %s, %s", s.separator, s, clock, axes(acc, forceUnit), axes(gyr, turnUnit), fast)
	if rng.IntN(3) == 0 {
		header := strings.Join([]string{clock, axes(acc, forceUnit), axes(gyr, turnUnit), lat, lon, fast}, "|")
		return "wide " + said, fstest.MapFS{choice(rng, "log.csv", "data.txt", "ride.tsv"): {Data: []byte(s.wide(header, log, force, turn, 1/u.si, rng.IntN(2) == 0))}}
	}
	if rng.IntN(2) == 0 {
		acc, gyr = "", ""
	}
	return said, fstest.MapFS{
		"Accelerometer.csv": {Data: []byte(s.vectors(clock+"|"+axes(acc, forceUnit), log, force, forceOf))},
		"Gyroscope.csv":     {Data: []byte(s.vectors(clock+"|"+axes(gyr, turnUnit), log, turn, turnOf))},
		"Location.csv":      {Data: []byte(s.track(strings.Join([]string{clock, lat, lon, "altitude", "bearing", fast}, "|"), log, 1/u.si))},
	}
}

// TestRandomLayouts: whatever the layout, the same ride gives the same log.
func TestRandomLayouts(t *testing.T) {
	log := invented(t, 1)
	n := 48
	if testing.Short() {
		n = 6
	}
	for seed := range uint64(n) {
		name, fsys := randomLayout(rand.New(rand.NewPCG(seed, 21)), log)
		got, err := ReadFS(fsys, "ride", nil)
		if err == nil {
			err = same(log, got, 0.01, 1e-3)
		}
		if err != nil {
			t.Errorf("seed %d: %s: %v", seed, name, err)
		}
	}
}

// TestGravityApart: with only an acceleration without gravity, the log has only
// fixes, and a note.
func TestGravityApart(t *testing.T) {
	log := invented(t, 1)
	pull := gravities(log)
	bare := *log
	bare.Motion = nil
	for i, m := range log.Motion {
		m.Force = r3.Sub(m.Force, pull[i])
		bare.Motion = append(bare.Motion, m)
	}
	s := style{separator: ',', time: 1}
	fsys := fstest.MapFS{
		"Linear Acceleration.csv": {Data: []byte(s.vectors("Time (s)|x (m/s^2)|y (m/s^2)|z (m/s^2)", &bare, 1, forceOf))},
		"Location.csv":            {Data: []byte(s.track("Time (s)|lat|lon|alt|course|speed", log, 1))},
	}
	got, err := ReadFS(fsys, "ride", nil)
	if err != nil || len(got.Motion) > 0 || len(got.Fixes) < 100 || !hasNote(got, "sheets.without_gravity") {
		t.Errorf("%v, %+v", err, got)
	}
}

// TestOverruled: what was found can be overridden.
func TestOverruled(t *testing.T) {
	log := invented(t, 1)
	s := style{separator: ';', time: 1}
	text := s.table("t|ax|ay|az|gx|gy|gz|lat|lon|v1|speed", len(log.Fixes), func(i int) []string {
		f := log.Fixes[i]
		return []string{s.moment(f.T), "0", "0", "9.8", "0", "0", "0", s.number(f.LatDeg), s.number(f.LonDeg), s.number(f.Speed * 3.6), "5"}
	})
	fsys := fstest.MapFS{"odd.csv": {Data: []byte(text)}}
	read := func(asked ...string) (*sensors.Log, error) {
		var asks []Ask
		for _, a := range asked {
			ask, err := ParseAsk(a)
			if err != nil {
				t.Fatal(err)
			}
			asks = append(asks, ask)
		}
		return ReadFS(fsys, "ride", asks)
	}
	for _, c := range []struct {
		name  string
		asked []string
		speed float64 // of a fix, in its own unit
		err   bool
	}{
		{"as it is, a speed that never changes", nil, 0, false},
		{"the other column, its unit found", []string{"speed=v1"}, 1, false},
		{"the other column, of the file, its unit said", []string{"speed=odd/V1 as km/h"}, 1, false},
		{"the other column, its unit said wrongly", []string{"speed=v1 as m/s"}, 3.6, false},
	} {
		got, err := read(c.asked...)
		if (err != nil) != c.err {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if c.speed == 0 {
			if !hasNote(got, "speed.unchecked") {
				t.Errorf("%s: nothing is said of it: %v", c.name, got.Notes)
			}
			continue
		}
		if i := len(log.Fixes) / 2; err == nil && math.Abs(got.Fixes[i].Speed-c.speed*log.Fixes[i].Speed) > 0.01*log.Fixes[i].Speed {
			t.Errorf("%s: %g, want %g: %v", c.name, got.Fixes[i].Speed, c.speed*log.Fixes[i].Speed, got.Notes)
		}
	}
	for _, wrong := range []string{"speed", "pace=v", "speed=v as furlongs", "=v"} {
		if _, err := ParseAsk(wrong); err == nil {
			t.Errorf("%q was understood", wrong)
		}
	}
}

// TestWildTimes: a few times that are years off do not affect the others, and are
// reported.
func TestWildTimes(t *testing.T) {
	log := invented(t, 3)
	for _, wild := range []string{"-1e25", "99999999999", "0"} {
		text := style{separator: ',', time: 1, epoch: true}.wide("time,ax,ay,az,gx,gy,gz,lat,lon,speed", log, 1, 1, 1, false)
		rows := strings.SplitAfter(text, "\n")
		for _, at := range []int{1, 300, len(rows) - 3} {
			_, rest, _ := strings.Cut(rows[at], ",")
			rows[at] = wild + "," + rest
		}
		got, err := ReadFS(fstest.MapFS{"wide.csv": {Data: []byte(strings.Join(rows, ""))}}, "ride", nil)
		if err != nil {
			t.Fatalf("%s: %v", wild, err)
		}
		if n := len(log.Motion) - len(got.Motion); n < 0 || n > 3 || !hasNote(got, "sheets.wild_time") || got.Motion[len(got.Motion)-1].T > log.Motion[len(log.Motion)-1].T+1 {
			t.Errorf("%s: %d readings lost, %v", wild, n, got.Notes)
		}
	}
}

// FuzzSheets: no table makes the reader panic, and the log is in order and
// finite.
func FuzzSheets(f *testing.F) {
	f.Add("t,ax,ay,az,lat,lon,speed\n0,0,0,9.8,48,11,5\n0.01,0,0,9.8,48,11,5\n0.02,0,0,9.8,48.0001,11,5.5\n", "log.csv")
	f.Add("Zeit (s);Beschleunigung x (m/s²);y;z\n0,1;0;0;9,8\n0,2;0;0;9,8\n", "acc.csv")
	f.Add("sensor,time,x,y,z\nacc,1,2,3,4\ngps,2,3,4,5\n", "all.txt")
	f.Add("2026-06-14T12:00:00.1Z\t1\t2\n2026-06-14T12:00:00.2Z\t1\t2\n", "gps.tsv")
	f.Add("\"a\"\"b\";\"c\n;;;;\n1;2;3;4\n", "x.csv")
	f.Fuzz(func(t *testing.T, text, name string) {
		if len(text) > 1<<16 || !IsTable(name) || strings.ContainsAny(name, "/\\") {
			t.Skip()
		}
		mustBeSound(t, fstest.MapFS{name: {Data: []byte(text)}})
	})
}

// FuzzLayouts draws a random layout and changes fields of its tables.
func FuzzLayouts(f *testing.F) {
	f.Add(uint64(1), []byte{1, 2, 70, 9, 80, 90, 3, 3, 3})
	f.Add(uint64(2), []byte{0, 0, 20, 90, 0, 66, 200, 128, 69, 40, 100, 81})
	log := invented(f, 3)
	log.Motion, log.Fixes = log.Motion[:60], log.Fixes[:20]
	f.Fuzz(func(t *testing.T, seed uint64, ops []byte) {
		_, files := randomLayout(rand.New(rand.NewPCG(seed, 7)), log)
		for name, file := range files {
			for _, between := range []string{",", ";", "\t"} {
				if strings.Contains(string(file.Data), between) {
					files[name] = &fstest.MapFile{Data: []byte(spoil.Text(string(file.Data), between, ops))}
					break
				}
			}
		}
		mustBeSound(t, files)
	})
}

// mustBeSound reads tables.
func mustBeSound(t *testing.T, files fstest.MapFS) {
	log, err := ReadFS(files, "ride", nil)
	sourcetest.Sound(t, log, err)
}
