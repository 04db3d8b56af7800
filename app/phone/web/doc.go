// Package web is the page in which the phone app runs in a browser, and what
// puts it together: the page's own files, the program compiled for the
// browser, the scripts of sensors/device/web, and each of them compressed
// beforehand.
//
// The page does what the program's toolkit leaves to it: it says how wide a
// phone is, turns touches into the mouse events that the toolkit listens to,
// takes what a phone's keyboard types, installs to the home screen, and starts
// without a network once it has been loaded. Its policy lets it talk to the
// place it came from and to nobody else, so that a ride cannot leave the phone
// without the rider's knowledge.
package web
