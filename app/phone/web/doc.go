// Package web is the page in which the phone app runs in a browser, and the
// code that assembles it: the page's own files, the program compiled for the
// browser, the scripts of sensors/device/web, and a compressed copy of each.
//
// The page does what the program's toolkit leaves to it: it sets the width of
// the viewport, turns touches into the mouse events that the toolkit expects,
// takes the input of a phone's keyboard, installs to the home screen, and
// starts without a network once it has been loaded. Its content security policy
// allows connections to its own origin only, so a ride cannot leave the phone
// without the rider's knowledge.
package web
