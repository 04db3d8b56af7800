package words

import (
	"strings"

	"stillair/export/shown"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Default says which value stands for a field of ride.json that was not entered.
func (b *Book) Default(field string, r sensors.Ride) string {
	code := finding.Code("default." + field)
	if _, ok := b.texts[code]; !ok {
		return field
	}
	x := map[string]finding.Arg{
		"mass_kg":           finding.Mass("x", r.Mass),
		"mass_sd_kg":        finding.Mass("x", shown.Normal95*r.MassSD),
		"rotating_mass_kg":  finding.Mass("x", r.RotatingMass),
		"wind_sd_mps":       finding.Wind("x", r.WindSD),
		"air.temperature_c": finding.Temperature("x", r.Air.Temperature),
		"air.pressure_hpa":  finding.Pressure("x", r.Air.Pressure),
		"air.humidity_pct":  finding.Share("x", r.Air.Humidity),
	}[field]
	return b.Sentence(finding.New(code, x))
}

// Help says what helps against a cause of uncertainty, as a sentence; empty where
// nothing is known.
func (b *Book) Help(cause runs.Cause) string {
	code := HelpAgainst(cause)
	if _, ok := b.texts[code]; !ok {
		return ""
	}
	return b.Sentence(finding.New(code))
}

// HelpAgainst is the code of what helps against a cause.
func HelpAgainst(cause runs.Cause) finding.Code {
	return finding.Code(strings.Replace(string(cause), "limit.", "help.", 1))
}

// Kind names a kind of run.
func (b *Book) Kind(k runs.Kind) string { return b.Name(finding.Code("kind." + string(k))) }
