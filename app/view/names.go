package view

import (
	"math"
	"strings"

	"stillair/export/shown"
	"stillair/runs"
	"stillair/sensors/finding"
)

func (c Context) kindName(k runs.Kind) string { return capital(c.say().Kind(k)) }

// markName writes a mark's name: a hyphen between numbers becomes an en dash.
func (c Context) markName(name string) string {
	return enDashes(c.Book.Say(name))
}

func enDashes(s string) string {
	digit := func(i int) bool { return i >= 0 && i < len(s) && '0' <= s[i] && s[i] <= '9' }
	var out strings.Builder
	for i, r := range s {
		if r == '-' && digit(i-1) && digit(i+1) {
			r = '–'
		}
		out.WriteRune(r)
	}
	return out.String()
}

// otherUnit reports whether a mark is a speed in the system of units that this
// rider does not use.
func (c Context) otherUnit(name string) bool {
	if c.System == shown.Imperial {
		return strings.HasSuffix(name, "km/h")
	}
	return strings.HasSuffix(name, "mph")
}

// headlines are the marks that represent a whole run in a list, the best known
// first.
func (c Context) headlines(k runs.Kind) []string {
	switch {
	case k == runs.Launch && c.System == shown.Imperial:
		return []string{"0-60 mph", "1/4 mile", "1/8 mile", "60 ft"}
	case k == runs.Launch:
		return []string{"0-100 km/h", "0-60 km/h", "60 ft"}
	}
	return nil
}

// headline is the mark that represents a run in a list.
func (c Context) headline(r runs.Run) (runs.Mark, bool) {
	for _, name := range c.headlines(r.Kind) {
		for _, m := range r.Marks {
			if m.Name == name {
				return m, true
			}
		}
	}
	for _, m := range r.Marks {
		if !c.otherUnit(m.Name) {
			return m, true
		}
	}
	if len(r.Marks) > 0 {
		return r.Marks[0], true
	}
	return runs.Mark{}, false
}

// heading names a direction by the nearest of eight compass points.
func (c Context) heading(deg float64) string {
	if math.IsNaN(deg) {
		return ""
	}
	i := int(math.Round(deg/45)) % 8
	return c.Book.Ride.Compass[(i+8)%8]
}

// tell formats a finding in the rider's language and units.
func (c Context) tell(f finding.Finding) string { return capital(c.say().Say(f)) }

// sentence is a finding as a whole sentence, for a paragraph of its own.
func (c Context) sentence(f finding.Finding) string { return c.say().Sentence(f) }

// Error writes an error in the rider's language and units.
func (c Context) Error(err error) string { return c.Book.Say(c.say().Error(err)) }

func capital(s string) string {
	r := []rune(s)
	if len(r) > 0 {
		r[0] = []rune(strings.ToUpper(string(r[0])))[0]
	}
	return string(r)
}
