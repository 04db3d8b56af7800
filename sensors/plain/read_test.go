package plain

import (
	"context"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/internal/repair"
	"stillair/sensors/replay"
	"stillair/sensors/sourcetest"
)

// TestOpenDrive reads a real minute on a road; the expected values are in
// testdata/open-drive/README.md or in its files.
func TestOpenDrive(t *testing.T) {
	log, err := Read("../../testdata/open-drive")
	if err != nil {
		t.Fatal(err)
	}
	if len(log.Motion) != 6256 || len(log.Fixes) != 579 || len(log.Pressure) != 0 {
		t.Fatalf("%d motion samples, %d fixes; want 6256 and 579", len(log.Motion), len(log.Fixes))
	}
	var sum r3.Vec
	for _, m := range log.Motion {
		sum = r3.Add(sum, m.Force)
	}
	// Its third axis points down and reads about −9.8: specific force points up.
	if z := sum.Z / 6256; math.Abs(z+9.8) > 0.3 {
		t.Errorf("mean force along the down axis %.2f m/s², want about -9.8", z)
	}
	f := log.Fixes[0]
	if f.T != 0.074942 || f.Speed != 7.823 || f.LatDeg != 37.7209977 || f.Alt != 33.37 || f.BearingDeg != 2.14 ||
		!f.UTC.Equal(time.UnixMilli(1533226488299)) || !math.IsNaN(f.SpeedSD) {
		t.Errorf("first fix %+v", f)
	}
	if !math.IsNaN(log.Ride.Mass) {
		t.Errorf("a mass of %g kg was made up", log.Ride.Mass)
	}
	sourcetest.Contract(t, func() sensors.Source { return replay.New(log) })
}

// sheet writes a small log as files: level, 20 m/s north, 50 Hz.
func sheet(change map[string]func(string) string) fstest.MapFS {
	var motion, gnss, pressure strings.Builder
	motion.WriteString("t_s,ax_mps2,ay_mps2,az_mps2,gx_radps,gy_radps,gz_radps\n")
	gnss.WriteString("t_s,lat_deg,lon_deg,speed_mps,utc_ms,alt_m,bearing_deg,speed_sd_mps,h_sd_m\n")
	pressure.WriteString("t_s,pressure_pa\n")
	for i := range 1500 {
		at := float64(i) / 50
		fmt.Fprintf(&motion, "%.2f,%.3f,0.1,9.79,0.001,%.4f,-0.002\n", at, 0.3*math.Sin(at), 0.01*math.Cos(at))
		if i%50 == 10 {
			fmt.Fprintf(&gnss, "%.2f,%.7f,11.5,20,%d,545,0,0.2,3\n", at, 48+at*20/111195, 1781438400000+int64(at*1000))
			fmt.Fprintf(&pressure, "%.2f,%.1f\n", at, 100900+at)
		}
	}
	files := map[string]string{"motion.csv": motion.String(), "gnss.csv": gnss.String(), "pressure.csv": pressure.String(),
		"ride.json": `{"version": 1, "mass_kg": 290}`}
	out := fstest.MapFS{}
	for name, text := range files {
		if c, ok := change[name]; ok {
			text = c(text)
		}
		if text != "" {
			out[name] = &fstest.MapFile{Data: []byte(text)}
		}
	}
	return out
}

// each maps a function over the numbers of the columns in the rows of a file.
func each(f func(float64) float64, columns ...int) func(string) string {
	return func(text string) string {
		lines := strings.Split(text, "\n")
		for i := 1; i < len(lines); i++ {
			cells := strings.Split(lines[i], ",")
			for _, c := range columns {
				var v float64
				if c < len(cells) {
					fmt.Sscan(cells[c], &v)
					cells[c] = fmt.Sprint(f(v))
				}
			}
			lines[i] = strings.Join(cells, ",")
		}
		return strings.Join(lines, "\n")
	}
}

func times(k float64) func(float64) float64 { return func(v float64) float64 { return v * k } }

func replaceAll(old, new string) func(string) string {
	return func(s string) string { return strings.ReplaceAll(s, old, new) }
}

func replaceFirst(old, new string) func(string) string {
	return func(s string) string { return strings.Replace(s, old, new, 1) }
}

