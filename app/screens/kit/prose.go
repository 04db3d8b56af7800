package kit

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Style is a size of text.
type Style int

// The styles, from the smallest.
const (
	Small Style = iota
	Body
	Strong // body in bold
	Heading
	Title
	Figure  // a result
	Display // the speed
)

func (k Kit) points(s Style) float32 {
	sizes := [...]float32{Small: 14, Body: 16, Strong: 16, Heading: 18, Title: 25, Figure: 30, Display: 128}
	if s == Display {
		return sizes[s] // large enough at any setting
	}
	return sizes[s] * k.Scale
}

func (s Style) bold() bool { return s >= Strong }

// Prose is text that wraps at its width.
type Prose struct {
	widget.BaseWidget
	text   string
	size   float32
	style  fyne.TextStyle
	ink    Ink
	align  fyne.TextAlign
	kit    Kit
	level  int
	broken []*canvas.Text
	width  float32 // at which the lines were broken
	lines  []string
	asked  float32 // the width that the lines were made for
}

// Text makes wrapping text.
func (k Kit) Text(s Style, ink Ink, text string) *Prose {
	p := &Prose{text: text, size: k.points(s), style: fyne.TextStyle{Bold: s.bold()}, ink: ink, kit: k, width: -1}
	if s == Title || s == Heading {
		p.level = 2 // the head of a page uses the first
	}
	p.ExtendBaseWidget(p)
	return p
}

// Centred centres each line.
func (p *Prose) Centred() *Prose {
	p.align = fyne.TextAlignCenter
	return p
}

// Trailing aligns each line at the end.
func (p *Prose) Trailing() *Prose {
	p.align = fyne.TextAlignTrailing
	return p
}

// SetText changes the text.
func (p *Prose) SetText(text string) {
	if text == p.text {
		return
	}
	p.text, p.width, p.lines = text, -1, nil
	p.Refresh()
}

func (p *Prose) measure(text string) float32 { return fyne.MeasureText(text, p.size, p.style).Width }

func (p *Prose) lineHeight() float32 { return p.size * 1.36 }

// NaturalWidth implements Flow.
func (p *Prose) NaturalWidth() float32 {
	w := float32(0)
	for _, line := range strings.Split(p.text, "\n") {
		w = max(w, p.measure(line))
	}
	return w + 0.5
}

// HeightFor implements Flow.
func (p *Prose) HeightFor(width float32) float32 {
	return float32(len(p.wrap(width))) * p.lineHeight()
}

// wrap returns the text in lines that fit the width. Layouts ask for the same
// width several times, so the last answer is kept.
func (p *Prose) wrap(width float32) []string {
	if p.lines == nil || p.asked != width {
		p.lines, p.asked = p.broke(width), width
	}
	return p.lines
}

// broke breaks the text, between words where that is possible.
func (p *Prose) broke(width float32) []string {
	var lines []string
	for _, para := range strings.Split(together(p.text), "\n") {
		var made [][]string
		var line []string
		for _, word := range p.fitting(para, width) {
			if len(line) > 0 && p.measure(strings.Join(append(line, word), " ")) > width {
				made, line = append(made, line), nil
			}
			line = append(line, word)
		}
		for _, l := range p.accompany(append(made, line), width) {
			lines = append(lines, strings.Join(l, " "))
		}
	}
	return lines
}

// fitting is a paragraph in pieces that fit the width: words that belong together,
// else words, else parts of a word.
func (p *Prose) fitting(para string, width float32) []string {
	var out []string
	for _, item := range strings.Split(para, " ") {
		for _, word := range p.looser(item, listed, width) {
			for _, w := range p.looser(word, "\u00a0", width) {
				for p.measure(w) > width && len([]rune(w)) > 1 {
					head, tail := p.split(w, width)
					out, w = append(out, head), tail
				}
				out = append(out, w)
			}
		}
	}
	return out
}

// looser is what a mark keeps together, in one piece if it fits.
func (p *Prose) looser(s, mark string, width float32) []string {
	if whole := strings.ReplaceAll(s, listed, " "); p.measure(whole) <= width {
		return []string{whole}
	}
	return strings.Split(s, mark)
}

// accompany keeps a short word from standing alone on the last line of a paragraph:
// the word before it comes along.
func (p *Prose) accompany(lines [][]string, width float32) [][]string {
	n := len(lines)
	if n < 2 || len(lines[n-1]) != 1 || len(lines[n-2]) < 3 || p.measure(lines[n-1][0]) > 0.3*width {
		return lines
	}
	before := lines[n-2]
	cut := len(before) - 1
	last := []string{before[cut], lines[n-1][0]}
	if p.measure(strings.Join(last, " ")) <= width {
		lines[n-2], lines[n-1] = before[:cut], last
	}
	return lines
}

// split breaks one word that is too long.
func (p *Prose) split(word string, width float32) (head, tail string) {
	r := []rune(word)
	n := 1
	for n < len(r)-1 && p.measure(string(r[:n+1])+"-") <= width {
		n++
	}
	return string(r[:n]) + "-", string(r[n:])
}

// AccessibilityLabel implements fyne.Accessible.
func (p *Prose) AccessibilityLabel() string { return spoken(p.text) }

// HeadingLevel implements reading.Headed.
func (p *Prose) HeadingLevel() int { return p.level }

// AccessibilityRole implements fyne.Accessible.
func (p *Prose) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// CreateRenderer implements fyne.Widget.
func (p *Prose) CreateRenderer() fyne.WidgetRenderer { return &proseRenderer{p} }

type proseRenderer struct{ p *Prose }

func (r *proseRenderer) Layout(size fyne.Size) {
	p := r.p
	if p.width != size.Width {
		p.width = size.Width
		p.broken = p.broken[:0]
		for _, line := range p.wrap(size.Width) {
			t := canvas.NewText(line, p.kit.Palette.Of(p.ink))
			t.TextSize, t.TextStyle, t.Alignment = p.size, p.style, p.align
			p.broken = append(p.broken, t)
		}
	}
	for i, t := range p.broken {
		put(t, 0, float32(i)*p.lineHeight(), size.Width, p.lineHeight())
	}
}

func (r *proseRenderer) MinSize() fyne.Size {
	return fyne.NewSize(0, r.p.HeightFor(max(r.p.Size().Width, 1)))
}

func (r *proseRenderer) Refresh() {
	r.Layout(r.p.Size())
	for _, t := range r.p.broken {
		t.Refresh()
	}
	canvas.Refresh(r.p)
}

func (r *proseRenderer) Objects() []fyne.CanvasObject {
	out := make([]fyne.CanvasObject, len(r.p.broken))
	for i, t := range r.p.broken {
		out[i] = t
	}
	return out
}

func (r *proseRenderer) Destroy() {}

// Breaks reports whether a word had to be cut to fit.
func (p *Prose) Breaks() bool {
	whole := strings.Join(strings.Fields(p.text), "")
	lines := ""
	for _, l := range p.wrap(p.Size().Width) {
		lines += l
	}
	return strings.Join(strings.Fields(lines), "") != whole
}
