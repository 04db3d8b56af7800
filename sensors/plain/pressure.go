package plain

import (
	"slices"
	"strconv"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/repair"
)

var pressureColumns = []column{
	{"t_s", true, "s"},
	{"pressure_pa", true, "Pa"},
}

// Possible static pressure on a ride, Pa: from above the highest pass to below
// sea level.
const (
	mostPressure  = 1_000_000 // samples
	leastPa       = 30_000
	mostPa        = 110_000
	pascalsPerHPa = 100
)

// readPressure reads pressure.csv. A file in hPa is recognised by its values.
func readPressure(f file, clock float64, order *repair.Clock) ([]sensors.Pressure, *tally, error) {
	samples, y, err := readRows(f, pressureColumns, mostPressure, takePressure)
	if err == nil && y.rows > 0 {
		err = y.verdict("plain.want_pressure")
	}
	if err != nil {
		return nil, y, err
	}
	for i := range samples {
		samples[i].T *= clock
	}
	samples = order.Pressure(samples)
	y.notes = append(y.notes, order.Notes(f.name)...)
	if err := repairPressure(f.name, samples, y); err != nil {
		return nil, y, err
	}
	samples = slices.DeleteFunc(samples, func(p sensors.Pressure) bool {
		wrong := p.Pa < leastPa || p.Pa > mostPa
		if wrong {
			y.say(0, "range", finding.New("pressure.impossible", finding.Pressure("least", leastPa), finding.Pressure("most", mostPa)))
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

func repairPressure(name string, samples []sensors.Pressure, y *tally) error {
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
		y.say(0, "hPa", finding.New("pressure.converted", finding.Num("median", m)))
		for i := range samples {
			samples[i].Pa *= pascalsPerHPa
		}
	default:
		return &sensors.InputError{File: name, What: finding.New("pressure.no_air", finding.Text("median", strconv.FormatFloat(m, 'g', 3, 64))),
			Remedy: finding.New("pressure.give_pa")}
	}
	return nil
}
