package plot

import (
	"fmt"
	"html"
	"html/template"
	"math"
	"strings"
	"unicode/utf8"
)

// Row is one plot of a picture and its share of the height.
type Row struct {
	Plot  *Plot
	Share float64
}

// Sizes of what is drawn, in points.
const (
	textSize  = 10.0
	lineSpace = 1.25 * textSize
	letter    = 0.58 * textSize // mean width of a letter: common sans-serif faces have 0.5 to 0.56
	tickSize  = 3.0
	edge      = 6.0
	barHalf   = 3.6
	barLeast  = 1.6
)

// SVG draws rows of plots, one below the other with their left edges aligned,
// on a picture of a size in points. The title is what it is, the caption what
// it shows, for those who cannot see it. Values that a pointer reads off are written
// by number.
func SVG(rows []Row, width, height float64, title, caption string, number Number) template.HTML {
	b := &svg{number: number}
	fmt.Fprintf(&b.out, `<svg viewBox="0 0 %g %g" role="img" aria-label="%s"><title>%s</title>`,
		width, height, html.EscapeString(caption), html.EscapeString(title))
	left, total := 0.0, 0.0
	for _, r := range rows {
		r.Plot.Reach()
		left, total = math.Max(left, leftOf(r.Plot)), total+r.Share
	}
	usable := height
	for _, r := range rows {
		usable -= above(r.Plot) + below(r.Plot)
	}
	top := 0.0
	for _, r := range rows {
		top += above(r.Plot)
		b.box = box{x: left, y: top, w: width - left - edge, h: usable * r.Share / total}
		b.plot(r.Plot)
		top += b.box.h + below(r.Plot)
	}
	b.out.WriteString("</svg>")
	return template.HTML(b.out.String())
}

// leftOf is the room that the numbers of the y axis take.
func leftOf(p *Plot) float64 {
	most := 0
	for _, t := range p.Y.Ticks {
		most = max(most, utf8.RuneCountInString(t.Text))
	}
	return float64(most)*letter + 8
}

// above is the room above a plot: its y label.
func above(p *Plot) float64 {
	if p.Y.Label == "" {
		return 6
	}
	return lineSpace + 7
}

// below is the room below it: numbers, label.
func below(p *Plot) float64 {
	room := 5.0
	for _, t := range p.X.Ticks {
		if t.Text != "" {
			room = tickSize + lineSpace + 2
			break
		}
	}
	if p.X.Label != "" {
		room += lineSpace + 3
	}
	return room
}

type box struct{ x, y, w, h float64 }

// svg is a picture being drawn; box is the area of the current plot.
type svg struct {
	out    strings.Builder
	box    box
	of     *Plot
	number Number
}

func (b *svg) plot(p *Plot) {
	b.of = p
	b.axes()
	for _, s := range p.Bands {
		b.band(s)
	}
	for _, l := range p.Lines {
		b.line(l)
	}
	for _, d := range p.Dots {
		b.dots(d)
	}
	for _, r := range p.Bars {
		b.bar(r)
	}
	for _, m := range p.Marks {
		b.mark(m)
	}
	b.legend()
}

func (b *svg) x(v float64) float64 {
	a := b.of.X
	return b.box.x + (v-a.Min)/(a.Max-a.Min)*b.box.w
}

func (b *svg) y(v float64) float64 {
	a := b.of.Y
	return b.box.y + b.box.h - (v-a.Min)/(a.Max-a.Min)*b.box.h
}

func colour(t Tone) string {
	names := [...]string{"--blue", "--vermillion", "--green", "--orange", "--purple"}
	switch {
	case t == Ink:
		return "var(--ink)"
	case t < 0:
		return "var(--soft)"
	}
	return "var(" + names[int(t)%len(names)] + ")"
}

