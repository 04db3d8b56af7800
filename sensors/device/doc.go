// Package device turns the sensors of a real phone into a sensors.Source. What
// differs between phones is behind Port: a driver that collects events where
// the system hands them over. Live empties it ten times a second, puts the
// samples in order, notices a sensor that stops, and says how each sensor is.
//
// Collecting away from the program matters on a phone. In a browser each event
// that wakes the program costs as much as the work it then does, and an event
// that finds the program drawing is lost; on Android the sensor queue is read
// by a thread of its own. Either way an event carries the time at which it was
// measured or dispatched, so that emptying late costs nothing but delay.
//
// The packages below this one hold the drivers: web for browsers, android for
// Android. They are the only ones in the tree that touch JavaScript and C.
package device
