//go:build trial

package device

// trial says that this package was made without the phone's own headers.
const trial = true
