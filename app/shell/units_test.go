package shell

import (
	"testing"

	"stillair/export/shown"
)

func TestUnitsGoByTheRegion(t *testing.T) {
	for _, c := range []struct {
		locale, units, power string
		system               shown.System
		watts                shown.PowerUnit
	}{
		{locale: "en-GB", system: shown.Imperial, watts: shown.Horsepower},
		{locale: "en_US.UTF-8", system: shown.Imperial, watts: shown.Horsepower},
		{locale: "en-Latn-US", system: shown.Imperial, watts: shown.Horsepower},
		{locale: "en", system: shown.Metric, watts: shown.Kilowatts},
		{locale: "de-DE", system: shown.Metric, watts: shown.Kilowatts},
		{locale: "de-DE", units: "imperial", system: shown.Imperial, watts: shown.Horsepower},
		{locale: "de-DE", power: "hp", system: shown.Metric, watts: shown.Horsepower},
		{locale: "en-US", units: "metric", system: shown.Metric, watts: shown.Kilowatts},
		{locale: "en-GB", power: "kW", system: shown.Imperial, watts: shown.Kilowatts},
		{locale: "", system: shown.Metric, watts: shown.Kilowatts},
	} {
		s := system(c.units, c.locale)
		if w := watts(c.power, s); s != c.system || w != c.watts {
			t.Errorf("%+v: %v, %v", c, s, w)
		}
	}
}
