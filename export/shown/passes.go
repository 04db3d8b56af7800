package shown

import "slices"

// PassOver picks the distances to show of those that a flying pass was measured over:
// the longest in the system's own units, or the longest of all where it has none.
func (s System) PassOver(measured []string) []string {
	longest := func(of ...string) []string {
		for _, name := range append(of, measured...) {
			if slices.Contains(measured, name) {
				return []string{name}
			}
		}
		return nil
	}
	metric, imperial := longest("1 km", "500 m", "200 m"), longest("1 mile", "1/4 mile")
	switch {
	case s == Imperial:
		return imperial
	case s == Both && !slices.Equal(metric, imperial):
		return append(metric, imperial...)
	}
	return metric
}
