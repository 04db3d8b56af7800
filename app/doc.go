// Package app is the root of the programs: the command line under app/desk and
// the phone app under app/phone.
package app
