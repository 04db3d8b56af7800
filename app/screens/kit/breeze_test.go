package kit

import (
	"testing"
)

// BenchmarkAir draws the ornament of a page as a phone of double density does
// each time the page is shown.
func BenchmarkAir(b *testing.B) {
	for b.Loop() {
		air(208, 88, Light().Line)
	}
}
