package kit

import (
	"image"
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"stillair/export/plot"
)

// Plot draws curves into its own raster image: thousands of points take a few
// milliseconds, and only when the picture changes. Labels are placed over it as
// text.
func (k Kit) Plot(p plot.Plot, height float32) *Box {
	a := &plotArea{plot: p, kit: k}
	raster := canvas.NewRaster(a.draw)
	objects := []fyne.CanvasObject{raster}
	add := func(text string, align fyne.TextAlign, ink Ink) {
		t := canvas.NewText(text, k.Palette.Of(ink))
		t.TextSize, t.Alignment = a.labelSize(), align
		objects = append(objects, t)
	}
	for _, t := range p.X.Ticks {
		add(t.Text, fyne.TextAlignCenter, Muted)
	}
	for _, t := range p.Y.Ticks {
		add(t.Text, fyne.TextAlignTrailing, Muted)
	}
	add(p.X.Label, fyne.TextAlignTrailing, Muted)
	add(p.Y.Label, fyne.TextAlignLeading, Muted)
	for _, m := range p.Marks {
		add(m.Text, fyne.TextAlignLeading, Plain)
	}
	area := newBox(plotLayout{a, height}, objects...).Spoken(p.Spoken)
	if legend := k.legend(p); legend != nil {
		return k.Column(8, area, legend)
	}
	return area
}

type plotArea struct {
	plot plot.Plot
	kit  Kit
}

func (a *plotArea) labelSize() float32 { return min(a.kit.points(Small), 17) - 1 }

// margins of the drawing inside its box: left and below for the numbers, above
// for the label of the y axis.
func (a *plotArea) margins() (left, top, right, bottom float32) {
	s := a.labelSize()
	for _, t := range a.plot.Y.Ticks {
		left = max(left, fyne.MeasureText(t.Text, s, fyne.TextStyle{}).Width)
	}
	return left + 8, s*1.36 + 6, 10, 2*s*1.36 + 6
}

func (a *plotArea) draw(w, h int) image.Image {
	p := newPen(w, h)
	scale := a.pixels()
	for _, b := range a.plot.Bands {
		a.band(p, b)
	}
	a.grid(p, scale)
	for _, l := range a.plot.Lines {
		a.line(p, l, scale)
	}
	for _, m := range a.plot.Marks {
		p.dot(a.at(p, m.X, m.Y), 4*scale, a.kit.Palette.Ink, a.kit.Palette.Surface)
	}
	return p.img
}

// pixels is the number of pixels per Fyne unit.
func (a *plotArea) pixels() float64 {
	for _, w := range fyne.CurrentApp().Driver().AllWindows() {
		if s := w.Canvas().Scale(); s > 0 {
			return float64(s)
		}
	}
	return 1
}

func (a *plotArea) at(p *pen, x, y float64) point {
	w, h := float64(p.img.Rect.Dx()), float64(p.img.Rect.Dy())
	ax, ay := a.plot.X, a.plot.Y
	return point{(x - ax.Min) / (ax.Max - ax.Min) * w, h - (y-ay.Min)/(ay.Max-ay.Min)*h}
}

func (a *plotArea) grid(p *pen, scale float64) {
	w, h := float64(p.img.Rect.Dx()), float64(p.img.Rect.Dy())
	faint := a.kit.Palette.Line
	for _, t := range a.plot.Y.Ticks {
		y := min(max(a.at(p, 0, t.At).y, scale/2), h-scale/2)
		p.line([]point{{0, y}, {w, y}}, scale, faint)
	}
	for _, t := range a.plot.X.Ticks {
		x := min(max(a.at(p, t.At, 0).x, scale/2), w-scale/2)
		p.line([]point{{x, h}, {x, h - 5*scale}}, scale, a.kit.Palette.Muted)
	}
}

func (a *plotArea) band(p *pen, b plot.Band) {
	var edge []point
	for i := range b.X {
		edge = append(edge, a.at(p, b.X[i], b.High[i]))
	}
	for i := len(b.X) - 1; i >= 0; i-- {
		edge = append(edge, a.at(p, b.X[i], b.Low[i]))
	}
	p.area(edge, withAlpha(a.tone(b.Tone), 0x38))
}

