// Package batch sets the number of seeds of the Monte Carlo tests. Usually it is
// two fifths of them, which leaves a build server time for the other checks, and
// all of them if STILLAIR_SEEDS=all is set:
//
//	STILLAIR_SEEDS=all go test -timeout 90m ./...
//
// Limits are the same for both. Only tests import this package.
package batch

import (
	"os"
	"testing"
)

// Size is the number of seeds of a test that has full in all, and short with go
// test -short.
func Size(full, short int) int {
	n := All(full, short)
	if os.Getenv("STILLAIR_SEEDS") == "all" {
		return n
	}
	return max(short, n*2/5)
}

// All is Size for a test that needs all seeds: with fewer it would miss its limits by
// chance.
func All(full, short int) int {
	if testing.Short() {
		return short
	}
	return full
}
