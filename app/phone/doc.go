// Program phone is Stillair on a phone, in a browser, and for trying out on a
// desktop. It opens a window and puts the app of package shell into it.
//
// It needs what Fyne needs to draw: nothing but Go for the browser, a C compiler
// for Android ("desk android" has the rest), Xcode for iPhones, and on a desktop
// a C compiler with the headers of the window system, which is why a desktop
// build has to be asked for:
//
//	GOOS=js GOARCH=wasm go build ./app/phone
//	go build -tags desktop,x11 ./app/phone
//
// Built any other way it only says so, so that a machine with nothing but Go
// can build and check the whole project.
package main
