package w3c

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/replay"
	"stillair/sensors/sim"
	"stillair/sensors/sourcetest"
	"stillair/sensors/spoil"
)

var nan = math.NaN()

// TestExamplesOfTheStandard are those of Device Orientation and Motion, W3C
// Editor's Draft of 12 February 2025, section "Introduction", example by
// example.
func TestExamplesOfTheStandard(t *testing.T) {
	const v, r = 20.0, 50.0
	for _, c := range []struct {
		name             string
		x, y, z          float64
		alpha, beta, gam float64
		force, turn      r3.Vec
	}{
		{"flat on a table, screen up: proper acceleration points up, out of the screen",
			0, 0, 9.8, 0, 0, 0, r3.Vec{Z: 9.8}, r3.Vec{}},
		{"free fall", 0, 0, 0, 0, 0, 0, r3.Vec{}, r3.Vec{}},
		// "Top uppermost and facing the rear … around a right-hand bend": clockwise
		// seen from above, so negative about y, which is up. By the getters of the
		// same draft that is beta; the example itself prints it as gamma.
		{"in a car that turns right", v * v / r, 9.8, 0, 0, -v / r * 180 / math.Pi, 0,
			r3.Vec{X: v * v / r, Y: 9.8}, r3.Vec{Y: -v / r}},
	} {
		m := MotionFrom(1500, c.x, c.y, c.z, c.alpha, c.beta, c.gam)
		if m.T != 1.5 || m.Force != c.force || r3.Norm(r3.Sub(m.Turn, c.turn)) > 1e-12 {
			t.Errorf("%s: %+v, want force %v and turn %v", c.name, m, c.force, c.turn)
		}
	}
}

// TestGetters: alpha, beta, gamma return the rates about X, Y, Z (the getter
// steps of DeviceMotionEventRotationRate in the same draft), in deg/s.
func TestGetters(t *testing.T) {
	m := MotionFrom(0, 0, 0, 9.8, 180, 90, 45)
	if want := (r3.Vec{X: math.Pi, Y: math.Pi / 2, Z: math.Pi / 4}); r3.Norm(r3.Sub(m.Turn, want)) > 1e-12 {
		t.Errorf("turn %v, want %v", m.Turn, want)
	}
	if m := MotionFrom(0, 0, 0, 9.8, 1, nan, 2); m.HasTurn() || !math.IsNaN(m.Turn.X) {
		t.Errorf("a turn rate with a null came out as %v", m.Turn)
	}
}

func TestFixFrom(t *testing.T) {
	f := FixFrom(2500, Coords{Latitude: 48, Longitude: 11, Altitude: nan, Accuracy: 5, Heading: 360, Speed: 3}, 1781438401234)
	if f.T != 2.5 || f.BearingDeg != 0 || !math.IsNaN(f.Alt) || !math.IsNaN(f.SpeedSD) ||
		!f.UTC.Equal(time.UnixMilli(1781438401234)) {
		t.Errorf("%+v", f)
	}
	// 95 % of a circular normal error lies within √(−2 ln 0.05) of its σ.
	if p := 1 - math.Exp(-0.5*math.Pow(5/f.HSD, 2)); math.Abs(p-0.95) > 1e-12 {
		t.Errorf("a radius of 5 m holds %.4f of errors with σ %.3f m", p, f.HSD)
	}
	if f := FixFrom(0, Coords{Latitude: 95, Longitude: 0, Heading: nan, Speed: 1}, 12); f.HasPosition() || !f.UTC.IsZero() {
		t.Errorf("a place off the globe and a time that is none came out as %+v", f)
	}
}

const origin = 1781438400000.0 // ms since 1970: 14 June 2026

// format is the format of a page's stream.
type format struct {
	force     float64 // factor on forces
	ownStamp  bool    // positions carry their timeStamp
	lag       float64 // s from acquisition to arrival
	epoch     bool    // motion counts from 1970
	motion1st bool    // all motion before all positions
	header    string
}

