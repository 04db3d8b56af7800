// Package device turns the sensors of a real phone into a sensors.Source. The
// differences between platforms are behind Port: a driver that collects events
// where the system delivers them. Live polls it ten times a second, sorts the
// samples, detects a sensor that stops, and reports the state of each sensor.
//
// Collecting outside the program matters on a phone. In a browser each event
// that wakes the program costs as much as the work it then does, and an event
// that finds the program drawing is lost; on Android a separate thread reads
// the sensor queue. Either way an event carries the time at which it was
// measured or dispatched, so that late polling causes nothing but delay.
//
// The packages below this one hold the drivers: web for browsers, android for
// Android. They are the only ones in the tree that touch JavaScript and C.
package device
