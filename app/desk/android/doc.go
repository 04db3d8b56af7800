// Package android builds, signs and checks the Android package of the phone
// app without Google's build tools: what it needs beyond Go are four of
// Debian's programs.
//
//	clang, lld   compile and link the program as a library for arm64
//	aapt         encodes the manifest, against a framework of our own (resources.go)
//	smali        assembles the service and the activity (files/smali)
//	apksigner    signs the package (schemes v2 and v3)
//
// # Trial and release
//
// With the NDK the library is linked against a phone's own headers, and the
// package is a release. Without it the library is linked against the few
// headers in files/include, written from bionic's public documentation, and
// against libraries that hold no code. What such a package does on a phone has
// never been seen, so it is a trial: it says so in its name, installs beside a
// release, and tests the phone when it is first started.
//
// # What is checked
//
// Build ends by checking what it made (check.go): that the library leaves no
// name undefined but those that were looked up one by one (files/names.txt),
// that sizes and values are the phone's (files/sizes.c), that pages of 16 KiB
// will do, as phones with Android 15 may have, that every class the manifest
// names is there and every native method of those classes is in the library,
// and that the signature holds.
package android
