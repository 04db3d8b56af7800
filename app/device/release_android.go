//go:build !trial

package device

const trial = false
