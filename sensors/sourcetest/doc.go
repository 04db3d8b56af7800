// Package sourcetest is the conformance test that every sensors.Source must
// pass: a phone, a recorded log or a simulated ride. A test of a source needs
// one line:
//
//	sourcetest.Contract(t, func() sensors.Source { return replay.New(log) })
//
// It checks the contract of sensors.Source (order, no duplicates, prompt end,
// no calls after the end, one goroutine at a time), that of the sample types
// (NaN for absent values, never infinities) and that the numbers are plausible
// in their units: the accelerometer reads about the magnitude of gravity most
// of the time, no speed is above 150 m/s, and air pressure is breathable.
package sourcetest
