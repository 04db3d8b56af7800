//go:build doubles

package android

import (
	"context"
	"math"
	"os"
	"strings"
	"testing"
	"time"

	"stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/device/android/doubles"
	"stillair/sensors/sourcetest"
)

var machine *doubles.Machine

func TestMain(m *testing.M) {
	var err error
	if machine, err = doubles.Start(os.Getenv("STAND_INS")); err != nil {
		panic(err)
	}
	os.Exit(m.Run())
}

// record runs the phone for d and returns what it delivered.
func record(t *testing.T, d time.Duration) *sensors.Log {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), d)
	defer cancel()
	log, _ := sensors.Collect(ctx, device.NewLive(NewPort(machine.Native), time.After))
	if n := doubles.Open(); n != 0 {
		t.Errorf("%d sensors are still switched on", n)
	}
	return log
}

func conditions(log *sensors.Log, s sensors.Sensor) string {
	var is []string
	for _, st := range log.States {
		if st.Sensor == s {
			is = append(is, string(st.Condition))
		}
	}
	return strings.Join(is, " ")
}

func TestPhoneKeepsTheContract(t *testing.T) {
	machine.Reset(35)
	machine.Set("allowed", "yes")
	sourcetest.Contract(t, func() sensors.Source { return device.NewLive(NewPort(machine.Native), time.After) },
		sourcetest.Samples(600), sourcetest.Patience(5*time.Second))
}

func TestRatesAndValues(t *testing.T) {
	machine.Reset(35)
	machine.Set("allowed", "yes")
	log := record(t, 4200*time.Millisecond)
	if n := len(log.Motion); n < 4*195 || n > 4.3*200 {
		t.Errorf("%d readings of motion in 4.2 s at 200 Hz", n)
	}
	if n := len(log.Pressure); n < 95 || n > 110 {
		t.Errorf("%d pressures in 4.2 s at 25 Hz", n)
	}
	if n := len(log.Fixes); n < 3 || n > 4 {
		t.Errorf("%d fixes in 4.2 s at 1 Hz: each is to be taken once", n)
	}
	worst := 0.0
	for _, m := range log.Motion[2:] {
		worst = max(worst, math.Abs(m.Turn.X-math.Sin(m.T)))
		if math.Abs(m.Force.Z-9.80665) > 1e-5 || math.Abs(m.Turn.Y-0.5) > 1e-6 {
			t.Fatalf("motion %+v", m)
		}
	}
	if worst > 1e-4 { // linear interpolation over 5 ms, and float32
		t.Errorf("turn rate off by %g rad/s at the time of the force", worst)
	}
	if f := log.Fixes[0]; f.Speed != 20 || math.Abs(f.SpeedSD-0.3) > 1e-6 || f.BearingDeg != 90 || f.UTC.Year() != 2026 {
		t.Errorf("fix %+v", f)
	}
	if p := log.Pressure[0].Pa; math.Abs(p-101325) > 0.01 {
		t.Errorf("pressure %g Pa", p)
	}
	if machine.Get("ordered") != "1" || machine.Get("removed") != "1" {
		t.Errorf("updates ordered %q times and removed %q times", machine.Get("ordered"), machine.Get("removed"))
	}
}

func TestHighRateWhereAllowed(t *testing.T) {
	machine.Reset(35)
	doubles.Sensors(doubles.Phone{})
	if n := len(record(t, 2*time.Second).Motion); n < 2*370 {
		t.Errorf("%d readings of motion in 2 s at 400 Hz", n)
	}
}

// TestClockThatStoodStill: a phone that has slept for an hour, whose sensors
// stamp on the clock that stopped meanwhile.
func TestClockThatStoodStill(t *testing.T) {
	for _, monotonic := range []bool{false, true} {
		machine.Reset(35)
		doubles.Sensors(doubles.Phone{Slept: time.Hour, Monotonic: monotonic, Shortest: 5 * time.Millisecond})
		p := NewPort(machine.Native)
		before := p.Now()
		log := record(t, time.Second)
		if len(log.Motion) == 0 || log.Motion[0].T < before-0.5 || log.Motion[0].T > before+1 {
			t.Errorf("monotonic %v: first motion at %g s, began at %g s", monotonic, log.Motion[0].T, before)
		}
	}
}

