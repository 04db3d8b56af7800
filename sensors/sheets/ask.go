package sheets

import (
	"path"
	"strings"

	"stillair/sensors/finding"
)

// Ask is a person's instruction about a column that overrides what was found.
type Ask struct {
	role   role
	column string // may begin with the name of its file; "": the one that was found
	unit   unit   // the zero unit: as found
	off    bool   // no column has this role
}

// askable are the words for the roles in an Ask.
func askable() map[string]role {
	return map[string]role{"time": clock, "fix-time": fixClock, "ax": force, "ay": force + 1, "az": force + 2,
		"gx": turn, "gy": turn + 1, "gz": turn + 2, "speed": speed, "lat": latitude, "lon": longitude,
		"alt": altitude, "bearing": bearing, "pressure": pressure}
}

// ParseAsk reads what a person says about a column:
//
//	speed=GPS velocity              that column is the speed
//	speed=GPS velocity as km/h      and it is in km/h
//	speed=as km/h                   the column that was found is in km/h
//	speed=track.csv/v as mph        the column v of that file
//	pressure=none                   no column is
//
// The roles are time, fix-time, ax, ay, az (with gravity), gx, gy, gz, speed,
// lat, lon, alt, bearing and pressure.
func ParseAsk(text string) (Ask, error) {
	name, value, found := strings.Cut(text, "=")
	r, ok := askable()[strings.TrimSpace(strings.ToLower(name))]
	if !found || !ok {
		return Ask{}, finding.Fail("sheets.ask_role", finding.Text("text", text))
	}
	a := Ask{role: r}
	value = strings.TrimSpace(value)
	if u, ok := strings.CutPrefix(value, "as "); ok {
		value = " as " + u
	}
	if i := strings.LastIndex(value, " as "); i >= 0 {
		if a.unit = unitOf(r.quantity(), value[i+4:]); !a.unit.known() {
			return Ask{}, finding.Fail("sheets.ask_unit", finding.Text("unit", strings.TrimSpace(value[i+4:])), finding.Of("what", r.name()))
		}
		value = value[:i]
	}
	a.column = strings.TrimSpace(value)
	a.off = strings.EqualFold(a.column, "none")
	return a, nil
}

// apply applies the instruction to a column.
func (c *column) apply(asked []Ask, file string) {
	for _, a := range asked {
		switch names := a.names(c.name, file); {
		case a.off && c.role == a.role:
			c.role = none
		case a.off:
		case a.column == "" && c.role == a.role:
			c.unit, c.asked = a.unit, true
		case names:
			c.role, c.unit, c.asked, c.rank = a.role, a.unit, true, 0
		case a.column != "" && c.role == a.role && !c.asked:
			c.role = none
		}
	}
}

// names reports whether the Ask is about the column with that name in the file.
func (a Ask) names(column, file string) bool {
	if strings.EqualFold(a.column, strings.TrimSpace(column)) {
		return true
	}
	dir, name, found := strings.Cut(a.column, "/")
	base := path.Base(file)
	return found && strings.EqualFold(name, strings.TrimSpace(column)) &&
		(strings.EqualFold(dir, base) || strings.EqualFold(dir, strings.TrimSuffix(base, path.Ext(base))))
}
