package shell

import (
	"strings"

	"stillair/export/shown"
)

// region is the region of a BCP 47 tag or of a POSIX locale, such as GB; empty
// where it has none.
func region(tag string) string {
	tag, _, _ = strings.Cut(tag, ".")
	parts := strings.FieldsFunc(tag, func(r rune) bool { return r == '-' || r == '_' })
	for _, p := range parts[min(1, len(parts)):] {
		if len(p) == 2 {
			return strings.ToUpper(p)
		}
	}
	return ""
}

// system gives the units that a rider chose, or that are usual where the phone
// is at home (Unicode CLDR, measurement systems: US, UK, Liberia and Myanmar
// sign roads in miles; the last two no longer by law).
func system(chosen, locale string) shown.System {
	at := region(locale)
	if chosen == "imperial" || chosen == "" && (at == "US" || at == "GB") {
		return shown.Imperial
	}
	return shown.Metric
}

// watts gives the unit of power that a rider chose, or that goes with the
// units.
func watts(chosen string, s shown.System) shown.PowerUnit {
	if chosen == "hp" || chosen == "" && s == shown.Imperial {
		return shown.Horsepower
	}
	return shown.Kilowatts
}
