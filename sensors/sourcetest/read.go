package sourcetest

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// Sound checks the result of a reader for any input: an InputError with a remedy, or
// a log whose readings and fixes are in order and finite.
func Sound(t testing.TB, log *sensors.Log, err error) {
	t.Helper()
	if err != nil {
		var input *sensors.InputError
		if !errors.As(err, &input) || input.What.IsZero() || input.Remedy.IsZero() {
			t.Fatalf("the error %v tells nobody what to do", err)
		}
		return
	}
	for i, m := range log.Motion {
		if i > 0 && !(m.T > log.Motion[i-1].T) || math.IsNaN(r3.Norm(m.Force)) {
			t.Fatalf("reading %d: %+v", i, m)
		}
	}
	for i, x := range log.Fixes {
		if i > 0 && !(x.T > log.Fixes[i-1].T) || !(x.Speed >= 0) || math.IsInf(x.Speed, 0) || math.IsInf(x.T, 0) {
			t.Fatalf("fix %d: %+v", i, x)
		}
	}
}