func TestLeave(t *testing.T) {
	for _, c := range []struct {
		name, answer, want string
		asked              string
	}{
		{"given before", "", "available working", ""},
		{"given when asked", "yes", "asking available working", "1"},
		{"refused when asked", "no", "asking denied", "1"},
		{"not answered", "", "asking", "1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			machine.Reset(35)
			machine.Set("answer", c.answer)
			if c.asked == "" {
				machine.Set("allowed", "yes")
			}
			log := record(t, 2200*time.Millisecond)
			if got := conditions(log, sensors.SensorFix); got != c.want {
				t.Errorf("fix was %s, want %s", got, c.want)
			}
			if got := machine.Get("asked"); got != c.asked {
				t.Errorf("asked %q times, want %q", got, c.asked)
			}
			if len(log.Motion) < 300 {
				t.Errorf("%d readings of motion meanwhile", len(log.Motion))
			}
		})
	}
}

// TestVersions: from Android 12 on a pending intent has to be marked as
// mutable, from 14 on such an intent names its package; before Android 6
// permission was given at installation.
func TestVersions(t *testing.T) {
	for _, api := range []int{23, 26, 30, 31, 34, 35} {
		machine.Reset(api)
		machine.Set("allowed", "yes")
		log := record(t, 1500*time.Millisecond)
		if len(log.Fixes) == 0 {
			t.Fatalf("API %d: no fix; states %v", api, log.States)
		}
		if given := !math.IsNaN(log.Fixes[0].SpeedSD); given != (api >= 26) {
			t.Errorf("API %d: accuracy of speed given: %v", api, given)
		}
	}
}

func TestWhatIsMissing(t *testing.T) {
	for _, c := range []struct {
		name   string
		set    string // on the Java stage
		absent int
		sensor sensors.Sensor
		want   string
	}{
		{"no barometer", "", pressure, sensors.SensorPressure, "missing"},
		{"no gyroscope", "", turn, sensors.SensorTurn, "missing"},
		{"no accelerometer", "", force, sensors.SensorMotion, "missing"},
		{"no receiver", "no receiver", 0, sensors.SensorFix, "missing"},
		{"location switched off", "switched off", 0, sensors.SensorFix, "silent"},
	} {
		t.Run(c.name, func(t *testing.T) {
			machine.Reset(35)
			machine.Set("allowed", "yes")
			if c.set != "" {
				machine.Set(c.set, "yes")
			}
			doubles.Sensors(doubles.Phone{Absent: c.absent, Shortest: 5 * time.Millisecond})
			log := record(t, 700*time.Millisecond)
			if got := conditions(log, c.sensor); got != c.want {
				t.Errorf("%s was %q, want %q", c.sensor, got, c.want)
			}
			if c.absent != force && len(log.Motion) < 100 {
				t.Errorf("%d readings of motion with something else missing", len(log.Motion))
			}
		})
	}
}

func TestBareFix(t *testing.T) {
	machine.Reset(35)
	machine.Set("allowed", "yes")
	machine.Set("bare", "yes")
	log := record(t, 1500*time.Millisecond)
	if len(log.Fixes) == 0 {
		t.Fatal("no fix")
	}
	f := log.Fixes[0]
	if f.Speed != 20 || !math.IsNaN(f.SpeedSD) || !math.IsNaN(f.HSD) || !math.IsNaN(f.Alt) || !math.IsNaN(f.BearingDeg) {
		t.Errorf("fix %+v", f)
	}
}

// TestOldFixesDoNotCount: a location from an hour before is not a fix of this
// recording.
func TestOldFixesDoNotCount(t *testing.T) {
	machine.Reset(35)
	machine.Set("allowed", "yes")
	machine.Set("known before", "yes")
	begun := NewPort(machine.Native).Now()
	log := record(t, 2500*time.Millisecond)
	if len(log.Fixes) != 2 || log.Fixes[0].T < begun {
		t.Errorf("fixes %+v in a recording that began at %g s", log.Fixes, begun)
	}
}

func TestLeaveTakenBack(t *testing.T) {
	machine.Reset(35)
	machine.Set("allowed", "yes")
	time.AfterFunc(1500*time.Millisecond, func() { machine.Set("allowed", "no") })
	log := record(t, 8*time.Second)
	if got := conditions(log, sensors.SensorFix); got != "available working denied" {
		t.Errorf("fix was %s", got)
	}
}

func TestSensorsThatDie(t *testing.T) {
	machine.Reset(35)
	machine.Set("allowed", "yes")
	time.AfterFunc(time.Second, doubles.Quiet)
	log := record(t, 3500*time.Millisecond)
	if got := conditions(log, sensors.SensorMotion); got != "available working silent" {
		t.Errorf("motion was %s", got)
	}
	if len(log.Fixes) < 2 {
		t.Errorf("%d fixes: the receiver was to go on", len(log.Fixes))
	}
}

func TestFilesFolder(t *testing.T) {
	machine.Reset(35)
	if path, err := FilesFolder(machine.Native); err != nil || path != "/data/user/0/stillair.phone/files" {
		t.Errorf("%q, %v", path, err)
	}
}
