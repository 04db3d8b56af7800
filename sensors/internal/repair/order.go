// Package repair corrects recorded logs: the order of samples, the units and
// the signs. Everything is inferred from the data, and corrected only if the
// data leave no doubt.
package repair

import (
	"cmp"
	"slices"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Disorder counts the changes by Order.
type Disorder struct {
	Moved   int // samples that followed a later one
	Doubled int // samples with the time of an earlier one, which are left out
}

// Order sorts samples by time, in place, and keeps the first of those with
// equal times.
func Order[S any](samples []S, time func(S) float64) ([]S, Disorder) {
	var d Disorder
	if len(samples) == 0 {
		return samples, d
	}
	newest := time(samples[0])
	for _, s := range samples {
		t := time(s)
		if t < newest {
			d.Moved++
		}
		newest = max(newest, t)
	}
	if d.Moved > 0 {
		slices.SortStableFunc(samples, func(a, b S) int { return cmp.Compare(time(a), time(b)) })
	}
	whole := len(samples)
	samples = slices.CompactFunc(samples, func(a, b S) bool { return time(a) == time(b) })
	d.Doubled = whole - len(samples)
	return samples, d
}

// Notes are the findings about the changes; what is the code of the kind of
// samples: "input.sample" or another.
func (d Disorder) Notes(file string, what finding.Code) (notes []sensors.Note) {
	one := finding.Of("what", finding.New(what))
	if d.Moved > 0 {
		notes = append(notes, sensors.Note{File: file, Count: d.Moved, What: finding.New("input.sorted", one)})
	}
	if d.Doubled > 0 {
		notes = append(notes, sensors.Note{File: file, Count: d.Doubled, What: finding.New("input.doubled", one)})
	}
	return notes
}

// The times of the samples, for Order.
func MotionTime(m sensors.Motion) float64     { return m.T }
func FixTime(f sensors.Fix) float64           { return f.T }
func PressureTime(p sensors.Pressure) float64 { return p.T }
func SoundTime(s sensors.Sound) float64       { return s.T }