func (b *svg) axes() {
	p, o := b.of, b.box
	bottom := o.y + o.h
	for _, t := range p.Y.Ticks {
		y := b.y(t.At)
		if y < o.y-0.5 || y > bottom+0.5 {
			continue
		}
		b.stroke([]float64{o.x, o.x + o.w}, []float64{y, y}, "var(--rule)", 0.5, "")
		b.text(o.x-5, y+0.35*textSize, "end", "var(--soft)", t.Text)
	}
	for _, t := range p.X.Ticks {
		x := b.x(t.At)
		if x < o.x-0.5 || x > o.x+o.w+0.5 {
			continue
		}
		b.stroke([]float64{x, x}, []float64{o.y, bottom + tickSize}, "var(--rule)", 0.5, "")
		half := letter * float64(utf8.RuneCountInString(t.Text)) / 2
		b.text(math.Min(x, o.x+o.w+edge-half), bottom+tickSize+textSize, "middle", "var(--soft)", t.Text)
	}
	b.stroke([]float64{o.x, o.x + o.w}, []float64{bottom, bottom}, "var(--soft)", 0.6, "")
	b.text(o.x, o.y-6, "start", "var(--ink)", p.Y.Label)
	b.text(o.x+o.w, bottom+below(p)-4, "end", "var(--ink)", p.X.Label)
}

// stroke draws a line through places of the picture.
func (b *svg) stroke(x, y []float64, ink string, width float64, more string) {
	if len(x) < 2 {
		return
	}
	fmt.Fprintf(&b.out, `<path d="%s" fill="none" stroke="%s" stroke-width="%g"%s/>`, trace(x, y), ink, width, more)
}

func trace(x, y []float64) string {
	var d strings.Builder
	for i := range x {
		word := "L"
		if i == 0 {
			word = "M"
		}
		fmt.Fprintf(&d, "%s%.1f %.1f", word, x[i], y[i])
	}
	return d.String()
}

func (b *svg) text(x, y float64, anchor, ink, words string) {
	if strings.TrimSpace(words) != "" {
		fmt.Fprintf(&b.out, `<text x="%.1f" y="%.1f" text-anchor="%s" fill="%s" font-size="%g">%s</text>`,
			x, y, anchor, ink, textSize, html.EscapeString(words))
	}
}

// places are the finite points of a curve on the picture; points beyond the
// axes are drawn at their edge.
func (b *svg) places(x, y []float64) (px, py []float64) {
	for i := range min(len(x), len(y)) {
		if at, up := b.x(x[i]), b.y(y[i]); !math.IsNaN(at) && !math.IsNaN(up) && !math.IsInf(at, 0) && !math.IsInf(up, 0) {
			px = append(px, min(max(at, b.box.x), b.box.x+b.box.w))
			py = append(py, min(max(up, b.box.y), b.box.y+b.box.h))
		}
	}
	return px, py
}

func style(d Dash) (width float64, more string) {
	switch d {
	case Dashed:
		return 1.4, ` stroke-dasharray="6 3"`
	case Dotted:
		return 1.6, ` stroke-dasharray="1.5 3"`
	case Thin:
		return 0.8, ""
	case Helper:
		return 0.8, ` stroke-dasharray="3 2"`
	}
	return 1.4, ""
}

func (b *svg) line(l Line) {
	x, y := b.places(l.X, l.Y)
	width, more := style(l.Dash)
	b.stroke(x, y, colour(l.Tone), width, more)
	if l.Dash != Thin && l.Dash != Helper {
		b.hover(x, y, l.Name)
	}
}

func (b *svg) band(s Band) {
	x, y := b.places(s.X, s.High)
	lx, ly := b.places(s.X, s.Low)
	for i := len(lx) - 1; i >= 0; i-- {
		x, y = append(x, lx[i]), append(y, ly[i])
	}
	if len(x) < 3 {
		return
	}
	opacity := 0.2
	if s.Full {
		opacity = 0.45
	}
	fmt.Fprintf(&b.out, `<path d="%sZ" fill="%s" fill-opacity="%g"/>`, trace(x, y), colour(s.Tone), opacity)
}

// hoverAt is how many places of a line can be read off.
const hoverAt = 32

// hover lays unseen places over a line, where a pointer reads its value.
func (b *svg) hover(x, y []float64, name string) {
	step := 1 + (len(x)-1)/hoverAt
	b.out.WriteString(`<g fill="transparent">`)
	for i := 0; i < len(x); i += step {
		fmt.Fprintf(&b.out, `<circle cx="%.1f" cy="%.1f" r="5">%s</circle>`, x[i], y[i], b.reading(x[i], y[i], name))
	}
	b.out.WriteString("</g>")
}

