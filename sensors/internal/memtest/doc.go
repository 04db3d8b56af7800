// Package memtest measures the peak memory of a test's process, as counted by
// Linux.
package memtest
