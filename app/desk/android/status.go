package android

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
)

// statusSize is the side of the sign in the status bar: 24 dp at the finest
// density that Android names, 640 dots an inch.
const statusSize = 96

// statusIcon draws the sign of the notification: white on nothing, since
// Android takes its outline alone. It is a drop in still air, nose to the left.
func statusIcon() ([]byte, error) {
	img := image.NewNRGBA(image.Rect(0, 0, statusSize, statusSize))
	for y := range statusSize {
		for x := range statusSize {
			const n = 4
			in := 0
			for i := range n * n {
				u := (float64(x) + (float64(i%n)+0.5)/n) / statusSize
				v := (float64(y) + (float64(i/n)+0.5)/n) / statusSize
				if inDrop(u, v) {
					in++
				}
			}
			img.SetNRGBA(x, y, color.NRGBA{0xff, 0xff, 0xff, uint8(255 * in / (n * n))})
		}
	}
	var b bytes.Buffer
	err := png.Encode(&b, img)
	return b.Bytes(), err
}

// inDrop reports whether a point of the unit square lies in the drop: a half
// circle in front, straight lines to a point behind.
func inDrop(u, v float64) bool {
	const centre, radius, tail = 0.36, 0.27, 0.94
	v = math.Abs(v - 0.5)
	if u < centre {
		return math.Hypot(u-centre, v) < radius
	}
	return v < radius*(tail-u)/(tail-centre)
}