// reading is what a pointer over a place reads: its name, x and y, in digits of a
// thousandth of the axis.
func (b *svg) reading(x, y float64, name string) string {
	p, o := b.of, b.box
	value := func(share float64, a Axis) string {
		decimals := int(math.Max(0, 3-math.Ceil(math.Log10(a.Max-a.Min))))
		return b.number(a.Min+share*(a.Max-a.Min), decimals)
	}
	text := value((x-o.x)/o.w, p.X) + "; " + value((o.y+o.h-y)/o.h, p.Y)
	if name != "" {
		text = name + ": " + text
	}
	return "<title>" + html.EscapeString(text) + "</title>"
}

func (b *svg) dots(d Dots) {
	x, y := b.places(d.X, d.Y)
	r := 1.8
	if d.Large {
		r = 3
	}
	for i := range x {
		b.dot(x[i], y[i], r, d)
	}
}

func (b *svg) dot(x, y, r float64, d Dots) {
	if d.Triangle {
		r *= 1.2
		fmt.Fprintf(&b.out, `<path d="M%.1f %.1fl%.1f %.1fh%.1fZ" fill="%s">%s</path>`, x, y-r, 0.9*r, 1.6*r, -1.8*r, colour(d.Tone), b.reading(x, y, d.Name))
		return
	}
	fmt.Fprintf(&b.out, `<circle cx="%.1f" cy="%.1f" r="%g" fill="%s">%s</circle>`, x, y, r, colour(d.Tone), b.reading(x, y, d.Name))
}

func (b *svg) bar(r Bar) {
	x, y := b.x(r.From), b.y(r.Y)
	w := math.Max(b.x(r.To)-x, barLeast)
	paint := fmt.Sprintf(`fill="%s"`, colour(r.Tone))
	if r.Hollow {
		paint = fmt.Sprintf(`fill="none" stroke="%s" stroke-width="0.8"`, colour(r.Tone))
	}
	fmt.Fprintf(&b.out, `<rect x="%.1f" y="%.1f" width="%.1f" height="%g" %s/>`, x, y-barHalf, w, 2*barHalf, paint)
}

func (b *svg) mark(m Mark) {
	x, y, anchor := b.x(m.X), b.y(m.Y), "start"
	if m.Words {
		fmt.Fprintf(&b.out, `<text x="%.1f" y="%.1f" text-anchor="end" fill="var(--ink)" font-size="11" font-weight="600">%s</text>`,
			x, y+4, html.EscapeString(m.Text))
		return
	}
	dx, dy := 6.0, textSize
	if m.Left {
		anchor, dx = "end", -6
	}
	if m.Above {
		dy = -4
	}
	b.text(x+dx, y+dy, anchor, "var(--ink)", m.Text)
}

// legend names what has a name, each beside a sample of itself, in a corner at
// the right.
func (b *svg) legend() {
	names := 0
	for _, l := range b.of.Lines {
		names += used(l.Name)
	}
	for _, d := range b.of.Dots {
		names += used(d.Name)
	}
	right, y := b.box.x+b.box.w-4, b.box.y+textSize
	if b.of.Low {
		y = b.box.y + b.box.h - lineSpace*float64(names) + 4
	}
	for _, l := range b.of.Lines {
		if l.Name == "" {
			continue
		}
		width, more := style(l.Dash)
		b.stroke([]float64{right - 16, right}, []float64{y - 3.5, y - 3.5}, colour(l.Tone), width, more)
		b.text(right-20, y, "end", "var(--ink)", l.Name)
		y += lineSpace
	}
	for _, d := range b.of.Dots {
		if d.Name == "" {
			continue
		}
		b.dot(right-8, y-3.5, 2.6, d)
		b.text(right-20, y, "end", "var(--ink)", d.Name)
		y += lineSpace
	}
}

func used(name string) int {
	if name == "" {
		return 0
	}
	return 1
}
