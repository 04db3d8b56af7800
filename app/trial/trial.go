// Package trial finds out what works on a phone whose package was never run on
// one: the storage, the rates and pauses of the sensors, their axes and clocks,
// the service that keeps a recording going, and what is left of all that with
// the screen off. It takes two minutes and two actions by the rider: lay the phone
// on its back, and switch its screen off for half a minute.
//
// The result says what was measured, not what follows for a ride. It holds no
// place and nothing else of the rider's, so that it can be shared.
package trial

import "time"

// Topic is what is tried.
type Topic string

// The topics, in the order of the result.
const (
	Storage  Topic = "storage"
	Motion   Topic = "motion"
	Turn     Topic = "turn"
	Fixes    Topic = "fixes"
	Pressure Topic = "pressure"
	Clocks   Topic = "clocks"
	Axes     Topic = "axes"
	Service  Topic = "service"
	Dark     Topic = "dark"
)

// Verdict is how a topic did.
type Verdict string

// The verdicts.
const (
	Works   Verdict = "works"
	Differs Verdict = "differs" // it works, but not as expected
	Fails   Verdict = "fails"
	Untried Verdict = "untried" // it could not be tried: no sky, no such sensor, the screen stayed on
)

// Line is what was found of one topic.
type Line struct {
	Topic   Topic   `json:"topic"`
	Verdict Verdict `json:"verdict"`
	// Numbers are the measured values by name; the names are listed below.
	Numbers map[string]float64 `json:"numbers,omitempty"`
	Said    string             `json:"said,omitempty"` // an error, in the words of the system
}

// Names of numbers.
const (
	Rate        = "rate"       // 1/s
	Longest     = "longest"    // longest pause, s
	FixLongest  = "fixLongest" // longest pause of the satellites, s
	Megabytes   = "megabytes"  // free
	Seconds     = "seconds"    // duration
	Hectopascal = "hPa"
	LateSpread  = "lateSpread"  // difference between the shortest and longest delay of samples, s
	FixBeside   = "fixBeside"   // delay of fixes relative to motion, s
	X, Y, Z     = "x", "y", "z" // mean specific force, m/s²
)

// Result is what a trial found.
type Result struct {
	Kind  string    `json:"kind"` // always ResultKind
	At    time.Time `json:"at"`
	Lines []Line    `json:"lines"`
}

// ResultKind marks the file of a result.
const ResultKind = "stillair trial 1"

// Phase is what the rider is to do while the trial runs.
type Phase string

// The phases.
const (
	LieStill  Phase = "lie still"  // on its back, on a table
	SwitchOff Phase = "switch off" // the screen, for half a minute
)
