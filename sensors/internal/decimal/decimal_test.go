package decimal

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"
)

// TestNumberAgreesWithStrconv, the reference, bit by bit.
func TestNumberAgreesWithStrconv(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	var texts []string
	for range 20_000 {
		v := rng.NormFloat64() * math.Pow(10, float64(rng.IntN(20)-8))
		for _, digits := range []int{-1, 0, 3, 9, 17} {
			texts = append(texts, strconv.FormatFloat(v, 'f', digits, 64), strconv.FormatFloat(v, 'e', digits, 64))
		}
	}
	texts = append(texts, "0", "-0", "1.", ".5", "-.5", "9007199254740993", "00012.500", "0.1", "1e-5", "+3", "123456789012345.6", "9999999999999999")
	for _, s := range texts {
		want, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		if got, state := Read([]byte(" " + s + " ")); state != Filled || math.Float64bits(got) != math.Float64bits(want) {
			t.Fatalf("%q: %v (%v), want %v", s, got, state, want)
		}
	}
}

func TestCellsThatAreNoNumbers(t *testing.T) {
	for _, c := range []struct {
		text string
		want Cell
	}{
		{"", Empty}, {"  ", Empty}, {"NaN", Empty}, {"null", Empty}, {"N/A", Empty}, {"-", Empty}, {"None", Empty},
		{"inf", Broken}, {"-Infinity", Broken}, {"1e999", Broken}, {"1,5", Broken}, {".", Broken}, {"-.", Broken},
		{"1.2.3", Broken}, {"--1", Broken}, {"abc", Broken}, {"\x00", Broken},
	} {
		if v, state := Read([]byte(c.text)); state != c.want || !math.IsNaN(v) {
			t.Errorf("%q: %v, %v; want NaN, %v", c.text, v, state, c.want)
		}
	}
}