func number(v float64) string {
	if math.IsNaN(v) {
		return "null"
	}
	return fmt.Sprint(v)
}

// page writes a log like a page that stores events as they arrive.
func page(log *sensors.Log, f format) string {
	var b, late strings.Builder
	if f.header != "" {
		b.WriteString(f.header + "\n")
	}
	positions := &b
	if f.motion1st {
		positions = &late
	}
	shift := 0.0
	if f.epoch {
		shift = origin
	}
	next := 0
	const degree = 180 / math.Pi
	for _, m := range log.Motion {
		for ; next < len(log.Fixes) && log.Fixes[next].T < m.T; next++ {
			x := log.Fixes[next]
			own := ""
			if f.ownStamp {
				own = fmt.Sprintf(`, "timeStamp": %.3f`, x.T*1000+shift)
			}
			fmt.Fprintf(positions, `{"coords": {"latitude": %s, "longitude": %s, "speed": %s, "heading": %s, "altitude": null, "accuracy": 4, "altitudeAccuracy": null}, "timestamp": %.0f%s}`+"\n",
				number(x.LatDeg), number(x.LonDeg), number(x.Speed), number(x.BearingDeg), origin+(x.T-f.lag)*1000, own)
		}
		w := r3.Scale(degree, m.Turn)
		fmt.Fprintf(&b, `{"accelerationIncludingGravity": {"x": %.1f, "y": %.1f, "z": %.1f}, "rotationRate": {"alpha": %.1f, "beta": %.1f, "gamma": %.1f}, "interval": 16, "timeStamp": %.3f}`+"\n",
			f.force*m.Force.X, f.force*m.Force.Y, f.force*m.Force.Z, w.X, w.Y, w.Z, m.T*1000+shift)
	}
	return b.String() + late.String()
}

// bends is a few minutes of an invented ride with bends, at 60 Hz.
func bends(t *testing.T) *sensors.Log {
	t.Helper()
	sc := sim.DefaultScenario(sim.Naked())
	sc.Phone = sim.BrowserPhone()
	sc.Plan = []sim.Act{sim.Stand{Seconds: 4}, sim.Reach{Speed: 15}, sim.TurnRound{}, sim.Reach{Speed: 20},
		sim.Bend{Angle: 1.2, Radius: 60}, sim.Reach{Speed: 12}, sim.TurnRound{}, sim.Reach{Speed: 18}}
	r, err := sim.Run(sc, 5)
	if err != nil {
		t.Fatal(err)
	}
	return r.Log
}

// TestStream reads the same ride as written in Android's and iPhone's browsers,
// and also in g and in the wrong order; force, turn rate and time come out the
// same.
func TestStream(t *testing.T) {
	ride := bends(t)
	for _, c := range []struct {
		name  string
		f     format
		note  string
		late  float64 // s, tolerance of the arrivals
		clock float64 // s between the clocks
	}{
		{"Android, own stamps", format{force: 1, ownStamp: true, lag: 0.3}, "", 1e-3, 0},
		{"Android, in order of arrival", format{force: 1, lag: 0.3}, "", 0.05, 0},
		{"iPhone", format{force: -1, lag: 0.3}, "axes.turned_over", 0.05, 0},
		{"iPhone, stated", format{force: -1, lag: 0.3, header: `{"axes": "specific force down"}`}, "", 0.05, 0},
		{"in g", format{force: 1 / 9.80665 * 10, lag: 0.3}, "", 0.05, 0},
		{"sorted by kind, with the time origin", format{force: 1, motion1st: true, lag: 0.3, header: fmt.Sprintf(`{"timeOrigin": %.0f}`, origin)},
			"w3c.arrival_by_origin", 0.35, 0},
		{"sorted by kind, since 1970", format{force: 1, motion1st: true, lag: 0.3, epoch: true}, "w3c.arrival_is_acquisition", 0.35, origin / 1000},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, err := Read(strings.NewReader(page(ride, c.f)), "page.jsonl")
			if err != nil {
				t.Fatal(err)
			}
			if len(log.Motion) != len(ride.Motion) || len(log.Fixes) < len(ride.Fixes)-1 {
				t.Fatalf("%d motion and %d fixes of %d and %d", len(log.Motion), len(log.Fixes), len(ride.Motion), len(ride.Fixes))
			}
			if !strings.Contains(fmt.Sprint(log.Notes), c.note) {
				t.Errorf("notes %v, want something with %q", log.Notes, c.note)
			}
			for i, m := range log.Motion {
				w := ride.Motion[i]
				if math.Abs(m.T-c.clock-w.T) > 1e-3 || r3.Norm(r3.Sub(m.Force, w.Force)) > 0.4 || r3.Norm(r3.Sub(m.Turn, w.Turn)) > 0.002 {
					t.Fatalf("motion %d is %+v, want %+v", i, m, w)
				}
			}
			for i, f := range log.Fixes {
				if w := ride.Fixes[i]; f.Speed != w.Speed || math.Abs(f.T-c.clock-w.T) > c.late {
					t.Fatalf("fix %d is %+v, want %+v", i, f, w)
				}
			}
			if log.Ride.Axes == "" {
				t.Error("the sign was not found")
			}
		})
	}
}

