// Package memtest measures what a test holds in memory, from outside: the most
// that its process ever held, as Linux counts it.
package memtest
