// Package batch says how many seeds the Monte Carlo tests run over. Tests with
// all seeds take an hour of two processors, more than a build server has; usually
// they run over two fifths, and over all where STILLAIR_SEEDS=all is set:
//
//	STILLAIR_SEEDS=all go test -timeout 90m ./...
//
// Limits are the same for both. Only tests import this package.
package batch

import (
	"os"
	"testing"
)

// Size is the number of seeds of a test that takes full with all seeds, and short
// with go test -short.
func Size(full, short int) int {
	switch {
	case testing.Short():
		return short
	case os.Getenv("STILLAIR_SEEDS") == "all":
		return full
	}
	return max(short, full*2/5)
}