func TestStreamAsASource(t *testing.T) {
	log, err := Read(strings.NewReader(page(bends(t), format{force: -1, lag: 0.3})), "page.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	sourcetest.Contract(t, func() sensors.Source { return replay.New(log) })
}

const goodMotion = `{"accelerationIncludingGravity": {"x": 0, "y": 0, "z": 9.8}, "rotationRate": null, "interval": 16, "timeStamp": %d}` + "\n"
const goodPosition = `{"coords": {"latitude": 48, "longitude": 11, "speed": 1, "heading": null}, "timestamp": 1781438400100, "timeStamp": 100}` + "\n"

func few(extra string) string {
	var b strings.Builder
	for i := range 20 {
		fmt.Fprintf(&b, goodMotion, i*16)
	}
	return b.String() + goodPosition + extra
}

func TestOddLines(t *testing.T) {
	for _, c := range []struct {
		name, text string
		note       string
	}{
		{"no gyroscope", few(""), ""},
		{"null speed", few(`{"coords": {"latitude": 48, "longitude": 11, "speed": null}, "timestamp": 1}` + "\n"), "page.jsonl:22: input.line_left_out why=(w3c.no_speed)"},
		{"null force", few(`{"accelerationIncludingGravity": null, "rotationRate": null, "timeStamp": 900}` + "\n"), "w3c.no_force"},
		{"null in the force", few(`{"accelerationIncludingGravity": {"x": null, "y": 1, "z": 1}, "timeStamp": 900}` + "\n"), "w3c.no_force"},
		{"text in the force", few(`{"accelerationIncludingGravity": {"x": "1", "y": 1, "z": 1}, "timeStamp": 900}` + "\n"), "w3c.no_number"},
		{"endless number", few(`{"accelerationIncludingGravity": {"x": 1e999, "y": 1, "z": 1}, "timeStamp": 900}` + "\n"), "w3c.no_number"},
		{"no timeStamp", few(`{"accelerationIncludingGravity": {"x": 1, "y": 1, "z": 1}}` + "\n"), "w3c.no_timestamp"},
		{"another event", few(`{"type": "orientationchange"}` + "\n"), "w3c.unknown_object"},
		{"cut line", few(`{"accelerationIncludingGravity": {"x": 1, "y`), "w3c.not_json"},
		{"deep line", few(strings.Repeat("[", 5000) + "\n"), "w3c.not_json"},
		{"doubled", few(fmt.Sprintf(goodMotion, 16)), "input.doubled"},
	} {
		log, err := Read(strings.NewReader(c.text), "page.jsonl")
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if len(log.Motion) != 20 || len(log.Fixes) != 1 || !strings.Contains(fmt.Sprint(log.Notes), c.note) || c.note == "" && len(log.Notes) > 0 {
			t.Errorf("%s: %d motion, %d fixes, notes %v; want 20, 1 and %q", c.name, len(log.Motion), len(log.Fixes), log.Notes, c.note)
		}
	}
}

func TestRefused(t *testing.T) {
	long := strings.Repeat(" ", 1<<17)
	motion := strings.Replace(few(""), goodPosition, "", 1)
	noClock := strings.Replace(goodPosition, `, "timeStamp": 100}`, "}", 1) + motion
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "w3c.no_motion"},
		{"only motion", motion, "w3c.no_fix"},
		{"only positions", goodPosition, "w3c.no_motion"},
		{"another format", "t_s,ax\n1,2\n3,4\n", "page.jsonl:1: w3c.bad_lines bad=3 of=3"},
		{"long line", few(long), "input.long_line most=65536"},
		{"unknown axes", few(`{"axes": "sideways"}`), `w3c.axes; axes.write up="specific force up"`},
		{"no gravity", strings.ReplaceAll(few(""), `"z": 9.8`, `"z": 0.1`), "force.no_gravity"},
		{"no way to tell arrivals", noClock, "w3c.no_arrival;"},
	} {
		_, err := Read(strings.NewReader(c.text), "page.jsonl")
		var input *sensors.InputError
		if !errors.As(err, &input) || input.Remedy.IsZero() || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want an InputError with %q and a remedy", c.name, err, c.want)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add(few(""))
	f.Add(few(`{"timeOrigin": 1781438400000, "axes": "specific force down"}`))
	f.Add(strings.ReplaceAll(few(""), `, "timeStamp": 100}`, "}"))
	f.Fuzz(mustBeSound)
}

