package main

import (
	"strconv"
	"strings"

	"stillair/sensors/units"
)

// speedUnits are the units in which a speed may be given, and their size in m/s.
// Longer names come first, since "m/s" also ends "km/s".
func speedUnits() []struct {
	name string
	si   float64
} {
	return []struct {
		name string
		si   float64
	}{{"km/h", units.KMH}, {"mph", units.MPH}, {"m/s", 1}}
}

// parseSpeed reads a speed such as 110km/h, 70 mph or 30m/s, in m/s.
func parseSpeed(flag, text string) (float64, error) {
	for _, u := range speedUnits() {
		if number, ok := strings.CutSuffix(strings.TrimSpace(text), u.name); ok {
			v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
			if err == nil && v > 0 && v*u.si < 200 {
				return v * u.si, nil
			}
		}
	}
	return 0, usage("--%s %q is not a speed: write it as 110km/h, 70mph or 30m/s", flag, text)
}

// parseShare reads a share such as 2% or 0.02.
func parseShare(flag, text string) (float64, error) {
	number, percent := strings.CutSuffix(strings.TrimSpace(text), "%")
	v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	if percent {
		v /= 100
	}
	if err != nil || !(v > 0 && v < 1) {
		return 0, usage("--%s %q is not a share: write it as 2%% or 0.02", flag, text)
	}
	return v, nil
}
