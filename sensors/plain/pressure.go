package plain

import (
	"fmt"
	"slices"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/mend"
)

var pressureColumns = []column{
	{"t_s", true, "seconds on the clock of motion.csv"},
	{"pressure_pa", true, "Pa"},
}

// Static pressure where people ride, Pa: from above the highest pass to below
// sea level.
const (
	mostPressure  = 1_000_000 // samples
	leastPa       = 30_000
	mostPa        = 110_000
	pascalsPerHPa = 100
)

// readPressure reads pressure.csv. A file in hPa is plain from its size.
func readPressure(f file, clock float64) ([]sensors.Pressure, *tally, error) {
	samples, y, err := readRows(f, pressureColumns, mostPressure, takePressure)
	if err == nil && y.rows > 0 {
		err = y.verdict("pressures")
	}
	if err != nil {
		return nil, y, err
	}
	for i := range samples {
		samples[i].T *= clock
	}
	samples = inOrder(samples, mend.PressureTime, y)
	if err := mendPressure(f.name, samples, y); err != nil {
		return nil, y, err
	}
	samples = slices.DeleteFunc(samples, func(p sensors.Pressure) bool {
		wrong := p.Pa < leastPa || p.Pa > mostPa
		if wrong {
			y.say(0, "range", fmt.Sprintf("a pressure outside %d to %d Pa cannot be; it is left out", leastPa, mostPa))
		}
		return wrong
	})
	return samples, y, nil
}

func takePressure(r row) (p sensors.Pressure, ok bool) {
	if p.T, ok = r.need(pressureColumns, 0); !ok {
		return p, false
	}
	p.Pa, ok = r.need(pressureColumns, 1)
	return p, ok
}

func mendPressure(name string, samples []sensors.Pressure, y *tally) error {
	if len(samples) == 0 {
		return nil
	}
	sizes := make([]float64, len(samples))
	for i, p := range samples {
		sizes[i] = p.Pa
	}
	slices.Sort(sizes)
	switch m := sizes[len(sizes)/2]; {
	case m >= leastPa && m <= mostPa:
	case m*pascalsPerHPa >= leastPa && m*pascalsPerHPa <= mostPa:
		y.say(0, "hPa", fmt.Sprintf("the pressure is in hPa (%.0f) and is converted to Pa", m))
		for i := range samples {
			samples[i].Pa *= pascalsPerHPa
		}
	default:
		return &sensors.InputError{File: name, What: finding.Said(fmt.Sprintf("pressure_pa is %.3g, which is no pressure of the air in Pa", m)),
			Remedy: finding.Said("give it in Pa (about 100000), or leave the file out")}
	}
	return nil
}
