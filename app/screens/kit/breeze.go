package kit

import (
	"image"
	"image/color"
	"math"

	"fyne.io/fyne/v2/canvas"
)

// breeze is the app's own ornament: lines of air that part around a body and
// close again behind it.
func (k Kit) breeze() *Box {
	return newBox(fixed{104, 44}, canvas.NewRaster(func(w, h int) image.Image {
		return air(w, h, k.Palette.Line)
	}))
}

// air draws the lines on a picture of w by h pixels.
func air(w, h int, c color.Color) image.Image {
	p := newPen(w, h)
	for _, y0 := range []float64{-0.8, -0.5, -0.22, 0.22, 0.5, 0.8} {
		p.line(streamline(y0, float64(w), float64(h)), float64(h)/26, c)
	}
	return p.img
}

// streamline follows one line of air whose height far away is y0, in units of
// half the picture's height; the nearer it passes the body, the further it is
// pushed aside.
func streamline(y0, w, h float64) []point {
	var pts []point
	for i := range 105 {
		px := w * float64(i) / 104
		x := (px - 0.55*w) / (0.5 * h)
		aside := 0.3 * math.Exp(-1.1*math.Abs(y0)) / (1 + x*x*x*x/2)
		pts = append(pts, point{px, h/2 + (y0*0.92+math.Copysign(aside, y0))*h/2})
	}
	return pts
}
