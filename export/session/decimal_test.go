package session

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"
)

func TestAppendDecimal(t *testing.T) {
	tests := []struct {
		x        float64
		decimals int
		want     string
	}{
		{0, 3, "0"}, {1, 3, "1"}, {-1.5, 3, "-1.5"}, {0.0004, 3, "0"}, {-0.0004, 3, "0"}, {0.0005, 3, "0.001"},
		{12.30, 2, "12.3"}, {1e3, 0, "1000"}, {-0.01, 2, "-0.01"}, {100.05, 2, "100.05"},
		{math.NaN(), 2, "null"}, {math.Inf(-1), 2, "null"}, {1e300, 6, "1e+300"}, {1.7e9, 6, "1700000000"},
	}
	for _, tt := range tests {
		if got := string(appendDecimal(nil, tt.x, tt.decimals)); got != tt.want {
			t.Errorf("appendDecimal(%v, %d) = %s, want %s", tt.x, tt.decimals, got, tt.want)
		}
	}
}

// TestDecimalsAreStable checks that a written number is within half a step of
// the value, is read as by strconv, and is the same when written again.
func TestDecimalsAreStable(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	for range 200_000 {
		decimals := rng.IntN(9)
		x := rng.NormFloat64() * math.Pow(10, 6*rng.Float64()-2)
		text := appendDecimal(nil, x, decimals)
		got, ok := parseNumbers(nil, "["+string(text)+"]")
		want, err := strconv.ParseFloat(string(text), 64)
		if !ok || err != nil || got[0] != want {
			t.Fatalf("%s read as %v, strconv says %v", text, got, want)
		}
		if math.Abs(got[0]-x) > 0.5000001/pow10[decimals] {
			t.Fatalf("%v written as %s", x, text)
		}
		if again := appendDecimal(nil, got[0], decimals); string(again) != string(text) {
			t.Fatalf("%s written again as %s", text, again)
		}
	}
}
