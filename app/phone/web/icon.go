package web

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
)

// The colours of the icon; the blue is from the palette of Okabe and Ito,
// which people with any kind of colour vision can tell from the ground.
var (
	iconGround = color.NRGBA{0x10, 0x16, 0x1c, 0xff}
	iconShape  = color.NRGBA{0x56, 0xb4, 0xe9, 0xff}
)

// iconPNG draws the icon at size × size pixels: a body of little drag, nose to
// the left, that leaves the air still behind it. It keeps clear of the rim,
// since systems crop icons to their own shapes.
func iconPNG(size int) ([]byte, error) {
	img := image.NewNRGBA(image.Rect(0, 0, size, size))
	for y := range size {
		for x := range size {
			img.SetNRGBA(x, y, mix(iconGround, iconShape, coverage(x, y, size)))
		}
	}
	var b bytes.Buffer
	err := png.Encode(&b, img)
	return b.Bytes(), err
}

// coverage is how much of a pixel the shape covers, from 4 × 4 points in it.
func coverage(x, y, size int) float64 {
	const n = 4
	in := 0
	for i := range n {
		for j := range n {
			u := (float64(x) + (float64(i)+0.5)/n) / float64(size)
			v := (float64(y) + (float64(j)+0.5)/n) / float64(size)
			if inBody(u, v) {
				in++
			}
		}
	}
	return float64(in) / (n * n)
}

// inBody reports whether a point of the unit square lies in the body, whose
// thickness follows that of the symmetric NACA 00xx sections (Abbott and von
// Doenhoff, Theory of Wing Sections, eq. 6.2).
func inBody(u, v float64) bool {
	const nose, length, thick = 0.18, 0.66, 0.55
	x := (u - nose) / length
	if x <= 0 || x >= 1 {
		return false
	}
	half := 5 * thick * length * (0.2969*math.Sqrt(x) - 0.1260*x - 0.3516*x*x + 0.2843*x*x*x - 0.1036*x*x*x*x)
	return math.Abs(v-0.5) < half
}

func mix(a, b color.NRGBA, part float64) color.NRGBA {
	m := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + part*(float64(y)-float64(x)))) }
	return color.NRGBA{m(a.R, b.R), m(a.G, b.G), m(a.B, b.B), 0xff}
}
