// Package device gives the phone app the device it runs on, chosen when it is
// built: a browser, an Android phone, or any other system with a file system.
// What each needs beyond its driver under sensors/device is the translation
// into the words of package platform.
package device
