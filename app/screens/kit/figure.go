package kit

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"stillair/app/view"
	"stillair/export/plot"
)

// wrap lays out objects one after another like words, on a common base line,
// and begins a new line when they do not fit.
type wrap struct {
	gap  float32
	base bool // stand on the base line of text, not in the middle of the line
}

type spot struct{ x, y, w, h float32 }

func (wr wrap) spots(objects []fyne.CanvasObject, width float32) (spots []spot, height float32) {
	x, y, lineH, first := float32(0), float32(0), float32(0), 0
	finish := func(end int) {
		for i := first; i < end; i++ {
			if wr.base {
				spots[i].y = y + (lineH-spots[i].h)*0.79 // the base line is at 79 % of a line's height
				continue
			}
			spots[i].y = y + (lineH-spots[i].h)/2
		}
		first = end
	}
	for i, o := range objects {
		w := min(WidthOf(o), width)
		h := HeightOf(o, w)
		if x > 0 && x+w > width {
			finish(i)
			x, y, lineH = 0, y+lineH, 0
		}
		spots = append(spots, spot{x: x, w: w, h: h})
		x += w + wr.gap
		lineH = max(lineH, h)
	}
	finish(len(objects))
	return spots, y + lineH
}

func (wr wrap) height(objects []fyne.CanvasObject, width float32) float32 {
	_, h := wr.spots(objects, width)
	return h
}

func (wr wrap) width(objects []fyne.CanvasObject) float32 { return row{gap: wr.gap}.width(objects) }

func (wr wrap) place(objects []fyne.CanvasObject, size fyne.Size) {
	spots, _ := wr.spots(objects, size.Width)
	for i, s := range spots {
		put(objects[i], s.x, s.y, s.w, s.h)
	}
}

// Reading shows a result: the number large, its ± and unit smaller.
func (k Kit) Reading(r view.Reading) *Box { return k.reading(r, Figure, Heading, 6) }

// SmallReading is a result inside a list.
func (k Kit) SmallReading(r view.Reading) *Box { return k.reading(r, Heading, Body, 5) }

func (k Kit) reading(r view.Reading, number, spread Style, gap float32) *Box {
	parts := []fyne.CanvasObject{k.Text(number, Plain, r.Number)}
	if r.Spread != "" {
		parts = append(parts, k.Text(spread, Muted, "± "+r.Spread))
	}
	if r.Unit != "" {
		parts = append(parts, k.Text(Body, Muted, r.Unit))
	}
	return newBox(wrap{gap: gap, base: true}, parts...).Spoken(r.Spoken())
}

// Interval draws a band on a scale: the whole scale, the range in which the
// truth probably lies, and the best single value as a stroke.
func (k Kit) Interval(v view.Interval) *Box {
	track := canvas.NewRaster(func(w, h int) image.Image { return k.drawInterval(v, w, h) })
	ends := k.Row(4, Centre, k.Text(Small, Muted, v.LowText), Grow(k.Text(Small, Muted, v.ScaleText).Centred(), 1),
		k.Text(Small, Muted, v.HighText))
	return k.Column(2, k.Sized(0, 22, track), ends).Spoken(v.Spoken)
}

func (k Kit) drawInterval(v view.Interval, w, h int) image.Image {
	p := newPen(w, h)
	fh, fw := float64(h), float64(w)
	mid, pad := fh/2, fh/4
	at := func(x float64) float64 { return pad + (fw-2*pad)*min(max((x-v.Low)/(v.High-v.Low), 0), 1) }
	p.line([]point{{pad, mid}, {fw - pad, mid}}, fh*0.28, k.Palette.Sunk)
	if v.Zero >= v.Low && v.Zero <= v.High && v.ShowZero {
		p.line([]point{{at(v.Zero), fh * 0.05}, {at(v.Zero), fh * 0.95}}, fh*0.07, k.Palette.Muted)
	}
	p.line([]point{{at(v.From), mid}, {at(v.To), mid}}, fh*0.28, k.Palette.Tones[0])
	p.line([]point{{at(v.Best), fh * 0.12}, {at(v.Best), fh * 0.88}}, fh*0.14, k.Palette.Ink)
	return p.img
}

// Spark is a small curve without labels, for a list.
func (k Kit) Spark(x, y []float64, tone int) *Box {
	lo, hi := 0.0, 1.0
	for _, v := range y {
		hi = max(hi, v)
	}
	x0, x1 := 0.0, 1.0
	if len(x) > 1 {
		x0, x1 = x[0], x[len(x)-1]
	}
	pad := (hi - lo) * 0.08
	a := &plotArea{kit: k, plot: plot.Plot{X: plot.Axis{Min: x0 - (x1-x0)*0.04, Max: x1 + (x1-x0)*0.04},
		Y: plot.Axis{Min: lo - pad, Max: hi + pad}, Lines: []plot.Line{{X: x, Y: y, Tone: plot.Tone(tone)}}}}
	return newBox(fixed{52, 40}, plate(k.Palette.Sunk, nil, 6), canvas.NewRaster(a.draw))
}

// Progress is a bar that fills from 0 to 1.
func (k Kit) Progress(share float64) *Box {
	return k.Sized(0, 14, canvas.NewRaster(func(w, h int) image.Image {
		p := newPen(w, h)
		fw, mid := float64(w), float64(h)/2
		p.line([]point{{mid, mid}, {fw - mid, mid}}, mid, k.Palette.Sunk)
		if share > 0 {
			p.line([]point{{mid, mid}, {mid + (fw-2*mid)*min(share, 1), mid}}, mid, k.Palette.Accent)
		}
		return p.img
	}))
}
