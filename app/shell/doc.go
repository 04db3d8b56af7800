// Package shell is the phone app behind its screens: it knows where the rider
// is, starts and ends recordings, has rides measured, and keeps what the rider
// tells it. It draws only through package screens and touches the device only
// through package platform, so the whole app runs in a test.
//
// All of a Shell belongs to Fyne's drawing goroutine. What may take long, such as
// storage, sensors and measuring, runs aside and comes back through Do.
package shell
