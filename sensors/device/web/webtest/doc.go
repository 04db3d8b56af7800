// Package webtest lets a test that runs in a browser hear from the program that
// drives it.
package webtest
