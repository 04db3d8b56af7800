package phone

import (
	"strings"

	"rsc.io/qr"
)

// quiet is the width of the white rim that a reader needs, in modules
// (ISO/IEC 18004).
const quiet = 4

// Code draws a text as a QR code for a terminal, two rows of modules to a line.
// With colour it is black on white whatever the terminal's colours are;
// without, it is drawn for a terminal of light letters on a dark ground.
func Code(text string, colour bool) (string, error) {
	code, err := qr.Encode(text, qr.M)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	for y := -quiet; y < code.Size+quiet; y += 2 {
		if colour {
			b.WriteString("\x1b[97;40m")
		}
		for x := -quiet; x < code.Size+quiet; x++ {
			b.WriteString(half(!code.Black(x, y), !code.Black(x, y+1)))
		}
		if colour {
			b.WriteString("\x1b[0m")
		}
		b.WriteByte('\n')
	}
	return b.String(), nil
}

// half is one character of two modules, lit where they are white.
func half(upper, lower bool) string {
	switch {
	case upper && lower:
		return "█"
	case upper:
		return "▀"
	case lower:
		return "▄"
	}
	return " "
}
