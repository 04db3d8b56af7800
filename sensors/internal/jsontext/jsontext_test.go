package jsontext

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/tidwall/gjson"
)

func TestCheck(t *testing.T) {
	for _, c := range []struct {
		name, text string
		ok         bool
	}{
		{"object", `{"a": [1, 2, {"b": null}]}`, true},
		{"brackets in a string", `"` + strings.Repeat("[", 100) + `\"["`, true},
		{"deep", strings.Repeat("[", 33) + strings.Repeat("]", 33), false},
		{"as deep as may be", strings.Repeat("[", 32) + strings.Repeat("]", 32), true},
		{"cut", `{"a": 1`, false},
		{"nothing", ``, false},
		{"two", `{} {}`, false},
		{"a million brackets", strings.Repeat("[", 1_000_000), false},
	} {
		if err := Check([]byte(c.text)); (err == nil) != c.ok {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func TestShift(t *testing.T) {
	for _, c := range []struct {
		literal string
		places  int
		want    float64
	}{
		{"57", -2, 0.57}, {"1009.25", 2, 100925}, {"0", 2, 0}, {"-4.5e1", 1, -450}, {"1E+2", -2, 1},
		{"1e999999999999999999999", 2, math.Inf(1)}, {"1e-400", 2, 0},
	} {
		if got := Shift(c.literal, c.places); got != c.want {
			t.Errorf("%s shifted by %d is %v, want %v", c.literal, c.places, got, c.want)
		}
	}
}

// TestShiftedComesBack for numbers of all sizes, as valid JSON.
func TestShiftedComesBack(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	values := []float64{0, math.Copysign(0, -1), 0.57, 100900, math.MaxFloat64 / 1e3, math.SmallestNonzeroFloat64, 1e21, 1e-7, 123456789}
	for range 20_000 {
		values = append(values, rng.NormFloat64()*math.Pow(10, float64(rng.IntN(60)-30)))
	}
	for _, v := range values {
		for _, places := range []int{-2, 0, 2} {
			s := Shifted(v, places)
			if got := Shift(s, -places); math.Float64bits(got) != math.Float64bits(v) || !gjson.Valid(s) {
				t.Fatalf("%v is written as %s and comes back as %v", v, s, got)
			}
		}
	}
}

func TestLine(t *testing.T) {
	b := []byte("a\nb\nc")
	for offset, want := range map[int]int{-1: 1, 0: 1, 2: 2, 4: 3, 99: 3} {
		if got := Line(b, offset); got != want {
			t.Errorf("offset %d is in line %d, want %d", offset, got, want)
		}
	}
}
