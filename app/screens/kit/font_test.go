package kit

import (
	"bytes"
	"testing"

	"github.com/go-text/typesetting/font"
)

// faces opens both weights.
func faces(t *testing.T) map[string]*font.Face {
	t.Helper()
	out := map[string]*font.Face{}
	for name, data := range map[string][]byte{"regular": regular, "bold": bold} {
		f, err := font.ParseTTF(bytes.NewReader(data))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		out[name] = f
	}
	return out
}

// TestFiguresAreTabular: a number that changes does not make its neighbours
// jump, and columns of numbers are aligned.
func TestFiguresAreTabular(t *testing.T) {
	for name, f := range faces(t) {
		zero, _ := f.NominalGlyph('0')
		for _, r := range "123456789" {
			if g, _ := f.NominalGlyph(r); f.HorizontalAdvance(g) != f.HorizontalAdvance(zero) {
				t.Errorf("%s: %c is %v wide, 0 is %v", name, r, f.HorizontalAdvance(g), f.HorizontalAdvance(zero))
			}
		}
	}
}

// TestSignsOfNumbers: the font has the characters of numbers, units and formulas.
func TestSignsOfNumbers(t *testing.T) {
	for name, f := range faces(t) {
		for _, r := range "0123456789.,−±–…·×°²³⁻¹⁴⁵⁶½√≤≥∞%/ΔρηΩ₀₁₂▲▼○→←“”„ß\u00a0\u202f\u2009" {
			if _, ok := f.NominalGlyph(r); !ok {
				t.Errorf("%s lacks %c (%U)", name, r, r)
			}
		}
	}
}
