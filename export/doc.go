// Package export writes and reads the files of Stillair.
package export