// FuzzFields reads a page's lines with changed fields.
func FuzzFields(f *testing.F) {
	f.Add([]byte{1, 2, 70, 9, 80, 90, 3, 3, 3})
	f.Add([]byte{0, 0, 20, 90, 0, 66, 200, 128, 69, 40, 100, 81})
	f.Fuzz(func(t *testing.T, ops []byte) {
		mustBeSound(t, spoil.Text(few(""), ":", ops))
		mustBeSound(t, spoil.Text(few(""), ",", ops))
	})
}

// mustBeSound reads a text: the result must be an InputError or a log in order.
func mustBeSound(t *testing.T, text string) {
	log, err := Read(strings.NewReader(text), "page.jsonl")
	var input *sensors.InputError
	switch {
	case err != nil && !errors.As(err, &input):
		t.Fatalf("error without a place: %v", err)
	case err != nil:
		return
	}
	last := math.Inf(-1)
	for _, m := range log.Motion {
		if !(m.T > last) || math.IsNaN(r3.Norm(m.Force)) {
			t.Fatalf("motion %+v after %g", m, last)
		}
		last = m.T
	}
	last = math.Inf(-1)
	for _, x := range log.Fixes {
		if !(x.T > last) || !(x.Speed >= 0) {
			t.Fatalf("fix %+v after %g", x, last)
		}
		last = x.T
	}
}

func BenchmarkReadTenMinutes(b *testing.B) {
	log := &sensors.Log{}
	for i := range 36_000 {
		log.Motion = append(log.Motion, sensors.Motion{T: float64(i) / 60, Force: r3.Vec{X: math.Sin(float64(i)), Z: 9.8}, Turn: r3.Vec{Y: 0.01}})
		if i%60 == 5 {
			f := sensors.NewFix(float64(i)/60, 20)
			log.Fixes = append(log.Fixes, f)
		}
	}
	text := page(log, format{force: 1, lag: 0.3})
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Read(strings.NewReader(text), "page.jsonl"); err != nil {
			b.Fatal(err)
		}
	}
}
