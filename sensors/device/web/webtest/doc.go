// Package webtest lets a test in a browser receive messages from the program
// that drives it.
package webtest
