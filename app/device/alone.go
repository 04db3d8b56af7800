//go:build !js

package device

// Answered reports that this program is the app itself: only a browser starts it a
// second time.
func Answered() bool { return false }
