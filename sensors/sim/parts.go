package sim

import "strings"

// Part is an invented part of a bike: what it adds to the drag area, as a share
// of the bike's own, and to the mass.
type Part struct {
	Name string
	Drag float64
	Mass float64 // kg
}

// Parts are the parts whose names a setup can be made of.
func Parts() []Part {
	return []Part{{"short screen", 0, 0}, {"tall screen", 0.08, 1}, {"panniers", 0.11, 9}, {"top box", 0.05, 5}, {"hand guards", 0.015, 0.8}}
}

// Dressed is a bike with the parts in a list of names joined by plus signs; false
// if one is not among Parts.
func Dressed(b Bike, name string) (Setup, bool) {
	out := Setup{Name: name, CdA: b.CdA, Mass: b.Mass}
	for _, want := range strings.Split(name, "+") {
		found := false
		for _, p := range Parts() {
			if p.Name == strings.TrimSpace(want) {
				out.CdA, out.Mass, found = out.CdA+p.Drag*b.CdA, out.Mass+p.Mass, true
			}
		}
		if !found {
			return out, false
		}
	}
	return out, true
}

// Alternating is pairs of coast-downs with every setup in turn, there and back
// through their order: A, B, C, C, B, A for three.
func Alternating(setups []Setup, pairs int, from, to float64) []Act {
	var plan []Act
	change := func(s Setup) {
		plan = append(plan, Change{Setup: s, Seconds: 60})
		plan = append(plan, CoastPairs(pairs, from, to)...)
	}
	for _, s := range setups {
		change(s)
	}
	for i := len(setups) - 1; i >= 0; i-- {
		change(setups[i])
	}
	return append(plan, Brake{}, Stand{Seconds: 15})
}
