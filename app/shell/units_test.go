package shell

import (
	"testing"

	"stillair/app/view"
)

func TestUnitsGoByTheRegion(t *testing.T) {
	for _, c := range []struct {
		locale, units, power string
		system               view.System
		watts                view.Watts
	}{
		{locale: "en-GB", system: view.Imperial, watts: view.Horsepower},
		{locale: "en_US.UTF-8", system: view.Imperial, watts: view.Horsepower},
		{locale: "en-Latn-US", system: view.Imperial, watts: view.Horsepower},
		{locale: "en", system: view.Metric, watts: view.Kilowatts},
		{locale: "de-DE", system: view.Metric, watts: view.Kilowatts},
		{locale: "de-DE", units: "imperial", system: view.Imperial, watts: view.Horsepower},
		{locale: "de-DE", power: "hp", system: view.Metric, watts: view.Horsepower},
		{locale: "en-US", units: "metric", system: view.Metric, watts: view.Kilowatts},
		{locale: "en-GB", power: "kW", system: view.Imperial, watts: view.Kilowatts},
		{locale: "", system: view.Metric, watts: view.Kilowatts},
	} {
		s := system(c.units, c.locale)
		if w := watts(c.power, s); s != c.system || w != c.watts {
			t.Errorf("%+v: %v, %v", c, s, w)
		}
	}
}