func (a *plotArea) tone(t plot.Tone) color.NRGBA {
	switch {
	case t == plot.Ink:
		return a.kit.Palette.Ink
	case t < 0:
		return a.kit.Palette.Muted
	}
	return a.kit.Palette.Tones[int(t)%len(a.kit.Palette.Tones)]
}

func (a *plotArea) line(p *pen, l plot.Line, scale float64) {
	var pts []point
	for i := range l.X {
		if q := a.at(p, l.X[i], l.Y[i]); !math.IsNaN(q.x) && !math.IsNaN(q.y) {
			pts = append(pts, q)
		}
	}
	width, on, off := lineStyle(l.Dash)
	for _, piece := range dashes(pts, on*scale, off*scale) {
		p.line(piece, width*scale, a.tone(l.Tone))
	}
}

func lineStyle(d plot.Dash) (width, on, off float64) {
	switch d {
	case plot.Dashed:
		return 2.4, 9, 6
	case plot.Dotted:
		return 2.6, 1, 6
	case plot.Thin:
		return 1.2, 1, 0
	}
	return 2.8, 1, 0
}

// plotLayout places the raster and the labels: ticks of x, ticks of y, the two
// axis labels, the marks.
type plotLayout struct {
	area *plotArea
	h    float32
}

func (l plotLayout) height([]fyne.CanvasObject, float32) float32 { return l.h }
func (l plotLayout) width([]fyne.CanvasObject) float32           { return 200 }

func (l plotLayout) place(objects []fyne.CanvasObject, size fyne.Size) {
	a := l.area
	left, top, right, bottom := a.margins()
	w, h := max(1, size.Width-left-right), max(1, size.Height-top-bottom)
	put(objects[0], left, top, w, h)
	rest, line := objects[1:], a.labelSize()*1.36
	for _, t := range a.plot.X.Ticks {
		x := left + share(t.At, a.plot.X)*w
		x = min(x, size.Width-WidthOf(rest[0])/2)
		put(rest[0], x-30, top+h+3, 60, line)
		rest = rest[1:]
	}
	for _, t := range a.plot.Y.Ticks {
		y := top + (1-share(t.At, a.plot.Y))*h
		put(rest[0], 0, y-line/2, left-6, line)
		rest = rest[1:]
	}
	put(rest[0], left, top+h+3+line, w+right, line)
	put(rest[1], 0, 0, size.Width, line)
	for i, m := range a.plot.Marks {
		l.placeMark(rest[2+i], m, left, top, w, h)
	}
}

func share(x float64, a plot.Axis) float32 { return float32((x - a.Min) / (a.Max - a.Min)) }

// placeMark puts a mark's label below and right of its point, or left of it if
// there is no room.
func (l plotLayout) placeMark(o fyne.CanvasObject, m plot.Mark, left, top, w, h float32) {
	a := l.area
	tw, line := WidthOf(o), a.labelSize()*1.36
	x := left + share(m.X, a.plot.X)*w + 9
	y := top + (1-share(m.Y, a.plot.Y))*h + 2
	if m.Above {
		y -= line + 4
		x -= 3
	}
	if x+tw > left+w {
		x, y = left+w-tw, y+line*0.7 // clear of the curve
	}
	if y+line > top+h {
		y = top + h - line
	}
	put(o, x, y, tw, line)
}

// legend lists the lines that have a name, each next to a sample of the line.
func (k Kit) legend(p plot.Plot) *Box {
	var items []fyne.CanvasObject
	for _, l := range p.Lines {
		if l.Name == "" {
			continue
		}
		sample := canvas.NewRaster((&plotArea{kit: k, plot: plot.Plot{X: plot.Axis{Max: 1}, Y: plot.Axis{Min: -1, Max: 1},
			Lines: []plot.Line{{X: []float64{0.06, 0.94}, Y: []float64{0, 0}, Tone: l.Tone, Dash: l.Dash}}}}).draw)
		items = append(items, k.Row(6, Centre, newBox(fixed{30, 12}, sample), k.Text(Small, Muted, l.Name)))
	}
	if items == nil {
		return nil
	}
	return newBox(wrap{gap: 16}, items...)
}
