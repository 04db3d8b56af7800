package plain

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"
	"time"
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
		if got, state := number([]byte(" " + s + " ")); state != filled || math.Float64bits(got) != math.Float64bits(want) {
			t.Fatalf("%q: %v (%v), want %v", s, got, state, want)
		}
	}
}

func TestCellsThatAreNoNumbers(t *testing.T) {
	for _, c := range []struct {
		text string
		want cell
	}{
		{"", empty}, {"  ", empty}, {"NaN", empty}, {"null", empty}, {"N/A", empty}, {"-", empty}, {"None", empty},
		{"inf", broken}, {"-Infinity", broken}, {"1e999", broken}, {"1,5", broken}, {".", broken}, {"-.", broken},
		{"1.2.3", broken}, {"--1", broken}, {"abc", broken}, {"\x00", broken},
	} {
		if v, state := number([]byte(c.text)); state != c.want || !math.IsNaN(v) {
			t.Errorf("%q: %v, %v; want NaN, %v", c.text, v, state, c.want)
		}
	}
}

func TestUTCMillis(t *testing.T) {
	for _, c := range []struct {
		text  string
		want  time.Time
		state cell
	}{
		{"1533226488299", time.UnixMilli(1533226488299), filled},
		{"1533226488299.123456", time.Unix(1533226488, 299123456), filled},
		{"1533226488299.5", time.Unix(1533226488, 299500000), filled},
		{"1.533226488299e12", time.UnixMilli(1533226488299), filled},
		{"", time.Time{}, empty},
		{"12345", time.Time{}, broken},
		{"1533226488", time.Time{}, broken}, // seconds
		{"1e300", time.Time{}, broken},
		{"9223372036854775807", time.Time{}, broken},
		{"1533226488299.x", time.Time{}, broken},
	} {
		if got, state := utcMillis([]byte(c.text)); state != c.state || !got.Equal(c.want) {
			t.Errorf("%q: %v, %v; want %v, %v", c.text, got, state, c.want, c.state)
		}
	}
}
