// Package sourcetest holds the one suite of checks that every sensors.Source
// must pass, be it a phone, a recorded log or a simulated ride. A test of a
// source needs one line:
//
//	sourcetest.Contract(t, func() sensors.Source { return replay.New(log) })
//
// What is checked is what sensors.Source promises (order, no doubles, prompt
// end, silence after the end, one goroutine at a time), what the sample types
// promise (NaN for what is absent, never infinities) and that the numbers can
// be in the units they claim: the accelerometer reads about the size of
// gravity most of the time, nothing rides at 150 m/s, air has a pressure that
// people can breathe.
package sourcetest
