package sheets

import (
	"archive/zip"
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// start is when the invented ride began.
var start = time.Date(2026, 6, 14, 12, 0, 0, 0, time.UTC)

// invented is a short invented ride, with bends that determine the signs.
func invented(t testing.TB, seed uint64) *sensors.Log {
	t.Helper()
	sc := sim.DefaultScenario(sim.Bikes()[seed%3])
	sc.Plan = []sim.Act{sim.Stand{Seconds: 4}, sim.Town{Minutes: 2}, sim.Reach{Speed: 25}, sim.TurnRound{}, sim.Reach{Speed: 30}, sim.Reach{Speed: 12}, sim.Bend{Angle: 1.2, Radius: 40}, sim.Reach{Speed: 20}}
	r, err := sim.Run(sc, seed)
	if err != nil {
		t.Fatal(err)
	}
	log := r.Log
	kept := log.Motion[:0]
	for i, m := range log.Motion { // half of them, to keep the test fast
		if i%2 == 0 {
			kept = append(kept, m)
		}
	}
	log.Motion = kept
	return log
}

// style is the format of a logger.
type style struct {
	separator byte
	comma     bool
	time      float64 // unit of time in s
	epoch     bool
	words     bool // times as words
}

func (s style) number(v float64) string {
	if math.IsNaN(v) {
		return ""
	}
	text := strconv.FormatFloat(v, 'f', 9, 64)
	if s.comma {
		text = strings.Replace(text, ".", ",", 1)
	}
	return text
}

func (s style) moment(t float64) string {
	at := start.Add(time.Duration(math.Round(t * 1e9)))
	switch {
	case s.words:
		return at.Format("2006-01-02T15:04:05.000000Z")
	case s.epoch && s.time == 1e-9:
		return strconv.FormatInt(at.UnixNano(), 10)
	case s.epoch:
		return s.number(float64(at.UnixNano()/1000) * 1e-6 / s.time)
	}
	return s.number(t / s.time)
}

// table writes rows under a header.
func (s style) table(header string, n int, row func(i int) []string) string {
	var b strings.Builder
	sep := string(s.separator)
	if header != "" {
		b.WriteString(strings.ReplaceAll(header, "|", sep) + "\n")
	}
	for i := range n {
		if cells := row(i); cells != nil {
			b.WriteString(strings.Join(cells, sep) + "\n")
		}
	}
	return b.String()
}

// vectors writes a table of motion: a time and the values of each sample that of
// selects.
func (s style) vectors(header string, log *sensors.Log, scale float64, of func(sensors.Motion) r3.Vec) string {
	return s.table(header, len(log.Motion), func(i int) []string {
		m := log.Motion[i]
		v := r3.Scale(scale, of(m))
		return []string{s.moment(m.T), s.number(v.X), s.number(v.Y), s.number(v.Z)}
	})
}

func forceOf(m sensors.Motion) r3.Vec { return m.Force }
func turnOf(m sensors.Motion) r3.Vec  { return m.Turn }

// track writes a table of fixes: time, latitude, longitude, altitude, bearing,
// speed.
func (s style) track(header string, log *sensors.Log, speed float64) string {
	return s.table(header, len(log.Fixes), func(i int) []string {
		f := log.Fixes[i]
		return []string{s.moment(f.T), s.number(f.LatDeg), s.number(f.LonDeg), s.number(f.Alt), s.number(f.BearingDeg), s.number(f.Speed * speed)}
	})
}

// wide writes one table with a row for each reading of motion, which repeats
// the newest fix.
func (s style) wide(header string, log *sensors.Log, force, turn, speed float64, held bool) string {
	k := -1
	return s.table(header, len(log.Motion), func(i int) []string {
		m := log.Motion[i]
		fresh := false
		for k+1 < len(log.Fixes) && log.Fixes[k+1].T <= m.T {
			k++
			fresh = true
		}
		a, w := r3.Scale(force, m.Force), r3.Scale(turn, m.Turn)
		row := []string{s.moment(m.T), s.number(a.X), s.number(a.Y), s.number(a.Z), s.number(w.X), s.number(w.Y), s.number(w.Z)}
		if k < 0 || !held && !fresh {
			return append(row, "", "", "")
		}
		f := log.Fixes[k]
		return append(row, s.number(f.LatDeg), s.number(f.LonDeg), s.number(f.Speed*speed))
	})
}

// gravityOf is gravity as estimated by a phone: the specific force without its
// changes.
func gravities(log *sensors.Log) []r3.Vec {
	out := make([]r3.Vec, len(log.Motion))
	var slow r3.Vec
	for i, m := range log.Motion {
		if i == 0 {
			slow = m.Force
		}
		slow = r3.Add(slow, r3.Scale(0.01, r3.Sub(m.Force, slow)))
		out[i] = r3.Scale(units.StandardGravity/r3.Norm(slow), slow)
	}
	return out
}

// recordings are the same ride in the formats of ordinary loggers. They are
// modelled on published descriptions of such files; none is a file of a logger.
func recordings(log *sensors.Log) map[string]fstest.MapFS {
	seconds := style{separator: ',', time: 1}
	german := style{separator: ';', comma: true, time: 1}
	tabs := style{separator: '\t', time: 1e-3}
	nanos := style{separator: ',', time: 1e-9, epoch: true}
	millis := style{separator: ',', time: 1e-3, epoch: true}
	micros := style{separator: ';', time: 1e-6}
	words := style{separator: ',', time: 1, words: true}
	g := 1 / units.StandardGravity
	kmh, degrees := 1/units.KMH, 180/math.Pi
	pull := gravities(log)
	files := func(pairs ...string) fstest.MapFS {
		fsys := fstest.MapFS{}
		for i := 0; i < len(pairs); i += 2 {
			fsys[pairs[i]] = &fstest.MapFile{Data: []byte(pairs[i+1])}
		}
		return fsys
	}
	user := func(s style, header string, scale float64) string {
		return s.table(header, len(log.Motion), func(i int) []string {
			v := r3.Scale(scale, r3.Sub(log.Motion[i].Force, pull[i]))
			return []string{s.moment(log.Motion[i].T), s.number(v.X), s.number(v.Y), s.number(v.Z)}
		})
	}
	down := func(s style, header string, scale float64) string {
		return s.table(header, len(log.Motion), func(i int) []string {
			v := r3.Scale(scale, pull[i])
			return []string{s.moment(log.Motion[i].T), s.number(v.X), s.number(v.Y), s.number(v.Z)}
		})
	}
	between := *log // a gyroscope that is read between the readings of the accelerometer
	between.Motion = nil
	for i := 1; i < len(log.Motion); i++ {
		a, b := log.Motion[i-1], log.Motion[i]
		between.Motion = append(between.Motion, sensors.Motion{T: a.T + 0.3*(b.T-a.T), Turn: r3.Add(a.Turn, r3.Scale(0.3, r3.Sub(b.Turn, a.Turn)))})
	}
	long := func() string {
		var b strings.Builder
		b.WriteString("sensor,timestamp_ns,x,y,z,latitude,longitude,speed\n")
		k := 0
		for _, m := range log.Motion {
			for ; k < len(log.Fixes) && log.Fixes[k].T <= m.T; k++ {
				f := log.Fixes[k]
				fmt.Fprintf(&b, "gps,%s,,,,%s,%s,%s\n", nanos.moment(f.T), nanos.number(f.LatDeg), nanos.number(f.LonDeg), nanos.number(f.Speed))
			}
			fmt.Fprintf(&b, "accelerometer,%s,%s,%s,%s,,,\n", nanos.moment(m.T), nanos.number(m.Force.X), nanos.number(m.Force.Y), nanos.number(m.Force.Z))
			fmt.Fprintf(&b, "gyroscope,%s,%s,%s,%s,,,\n", nanos.moment(m.T), nanos.number(m.Turn.X), nanos.number(m.Turn.Y), nanos.number(m.Turn.Z))
		}
		return b.String()
	}
	return map[string]fstest.MapFS{
		"a file for each sensor, units in brackets": files(
			"Accelerometer.csv", seconds.vectors(`"Time (s)"|"Acceleration x (m/s^2)"|"Acceleration y (m/s^2)"|"Acceleration z (m/s^2)"`, log, 1, forceOf),
			"Gyroscope.csv", seconds.vectors(`"Time (s)"|"Gyroscope x (rad/s)"|"Gyroscope y (rad/s)"|"Gyroscope z (rad/s)"`, log, 1, turnOf),
			"Location.csv", seconds.track(`"Time (s)"|"Latitude (°)"|"Longitude (°)"|"Height (m)"|"Direction (°)"|"Velocity (m/s)"`, log, 1),
			"device.csv", "property,value\nversion,1\n"),
		"the same in German, with decimal comma": files(
			"Beschleunigung.csv", german.vectors("Zeit (s)|Beschleunigung x (m/s²)|Beschleunigung y (m/s²)|Beschleunigung z (m/s²)", log, 1, forceOf),
			"Drehrate.csv", german.vectors("Zeit (s)|Drehrate x (rad/s)|Drehrate y (rad/s)|Drehrate z (rad/s)", log, 1, turnOf),
			"Standort.csv", german.track("Zeit (s)|Breitengrad (°)|Längengrad (°)|Höhe (m)|Richtung (°)|Geschwindigkeit (km/h)", log, kmh)),
		"nanoseconds since 1970, no units, gravity apart": files(
			"Accelerometer.csv", user(nanos, "time|x|y|z", 1),
			"Gravity.csv", down(nanos, "time|x|y|z", 1),
			"Gyroscope.csv", nanos.vectors("time|x|y|z", log, 1, turnOf),
			"Orientation.csv", nanos.vectors("time|x|y|z", log, 0.1, forceOf),
			"Location.csv", nanos.track("time|latitude|longitude|altitude|bearing|speed", log, 1)),
		"user acceleration and gravity in g": files(
			"UserAcceleration.csv", user(millis, "timestamp|userAcceleration.x (g)|userAcceleration.y (g)|userAcceleration.z (g)", g),
			"Gravity.csv", down(millis, "timestamp|gravity.x (g)|gravity.y (g)|gravity.z (g)", g),
			"RotationRate.csv", millis.vectors("timestamp|rotationRate.x|rotationRate.y|rotationRate.z", log, 1, turnOf),
			"gps.csv", millis.track("timestamp|lat|lon|alt|course|speed", log, 1)),
		"milliseconds, tabs, units in a second row": files(
			"acc.txt", tabs.vectors("t|ax|ay|az\nms|g|g|g", log, g, forceOf),
			"gyro.txt", tabs.vectors("t|gx|gy|gz\nms|deg/s|deg/s|deg/s", log, degrees, turnOf),
			"gps.txt", tabs.track("t|lat|lon|alt|heading|speed\nms|deg|deg|m|deg|km/h", log, kmh)),
		"one wide table, the newest fix repeated": files(
			"log.csv", tabs.wide("time since start in ms|ACCELEROMETER X (m/s²)|ACCELEROMETER Y (m/s²)|ACCELEROMETER Z (m/s²)|GYROSCOPE X (rad/s)|GYROSCOPE Y (rad/s)|GYROSCOPE Z (rad/s)|LOCATION Latitude :|LOCATION Longitude :|LOCATION Speed ( Kmh)", log, 1, 1, kmh, true)),
		"one wide table with gaps, semicolons, decimal comma": files(
			"export.csv", style{separator: ';', comma: true, time: 1, epoch: true}.wide("timestamp|accX|accY|accZ|gyroX|gyroY|gyroZ|gps_lat|gps_lon|gps_speed_kmh", log, 1, 1, kmh, false)),
		"one wide table of g and short names": files(
			"toolbox.csv", seconds.wide("time|gFx|gFy|gFz|wx|wy|wz|Latitude|Longitude|Speed (m/s)", log, g, 1, 1, true)),
		"moments in words": files(
			"acceleration.csv", words.vectors("datetime|acc_x|acc_y|acc_z", log, 1, forceOf),
			"rotation_rate.csv", words.vectors("datetime|x|y|z", log, degrees, turnOf),
			"position.csv", words.track("datetime|latitude|longitude|altitude|bearing|speed", log, 1)),
		"microseconds, a gyroscope on its own clock in deg/s": files(
			"sensor_accel.csv", micros.vectors("timestamp_us|accel_x_mps2|accel_y_mps2|accel_z_mps2", log, 1, forceOf),
			"sensor_gyro.csv", micros.vectors("timestamp_us|gyro_x_dps|gyro_y_dps|gyro_z_dps", &between, degrees, turnOf),
			"vehicle_gps.csv", micros.track("timestamp_us|lat|lon|alt|cog|speed_knots", log, 3600.0/1852)),
		"a row for each event, which names its sensor": files("all.csv", long()),
		"no header": files(
			"accelerometer.csv", seconds.vectors("", log, 1, forceOf),
			"gyroscope.csv", seconds.vectors("", log, 1, turnOf),
			"location.csv", seconds.track("seconds|latitude|longitude|altitude|bearing|speed", log, 1)),
		"comments, blank lines and a separator line": files(
			"acc.csv", "sep=;\n# recorded in June\n\n"+style{separator: ';', time: 1}.vectors("# t [s]|a_x [m/s^2]|a_y [m/s^2]|a_z [m/s^2]", log, 1, forceOf),
			"gyr.csv", style{separator: ';', time: 1}.vectors("t [s]|w_x [rad/s]|w_y [rad/s]|w_z [rad/s]", log, 1, turnOf),
			"gnss.csv", style{separator: ';', time: 1}.track("t [s]|lat [deg]|lon [deg]|alt [m]|course [deg]|speed [mph]", log, 1/units.MPH)),
		"two clocks in each file": files(
			"TotalAcceleration.csv", both(nanos, seconds, log, "time|seconds_elapsed|z|y|x"),
			"Gyroscope.csv", seconds.vectors("seconds_elapsed|x|y|z", log, 1, turnOf),
			"Location.csv", seconds.track("seconds_elapsed|latitude|longitude|altitude|bearing|speed", log, 1)),
	}
}

// both writes the force with two columns of time, and its axes in reverse order.
func both(one, other style, log *sensors.Log, header string) string {
	return one.table(header, len(log.Motion), func(i int) []string {
		m := log.Motion[i]
		return []string{one.moment(m.T), other.moment(m.T), one.number(m.Force.Z), one.number(m.Force.Y), one.number(m.Force.X)}
	})
}

// same compares two logs except for the start of their clocks.
func same(want, got *sensors.Log, turn, speed float64) error {
	if len(got.Motion) < len(want.Motion)-2 || len(got.Motion) > len(want.Motion) || len(got.Fixes) < len(want.Fixes)-3 || len(got.Fixes) > len(want.Fixes) {
		return fmt.Errorf("%d readings and %d fixes, want %d and %d", len(got.Motion), len(got.Fixes), len(want.Motion), len(want.Fixes))
	}
	if len(want.Motion) > 0 {
		lost := len(want.Motion) - len(got.Motion)
		zero := want.Motion[lost].T - got.Motion[0].T
		turns, off := 0, 0.0
		for i, m := range got.Motion {
			w := want.Motion[i+lost]
			if math.Abs(m.T+zero-w.T) > 2e-5 || r3.Norm(r3.Sub(m.Force, w.Force)) > 1e-3 {
				return fmt.Errorf("reading %d is %+v, want %+v", i, m, w)
			}
			if m.HasTurn() {
				turns++
				off += r3.Norm2(r3.Sub(m.Turn, w.Turn))
			}
		}
		if turns < len(got.Motion)*9/10 {
			return fmt.Errorf("only %d of %d readings have a turn rate", turns, len(got.Motion))
		}
		if off = math.Sqrt(off / float64(turns)); off > turn {
			return fmt.Errorf("turn rates are off by %.3f rad/s (root of the mean square)", off)
		}
	}
	zero := want.Begin() - got.Begin()
	if len(want.Motion) > 0 {
		zero = want.Motion[len(want.Motion)-1].T - got.Motion[len(got.Motion)-1].T
	}
	k := 0
	for _, f := range got.Fixes {
		for k < len(want.Fixes) && want.Fixes[k].T < f.T+zero-0.05 {
			k++
		}
		if k == len(want.Fixes) {
			return fmt.Errorf("a fix at %g is none", f.T+zero)
		}
		w := want.Fixes[k]
		if math.Abs(f.T+zero-w.T) > 0.05 || math.Abs(f.Speed-w.Speed) > speed+1e-3*w.Speed || math.Abs(f.LatDeg-w.LatDeg) > 1e-7 {
			return fmt.Errorf("a fix is %+v, want %+v (clock from %g)", f, w, zero)
		}
	}
	return nil
}

// TestLayouts: recordings in the formats of fourteen ordinary loggers open
// without changes and give the same log, as folders and as zip archives, with
// notes on the interpretation of each column.
func TestLayouts(t *testing.T) {
	log := invented(t, 1)
	for name, fsys := range recordings(log) {
		t.Run(name, func(t *testing.T) {
			got, err := ReadFS(fsys, "ride", nil)
			if err != nil {
				t.Fatal(err)
			}
			if err := same(log, got, 0.2, 1e-3); err != nil {
				t.Fatalf("%v\n%v", err, got.Notes)
			}
			for _, code := range []finding.Code{"sheets.speed", "sheets.time", "sheets.turn"} {
				if !hasNote(got, code) {
					t.Errorf("nothing is said of %s: %v", code, got.Notes)
				}
			}
			var z bytes.Buffer
			w := zip.NewWriter(&z)
			for file, f := range fsys {
				in, err := w.Create("a ride/" + file)
				if err == nil {
					_, err = in.Write(f.Data)
				}
				if err != nil {
					t.Fatal(err)
				}
			}
			if err := w.Close(); err != nil {
				t.Fatal(err)
			}
			zipped, err := ReadZip(bytes.NewReader(z.Bytes()), int64(z.Len()), "ride.zip", nil)
			if err != nil {
				t.Fatal(err)
			}
			if err := same(got, zipped, 1e-12, 1e-12); err != nil {
				t.Errorf("as a zip: %v", err)
			}
		})
	}
}

func hasNote(log *sensors.Log, code finding.Code) bool {
	for _, n := range log.Notes {
		if n.What.Is(code) {
			return true
		}
	}
	return false
}