// TestCorrections: each of these files gives the same samples as the good one,
// and the notes list the corrections.
func TestCorrections(t *testing.T) {
	good, err := ReadFS(sheet(nil), "ride")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name   string
		file   string
		change func(string) string
		note   string // "": none
		lost   int    // motion samples fewer
	}{
		{"as it is", "motion.csv", func(s string) string { return s }, "", 0},
		{"carriage returns", "motion.csv", replaceAll("\n", "\r\n"), "", 0},
		{"byte order mark", "motion.csv", func(s string) string { return "\ufeff" + s }, "", 0},
		{"capitals and blanks in the header", "motion.csv", replaceFirst("t_s,ax_mps2", "T_S , Ax_mps2"), "", 0},
		{"unknown columns", "motion.csv", func(s string) string {
			lines := strings.Split(strings.Replace(s, "t_s", "t_s,note", 1), "\n")
			for i := 1; i < len(lines)-1; i++ {
				lines[i] = strings.Replace(lines[i], ",", ",\"a, \"\"b\"\"\nc\",", 1)
			}
			return strings.Join(lines, "\n")
		}, "", 0},
		{"blank lines", "motion.csv", replaceAll("\n", "\n\n"), "", 0},
		{"quoted numbers", "motion.csv", replaceAll("9.79", `"9.79"`), "", 0},
		{"no line break at the end", "motion.csv", strings.TrimSpace, "", 0},
		{"cut in the last row", "motion.csv", func(s string) string { return s[:len(s)-25] }, `plain.empty column="az_mps2"`, 1},
		{"NaN force", "motion.csv", replaceFirst("\n0.02,0.006,", "\n0.02,NaN,"), `motion.csv:3: plain.row_left_out why=(plain.empty column="ax_mps2")`, 1},
		{"infinite force", "motion.csv", replaceFirst("\n0.02,0.006,", "\n0.02,Inf,"), `motion.csv:3: plain.row_left_out why=(plain.no_number column="ax_mps2" value="Inf")`, 1},
		{"a word", "motion.csv", replaceFirst("\n0.02,0.006,", "\n0.02,oops,"), `motion.csv:3: plain.row_left_out why=(plain.no_number column="ax_mps2" value="oops")`, 1},
		{"a spike", "motion.csv", replaceFirst("\n0.02,0.006,", "\n0.02,1e30,"), "force.impossible", 1},
		{"no third axis of turn", "motion.csv", replaceFirst("gz_radps", "unused"), "plain.half_turn (1500 times)", -1},
		{"doubled row", "motion.csv", replaceFirst("\n0.04,", "\n0.02,5,5,5,,,\n0.04,"), "input.doubled", 0},
		{"g", "motion.csv", each(times(1/9.80665), 1, 2, 3), `force.converted unit="g"`, 0},
		{"mg", "motion.csv", each(times(1000/9.80665), 1, 2, 3), `force.converted unit="mg"`, 0},
		{"km/h", "gnss.csv", each(times(3.6), 3, 7), `speed.converted unit="km/h"`, 0},
		{"mph", "gnss.csv", each(times(1/0.44704), 3, 7), `speed.converted unit="mph"`, 0},
		{"hPa", "pressure.csv", each(times(0.01), 1), "pressure.converted", 0},
		{"unknown field", "ride.json", replaceFirst(`"mass_kg"`, "\n\"mas_kg\": 3, \"mass_kg\""), `ride.json:2: ride.unknown_field field="mas_kg"`, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, err := ReadFS(sheet(map[string]func(string) string{c.file: c.change}), "ride")
			if err != nil {
				t.Fatal(err)
			}
			if c.lost >= 0 && len(log.Motion) != len(good.Motion)-c.lost {
				t.Errorf("%d motion samples, want %d fewer than %d", len(log.Motion), c.lost, len(good.Motion))
			}
			if said := notes(log); !strings.Contains(said, c.note) || c.note == "" && said != notes(good) {
				t.Errorf("notes %q, want something with %q", said, c.note)
			}
			if c.lost == 0 {
				alike(t, log, good)
			}
		})
	}
}

func notes(log *sensors.Log) string {
	var s []string
	for _, n := range log.Notes {
		s = append(s, n.String())
	}
	return strings.Join(s, "\n")
}

// alike compares two logs to the rounding of the files they were read from.
func alike(t *testing.T, a, b *sensors.Log) {
	t.Helper()
	close := func(x, y float64) bool { return math.Abs(x-y) <= 1e-9*max(1, math.Abs(y)) }
	for i, m := range a.Motion {
		w := b.Motion[i]
		if !close(m.T, w.T) || r3.Norm(r3.Sub(m.Force, w.Force)) > 1e-6 || r3.Norm(r3.Sub(m.Turn, w.Turn)) > 1e-9 {
			t.Fatalf("motion %d is %+v, want %+v", i, m, w)
		}
	}
	for i, f := range a.Fixes {
		if w := b.Fixes[i]; !close(f.T, w.T) || !close(f.Speed, w.Speed) || !close(f.SpeedSD, w.SpeedSD) {
			t.Fatalf("fix %d is %+v, want %+v", i, f, w)
		}
	}
	for i, p := range a.Pressure {
		if w := b.Pressure[i]; !close(p.T, w.T) || !close(p.Pa, w.Pa) {
			t.Fatalf("pressure %d is %+v, want %+v", i, p, w)
		}
	}
}

