package shown

import (
	"unicode"
	"unicode/utf8"

	"stillair/sensors"
	"stillair/sensors/units"
)

// Sentence returns words as a sentence: with a capital and a full stop.
func Sentence(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	s = string(unicode.ToUpper(first)) + s[size:]
	if last := s[len(s)-1]; last != '.' && last != '!' && last != '?' {
		s += "."
	}
	return s
}

// Default says which default stands for a field of ride.json that was not told.
func Default(field string, r sensors.Ride, u System) string {
	celsius, hectopascal, percent := Unit{"°C", 1}, Unit{"hPa", units.Hectopascal}, Unit{"%", 0.01}
	meters := Unit{"m/s", 1}
	for _, d := range []struct {
		field, words string
		of           Quantity
		value        float64
		decimals     int
	}{
		{"mass_kg", "The mass as ridden", Mass, r.Mass, 0},
		{"mass_sd_kg", "How well the mass is known, ±", Mass, Normal95 * r.MassSD, 0},
		{"rotating_mass_kg", "What the wheels add to the inertia", Mass, r.RotatingMass, 1},
		{"wind_sd_mps", "How much the wind differs from pair to pair", Quantity{meters, meters}, r.WindSD, 1},
		{"air.temperature_c", "The temperature of the air", Quantity{celsius, celsius}, r.Air.Temperature, 0},
		{"air.pressure_hpa", "The pressure of the air", Quantity{hectopascal, hectopascal}, r.Air.Pressure, 0},
		{"air.humidity_pct", "The humidity of the air", Quantity{percent, percent}, r.Air.Humidity, 0},
	} {
		switch {
		case d.field != field:
		case finite(d.value):
			return d.words + ": " + u.Number(d.of, d.value, d.decimals) + " (" + field + ")"
		default:
			return d.words + " (" + field + ")"
		}
	}
	return field
}
