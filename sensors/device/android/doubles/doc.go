// Package doubles plays Android to package android where there is none: Java
// classes with the names of Android's in a virtual machine, and libraries with
// the names of Android's sensor queue and microphone. It is compiled for tests on a machine
// that has Java, with the tag doubles; .ci/android/doubles builds what it needs.
package doubles