// TestClockInMilliseconds: all files count in the same unit.
func TestClockInMilliseconds(t *testing.T) {
	good, err := ReadFS(sheet(nil), "ride")
	if err != nil {
		t.Fatal(err)
	}
	ms := each(times(1000), 0)
	log, err := ReadFS(sheet(map[string]func(string) string{"motion.csv": ms, "gnss.csv": ms, "pressure.csv": ms,
		"ride.json": func(string) string {
			return `{"setups": [{"from_s": 0, "name": "a"}, {"from_s": 15000, "name": "b"}]}`
		}}), "ride")
	if err != nil {
		t.Fatal(err)
	}
	alike(t, log, good)
	if s := log.Ride.SetupAt(20); s.Name != "b" || s.From != 15 {
		t.Errorf("the setup at 20 s is %+v, want b from 15 s", s)
	}
}

func TestTurnedOverAsStated(t *testing.T) {
	log, err := ReadFS(sheet(map[string]func(string) string{
		"motion.csv": each(times(-1), 1, 2, 3),
		"ride.json":  func(string) string { return `{"axes": "specific force down"}` }}), "ride")
	if err != nil {
		t.Fatal(err)
	}
	if log.Motion[0].Force.Z != 9.79 || log.Ride.Axes != repair.AxesUp {
		t.Errorf("force %+v, axes %q; want it turned over and called up", log.Motion[0].Force, log.Ride.Axes)
	}
}

func TestTurnRateInDegrees(t *testing.T) {
	const degree = 180 / math.Pi
	// A slow weave of ±0.5 rad/s; there is no bearing to compare with.
	weave := func(unit float64) *sensors.Log {
		log, err := ReadFS(sheet(map[string]func(string) string{
			"motion.csv": each(func(v float64) float64 { return v * 50 * unit }, 5),
			"gnss.csv":   replaceFirst("bearing_deg", "unused")}), "ride")
		if err != nil {
			t.Fatal(err)
		}
		return log
	}
	if said := notes(weave(1)); strings.Contains(said, "turn.converted") {
		t.Errorf("rad/s was taken for deg/s: %s", said)
	}
	log := weave(degree)
	if said := notes(log); !strings.Contains(said, "turn.converted") || math.Abs(log.Motion[0].Turn.Y-0.5) > 1e-9 {
		t.Errorf("turn rate %+v, notes %s; want 0.5 rad/s and a note", log.Motion[0].Turn, said)
	}
}

func TestNMEAInPlaceOfFixes(t *testing.T) {
	fsys := sheet(map[string]func(string) string{"gnss.csv": func(string) string { return "" }})
	// Examples from gpsinformation.org/dale/nmea.htm, stamped.
	fsys["receiver.nmea"] = &fstest.MapFile{Data: []byte(
		"10.2,$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A\r\n" +
			"10.3,$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47\r\n")}
	log, err := ReadFS(fsys, "ride")
	if err != nil {
		t.Fatal(err)
	}
	if f := log.Fixes[0]; len(log.Fixes) != 1 || f.T != 10.2 || math.Abs(f.Speed-22.4*1852/3600) > 1e-12 || f.Alt != 545.4 {
		t.Errorf("fixes %+v", log.Fixes)
	}
}

func TestReplayOfAReadLogKeepsTheContract(t *testing.T) {
	log, err := ReadFS(sheet(map[string]func(string) string{"motion.csv": func(s string) string {
		head, rows, _ := strings.Cut(s, "\n")
		return head + "\n" + rows[len(rows)/2:] + rows // out of order and doubled
	}}), "ride")
	if err != nil {
		t.Fatal(err)
	}
	sourcetest.Contract(t, func() sensors.Source { return replay.New(log) })
	if got, _ := sensors.Collect(context.Background(), replay.New(log)); len(got.Motion) != 1500 {
		t.Errorf("%d motion samples, want 1500", len(got.Motion))
	}
}

// TestOpenDriveInOtherUnits: for speeds of a real drive, without positions, the
// accelerometer shows that they are in km/h, and for mph that the unit is
// wrong.
func TestOpenDriveInOtherUnits(t *testing.T) {
	motion, err := os.ReadFile("../../testdata/open-drive/motion.csv")
	if err != nil {
		t.Fatal(err)
	}
	gnss, err := os.ReadFile("../../testdata/open-drive/gnss.csv")
	if err != nil {
		t.Fatal(err)
	}
	in := func(factor float64) (*sensors.Log, error) {
		text := strings.Replace(each(times(factor), 3)(strings.TrimSpace(string(gnss))), "lat_deg", "unused", 1)
		return ReadFS(fstest.MapFS{"motion.csv": {Data: motion}, "gnss.csv": {Data: []byte(text)}}, "drive")
	}
	log, err := in(3.6)
	if err != nil || math.Abs(log.Fixes[0].Speed-7.823) > 1e-9 {
		t.Errorf("in km/h: %v", err)
	}
	if _, err := in(1 / 0.44704); err == nil || !strings.Contains(err.Error(), "speed.gain") {
		t.Errorf("in mph: error %v", err)
	}
	if log, err := in(1); err != nil || log.Fixes[0].Speed != 7.823 {
		t.Errorf("in m/s: %v", err)
	}
}
