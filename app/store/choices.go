package store

import (
	"errors"
	"io/fs"
	"time"

	"stillair/app/platform"
	"stillair/sensors"
)

const choicesName = "choices.json"

// Choices is what the rider set once and for all.
type Choices struct {
	Version    int        `json:"version"`
	Language   string     `json:"language,omitempty"` // "en", "de"; empty: the system's
	Units      string     `json:"units,omitempty"`    // "metric", "imperial"; empty: by the region
	Power      string     `json:"power,omitempty"`    // "kW", "hp"; empty: by the units
	Look       string     `json:"look,omitempty"`     // "light", "dark"; empty: the system's
	TextSize   float32    `json:"text_size,omitempty"`
	Aloud      bool       `json:"say_results_aloud,omitempty"`
	Sound      bool       `json:"record_sound,omitempty"` // the rider gave permission for the microphone
	Bike       string     `json:"bike,omitempty"`         // ID of the bike chosen last
	Setup      string     `json:"setup,omitempty"`        // name of the setup chosen last
	Air        Air        `json:"air"`
	Wind       *float64   `json:"wind_sd_mps,omitempty"` // along the road from pair to pair; nil: not known
	Station    Station    `json:"station_wind,omitzero"`
	AirEntered AirEntered `json:"air_told,omitzero"` // when Air and Wind were typed in
	GuideSet   bool       `json:"guide_read,omitempty"`
}

// Air is the air as the rider typed it in; nil where it was not entered.
type Air struct {
	Temperature    *float64 `json:"temperature_c,omitempty"`
	TemperatureEnd *float64 `json:"temperature_end_c,omitempty"` // at the end of a ride
	Pressure       *float64 `json:"pressure_hpa,omitempty"`
	Humidity       *float64 `json:"humidity_pct,omitempty"`
}

// Station is the wind at a weather station nearby as the rider typed it in; nil
// where it was not entered.
type Station struct {
	Speed *float64 `json:"speed_mps,omitempty"`
	From  *float64 `json:"from_deg,omitempty"`
}

// SI gives it to package sensors.
func (s Station) SI() sensors.Wind {
	return sensors.Wind{Speed: value(s.Speed), FromDeg: value(s.From)}
}

// AirEntered is when each value of air and wind was typed in, or said to hold
// still; zero where that is not known.
type AirEntered struct {
	Temperature time.Time `json:"temperature,omitzero"`
	Pressure    time.Time `json:"pressure,omitzero"`
	Humidity    time.Time `json:"humidity,omitzero"`
	Wind        time.Time `json:"wind,omitzero"`
	Station     time.Time `json:"station_wind,omitzero"`
}

// AirSince is when the oldest of the values of air and wind was typed in, zero
// where that is not known; known is false where there are no values.
func (c Choices) AirSince() (since time.Time, known bool) {
	for _, x := range []struct {
		value *float64
		at    time.Time
	}{{c.Air.Temperature, c.AirEntered.Temperature}, {c.Air.Pressure, c.AirEntered.Pressure},
		{c.Air.Humidity, c.AirEntered.Humidity}, {c.Wind, c.AirEntered.Wind},
		{c.Station.Speed, c.AirEntered.Station}, {c.Station.From, c.AirEntered.Station}} {
		if x.value == nil {
			continue
		}
		if !known || x.at.Before(since) {
			since = x.at
		}
		known = true
	}
	return since, known
}

// AirHolds is for how long typed air counts as that of the hour, on the day it
// was typed in (common practice: weather reports are renewed every six hours).
const AirHolds = 6 * time.Hour

// AirIsOld reports whether air that was typed in then needs another look now.
// The day is that of now's time zone.
func AirIsOld(then, now time.Time) bool {
	y, m, d := now.Date()
	ty, tm, td := then.In(now.Location()).Date()
	return y != ty || m != tm || d != td || now.Sub(then) > AirHolds
}

// SI gives the air in the units of package sensors.
func (a Air) SI() sensors.Air {
	return sensors.Air{Temperature: value(a.Temperature), TemperatureEnd: value(a.TemperatureEnd), Pressure: value(a.Pressure) * 100, Humidity: value(a.Humidity) / 100}
}

// ReadChoices gives the rider's choices; none made yet is not an error.
func ReadChoices(files platform.Files) (Choices, error) {
	c := Choices{Version: Version}
	err := readJSON(files, choicesName, &c)
	if errors.Is(err, fs.ErrNotExist) {
		return c, nil
	}
	if err != nil {
		return Choices{Version: Version}, err
	}
	return c, nil
}

// WriteChoices keeps the rider's choices.
func WriteChoices(files platform.Files, c Choices) error {
	c.Version = Version
	return writeJSON(files, choicesName, c)
}
