// Package shell is the phone app behind its screens: it holds the navigation
// state, starts and ends recordings, has rides analysed, and stores what the
// rider enters. It draws only through package screens and touches the device
// only through package platform, so the whole app runs in a test.
//
// All of a Shell belongs to Fyne's drawing goroutine. Slow work, such as
// storage, sensors and analysis, runs on other goroutines and returns through
// Do.
package shell
