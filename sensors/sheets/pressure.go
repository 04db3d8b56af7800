package sheets

import (
	"math"
	"slices"

	"stillair/sensors"
	"stillair/sensors/internal/repair"
	"stillair/sensors/median"
)

// pressure reads the barometer, if there is one with a known clock and unit.
func (m *making) pressure() {
	if m.main == nil {
		return
	}
	for _, s := range m.sheets {
		c := s.find(pressure)
		if c == nil {
			continue
		}
		has := func(row int) bool { return !math.IsNaN(c.v[row]) }
		at := m.main.clock
		if s != m.main.sheet {
			_, at = agree([]*timing{m.main.clock}, s.timings(clock, leastStep, mostFixStep, has))
		}
		u := c.unitOfAir()
		if at == nil || !u.known() {
			continue
		}
		var out []sensors.Pressure
		for row := range s.rows {
			if t := at.at(row); has(row) && !math.IsNaN(t) {
				out = append(out, sensors.Pressure{T: t, Pa: c.v[row] * u.si})
			}
		}
		m.log.Pressure, _ = repair.Order(out, repair.PressureTime)
		m.log.Notes = append(m.log.Notes, readAs(pressure, c.name, s.file, u, c.why()))
		return
	}
}

// unitOfAir is the unit in which a column is an air pressure: the one in the
// header if there is one, else the one that fits its size. Air pressure on a
// ride is 500 to 1090 hPa (the range of the ICAO standard atmosphere up to 5500
// m, and the highest ever measured at sea level).
func (c *column) unitOfAir() unit {
	typical := middle(slices.Clone(c.v))
	fits := func(u unit) bool { return typical*u.si > 50_000 && typical*u.si < 109_000 }
	if c.unit.known() && fits(c.unit) {
		return c.unit
	}
	for _, u := range spelled(ofPressure) {
		if fits(u.unit) {
			return u.unit
		}
	}
	return unit{}
}

// middle is the median of the numbers among v; NaN for none.
func middle(v []float64) float64 { return median.In(slices.DeleteFunc(v, math.IsNaN)) }
