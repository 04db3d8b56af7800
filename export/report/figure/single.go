package figure

import (
	"image/color"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// New returns an empty plot in the style of the report, for figures that other
// pages draw.
func New(x, y string) *plot.Plot {
	p := newPlot(x, y)
	p.Legend.Top = true
	p.Legend.TextStyle = textStyle(p, textSize)
	p.Legend.TextStyle.Font = face(textSize, font.Font{})
	return p
}

// Draw makes a figure of one plot.
func Draw(p *plot.Plot, width, height vg.Length, title, caption string) Figure {
	return render([]row{{p, 1}}, width, height, title, caption)
}

// Colours are those that tell curves apart, in the order of their use. They can
// be told apart by most who do not see all colours.
func Colours() []color.NRGBA { return []color.NRGBA{blue, vermillion, green, orange, purple} }

// Helper is the style of lines that only help the eye.
func Helper() draw.LineStyle { return draw.LineStyle{Color: soft, Width: 0.8} }
