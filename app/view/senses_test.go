package view

import (
	"math"
	"strings"
	"testing"

	"stillair/app/platform"
	"stillair/app/recorder"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// lineOf is the line about one sensor before the ride.
func lineOf(t *testing.T, c Context, x recorder.Sense) SenseLine {
	t.Helper()
	for _, l := range c.Ready(ReadyState{Senses: []recorder.Sense{x}, Free: 1 << 40}).Senses {
		if l.Sensor == x.Sensor {
			return l
		}
	}
	t.Fatalf("nothing is said of %s", x.Sensor)
	return SenseLine{}
}

// TestRatesHaveALowerBound checks that a rate that is too low is not called enough.
func TestRatesHaveALowerBound(t *testing.T) {
	for _, c := range []struct {
		name   string
		sensor sensors.Sensor
		rate   float64
		grade  Grade
		says   string
	}{
		{"a fast phone", sensors.SensorMotion, 400, Fine, "good: 400 a second"},
		{"a browser", sensors.SensorMotion, 60, Fine, "60 a second: enough"},
		{"just enough", sensors.SensorMotion, 20, Fine, "20 a second: enough"},
		{"too few", sensors.SensorMotion, 19, Doubtful, "only 19 a second"},
		{"three", sensors.SensorMotion, 3, Doubtful, "only 3 a second"},
		{"next to none", sensors.SensorMotion, 0.1, Doubtful, "only < 1 a second"},
		{"one sample", sensors.SensorMotion, math.NaN(), Waiting, "waiting"},
		{"satellites", sensors.SensorFix, 1, Fine, "1 a second"},
		{"fast satellites", sensors.SensorFix, 10, Fine, "10 a second"},
		{"rare satellites", sensors.SensorFix, 0.2, Doubtful, "only one every 5 s"},
		{"one fix", sensors.SensorFix, math.NaN(), Waiting, "searching"},
	} {
		l := lineOf(t, english(), recorder.Sense{Sensor: c.sensor, Condition: sensors.Working, Rate: c.rate, HSD: 3})
		if l.Grade != c.grade || !strings.Contains(l.Words, c.says) {
			t.Errorf("%s: grade %d, says %q, want grade %d and %q", c.name, l.Grade, l.Words, c.grade, c.says)
		}
	}
}

// TestTheWayOutOfADenial checks the way to the settings of each machine, in
// each language, and that there is none if nothing was denied.
func TestTheWayOutOfADenial(t *testing.T) {
	for _, c := range []struct {
		name             string
		on               platform.Machine
		location, motion string // the menu that only this machine has
		german           string
	}{
		{"iPhone", platform.AppleBrowser, "Safari Websites", "Close Safari", "Ortungsdienste"},
		{"another phone's browser", platform.PhoneBrowser, "Tap the icon left of the address", "Tap the icon", "Auf das Symbol links neben der Adresse tippen"},
		{"desk", platform.DeskBrowser, "Click the icon left of the address", "Click the icon", "klicken"},
		{"the app on a phone", platform.PhoneApp, "Apps, Stillair, Permissions", "Sensors off", "Einstellungen, Apps, Stillair"},
	} {
		t.Run(c.name, func(t *testing.T) {
			en, de := english(), german()
			en.Machine, de.Machine = c.on, c.on
			fix := recorder.Sense{Sensor: sensors.SensorFix, Condition: sensors.Denied}
			motion := recorder.Sense{Sensor: sensors.SensorMotion, Condition: sensors.Denied}
			for _, said := range []struct{ way, want string }{
				{lineOf(t, en, fix).Way, c.location}, {lineOf(t, en, motion).Way, c.motion}, {lineOf(t, de, fix).Way, c.german},
			} {
				if !strings.Contains(said.way, said.want) {
					t.Errorf("says %q, want %q in it", said.way, said.want)
				}
			}
			for _, x := range []recorder.Sense{{Sensor: sensors.SensorFix, Condition: sensors.Working, Rate: 1, HSD: 3}, {Sensor: sensors.SensorFix, Condition: sensors.Silent}} {
				if l := lineOf(t, en, x); l.Way != "" {
					t.Errorf("%s: says %q", x.Condition, l.Way)
				}
			}
		})
	}
}

// TestHowToInstall: shown if the browser has not promised to keep the rides.
func TestHowToInstall(t *testing.T) {
	for machine, want := range map[platform.Machine]string{
		platform.AppleBrowser: "Add to Home Screen", platform.PhoneBrowser: "Install app", platform.DeskBrowser: "right end of the address",
	} {
		c := english()
		c.Machine = machine
		if l := c.Obstacles([]platform.Obstacle{platform.Clearable}); len(l) != 1 || !strings.Contains(l[0].Words, want) {
			t.Errorf("machine %d: %+v, want %q in it", machine, l, want)
		}
	}
}

// TestTheSourcesReasonIsSaid distinguishes a page without HTTPS from a phone
// without a sensor, and a permission that waits for a tap from one that is being
// asked for.
func TestTheSourcesReasonIsSaid(t *testing.T) {
	for _, c := range []struct {
		name      string
		condition sensors.Condition
		why       finding.Code
		want      string
	}{
		{"not secure", sensors.Missing, "browser.not_secure", "not opened over https"},
		{"location switched off", sensors.Silent, "browser.no_position", "turn on the phone's location"},
		{"not asked yet", sensors.Asking, "browser.not_asked", "as soon as you allow it here"},
		{"no reason", sensors.Missing, "", "not available on this phone"},
	} {
		x := recorder.Sense{Sensor: sensors.SensorFix, Condition: c.condition}
		if c.why != "" {
			x.Detail = finding.New(c.why)
		}
		if l := lineOf(t, english(), x); !strings.Contains(l.Words, c.want) {
			t.Errorf("%s: says %q, want %q in it", c.name, l.Words, c.want)
		}
	}
}
