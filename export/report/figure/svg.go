package figure

import (
	"bytes"
	"fmt"
	"html"
	"html/template"
	"regexp"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"
)

// Figure is one picture for a page.
type Figure struct {
	SVG     template.HTML
	Caption string // what it shows, in words, for those who read and those who cannot see
}

// Empty reports whether there is nothing to show.
func (f Figure) Empty() bool { return f.SVG == "" }

// fontFamily is what the SVG writer names the typeface that the plot was
// measured with; the page's own takes its place.
var fontFamily = regexp.MustCompile(`font-family:[^;"]*;font-variant:[^;"]*;font-weight:([^;"]*);font-style:[^;"]*;?`)

// render draws rows of plots, one below the other with their axes aligned, on a
// picture of the size in points.
func render(rows []row, width, height vg.Length, title, caption string) Figure {
	canvas := vgsvg.New(width, height)
	all := draw.New(canvas)
	plots := make([][]*plot.Plot, len(rows))
	for i, r := range rows {
		plots[i] = []*plot.Plot{r.plot}
	}
	const gap = 4
	tiles := draw.Tiles{Rows: len(rows), Cols: 1, PadTop: 2, PadBottom: 2, PadRight: 6, PadLeft: 1, PadY: gap}
	aligned := plot.Align(plots, tiles, all)
	total := 0.0
	for _, r := range rows {
		total += r.share
	}
	top := all.Max.Y - 2
	usable := float64(height) - 4 - gap*float64(len(rows)-1)
	for i, r := range rows {
		c := aligned[i][0]
		c.Max.Y = top
		c.Min.Y = top - vg.Length(usable*r.share/total)
		top = c.Min.Y - gap
		r.plot.Draw(c)
	}
	var out bytes.Buffer
	if _, err := canvas.WriteTo(&out); err != nil {
		panic("figure: writing SVG into memory failed: " + err.Error())
	}
	return Figure{SVG: inline(out.String(), title, caption), Caption: caption}
}

// row is one plot of a figure and its share of the height.
type row struct {
	plot  *plot.Plot
	share float64
}

// inline makes a document of the SVG writer fit into a page: no prologue, size
// from the page, colours and typeface of the page, and words for those who
// cannot see it.
func inline(doc, title, caption string) template.HTML {
	_, body, found := strings.Cut(doc, "<svg ")
	if !found {
		panic("figure: the SVG writer wrote no svg element")
	}
	head, rest, _ := strings.Cut(body, ">")
	_, box, _ := strings.Cut(head, `viewBox="`)
	box, _, _ = strings.Cut(box, `"`)
	rest = fontFamily.ReplaceAllStringFunc(rest, func(s string) string {
		if strings.Contains(s, "bold") {
			return "font-weight:600;"
		}
		return ""
	})
	rest = strings.ReplaceAll(rest, "\n\t", " ")
	return template.HTML(fmt.Sprintf(`<svg viewBox="%s" role="img" aria-label="%s"><title>%s</title>%s`,
		box, html.EscapeString(caption), html.EscapeString(title), themed(rest)))
}
