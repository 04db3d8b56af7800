// Package doubles stands in for Android in tests of package android: Java classes with the
// names of Android's in a virtual machine, and libraries with the names of Android's sensor
// queue and microphone. It is compiled for tests on a machine that has Java, with the tag
// doubles; .ci/android/doubles builds its classes and libraries.
package doubles
