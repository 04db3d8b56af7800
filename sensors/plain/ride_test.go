package plain

import (
	"errors"
	"math"
	"os"
	"strings"
	"testing"

	"stillair/sensors"
	"stillair/sensors/internal/repair"
)

func TestDecodeRide(t *testing.T) {
	b, err := os.ReadFile("testdata/ride-v1.json")
	if err != nil {
		t.Fatal(err)
	}
	got, notes, err := DecodeRide(b, "ride.json")
	if err != nil || len(notes) > 0 {
		t.Fatal(err, notes)
	}
	want := sensors.Ride{Bike: "blue naked 700", Mass: 290, MassSD: 3, RotatingMass: 8, WindSD: 1.5, LimitRPM: math.NaN(), Station: sensors.Wind{Speed: math.NaN(), FromDeg: math.NaN()},
		Air:   sensors.Air{Temperature: 18, TemperatureEnd: math.NaN(), Pressure: 100900, Humidity: 0.6},
		Gears: []sensors.Gear{{Name: "4", RPMPerMPS: 165}}, Axes: repair.AxesUp,
		Setups: []sensors.Setup{{From: 0, Name: "panniers off", Mass: math.NaN()}, {From: 1450, Name: "panniers on", Mass: math.NaN()}}}
	if d := differs(&sensors.Log{Ride: got}, &sensors.Log{Ride: want}); d != "" {
		t.Errorf("%s: got %+v", d, got)
	}
	if again, _, err := DecodeRide(EncodeRide(got), "again"); err != nil || differs(&sensors.Log{Ride: again}, &sensors.Log{Ride: want}) != "" {
		t.Errorf("written and read again: %+v, %v", again, err)
	}
}

func TestRideWithNothingEntered(t *testing.T) {
	for _, text := range []string{`{}`, `{"version": 1}`, `{"mass_kg": null, "air": null, "gears": null, "setups": [], "axes": null}`, "\n {}\n"} {
		got, _, err := DecodeRide([]byte(text), "ride.json")
		if d := differs(&sensors.Log{Ride: got}, &sensors.Log{Ride: sensors.UnknownRide()}); err != nil || d != "" && len(got.Gears)+len(got.Setups) > 0 {
			t.Errorf("%s: %+v, %v", text, got, err)
		}
	}
}

func TestBadRides(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"a list", `[]`, "json.no_object"},
		{"two texts", `{} {}`, "json.not_whole"},
		{"newer version", `{"version": 2}`, `ride.version version="2"`},
		{"half a version", `{"version": 1.5}`, `ride.version version="1.5"`},
		{"mass zero", `{"mass_kg": 0}`, `ride.outside field="mass_kg" value="0" least="20" most="5000"`},
		{"mass in words", "{\n\n\"mass_kg\": \"heavy\"}", `ride.json:3: ride.no_number field="mass_kg"`},
		{"mass twice", `{"mass_kg": 290, "mass_kg": 300}`, `ride.twice field="mass_kg"`},
		{"no drive", `{"drive": "steam"}`, `ride.unknown_drive value="steam"`},
		{"no cylinder", `{"cylinders": 0}`, `ride.outside field="cylinders" value="0" least="1" most="12"`},
		{"pressure in Pa", `{"air": {"pressure_hpa": 100900}}`, `ride.outside field="air.pressure_hpa" value="100900" least="300" most="1100"`},
		{"temperature in K", `{"air": {"temperature_c": 291}}`, `ride.outside field="air.temperature_c" value="291"`},
		{"humidity", `{"air": {"humidity_pct": 160}}`, `ride.outside field="air.humidity_pct"`},
		{"air a number", `{"air": 1}`, `ride.no_object field="air"`},
		{"gears a text", `{"gears": "4"}`, `ride.no_list field="gears"`},
		{"gear without ratio", `{"gears": [{"name": "4"}]}`, `ride.missing field="gears[0].rpm_per_mps"`},
		{"gear of zero", `{"gears": [{"name": "4", "rpm_per_mps": 0}]}`, `ride.outside field="gears[0].rpm_per_mps" value="0"`},
		{"setup without start", `{"setups": [{"name": "a"}]}`, `ride.missing field="setups[0].from_s"`},
		{"setup without mass", `{"setups": [{"from_s": 0, "mass_kg": 0}]}`, `ride.outside field="setups[0].mass_kg" value="0"`},
		{"two at once", `{"setups": [{"from_s": 5}, {"from_s": 5}]}`, "ride.setups_at_once"},
		{"axes", `{"axes": "left"}`, `axes.unknown_word value="left"`},
		{"beyond all numbers", `{"setups": [{"from_s": 1e999}]}`, `ride.outside field="setups[0].from_s"`},
	} {
		_, _, err := DecodeRide([]byte(c.text), "ride.json")
		var input *sensors.InputError
		if !errors.As(err, &input) || input.Remedy.IsZero() || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one with %q", c.name, err, c.want)
		}
	}
}

func TestSetupsAreSorted(t *testing.T) {
	ride, _, err := DecodeRide([]byte(`{"setups": [{"from_s": 9, "name": "b"}, {"from_s": 1, "name": "a", "mass_kg": 300}]}`), "ride.json")
	if err != nil || ride.Setups[0].Name != "a" || ride.Setups[0].Mass != 300 || ride.SetupAt(10).Name != "b" {
		t.Errorf("%+v, %v", ride.Setups, err)
	}
}

func TestNameInAnotherEncoding(t *testing.T) {
	ride, notes, err := DecodeRide([]byte("{\"bike\": \"gr\xfcn\"}"), "ride.json") // Latin-1
	if err != nil || ride.Bike != "gr�n" || len(notes) != 1 {
		t.Errorf("%q, %v, %v", ride.Bike, notes, err)
	}
}
