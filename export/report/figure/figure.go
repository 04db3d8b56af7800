package figure

import (
	"html/template"
	"math"

	"stillair/export/plot"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/sensors/finding"
)

// Figure is one picture for a page.
type Figure struct {
	SVG     template.HTML
	Caption string // what it shows, in words, for those who read and those who cannot see
}

// Empty reports whether there is nothing to show.
func (f Figure) Empty() bool { return f.SVG == "" }

// Draw makes a figure of one plot. Axes without a range get that of what is
// drawn, and all get ticks.
func Draw(p *plot.Plot, width, height float64, title, caption string) Figure {
	return DrawIn(shown.Style{}, p, width, height, title, caption)
}

// DrawIn is Draw with the numbers along the axes in the language of a style.
func DrawIn(s shown.Style, p *plot.Plot, width, height float64, title, caption string) Figure {
	return render(s, []plot.Row{{Plot: p, Share: 1}}, width, height, title, caption)
}

func render(s shown.Style, rows []plot.Row, width, height float64, title, caption string) Figure {
	for _, r := range rows {
		r.Plot.Reach()
		for _, a := range []*plot.Axis{&r.Plot.X, &r.Plot.Y} {
			if a.Ticks == nil {
				a.Ticks = plot.Ticks(a.Min, a.Max, 6, s.Fixed)
			}
		}
	}
	return Figure{SVG: plot.SVG(rows, width, height, title, caption, s.Fixed), Caption: caption}
}

// withoutNumbers removes the numbers and the label of the x axis, for a plot
// above another.
func withoutNumbers(s shown.Style, p *plot.Plot) {
	p.X.Label = ""
	if p.X.Ticks == nil {
		p.X.Ticks = plot.Ticks(p.X.Min, p.X.Max, 6, s.Fixed)
	}
	quiet := make([]plot.Tick, len(p.X.Ticks))
	for i, t := range p.X.Ticks {
		quiet[i] = plot.Tick{At: t.At}
	}
	p.X.Ticks = quiet
}

// minutes are ticks of an axis in seconds, shown in minutes.
func minutes(s shown.Style, low, high float64) []plot.Tick {
	steps := []float64{10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200}
	step := steps[len(steps)-1]
	for _, s := range steps {
		if (high-low)/s <= 8 {
			step = s
			break
		}
	}
	decimals := 0
	if step < 60 {
		decimals = 1
	}
	var out []plot.Tick
	for k := math.Ceil(low / step); k*step <= high; k++ {
		out = append(out, plot.Tick{At: k * step, Text: s.Fixed(k*step/60, decimals)})
	}
	return out
}

// decimate returns points that draw the same line as (x, y) on a picture of so
// many columns: of each column its first, lowest, highest and last point, in
// order. Points that are not finite are left out.
func decimate(x, y []float64, columns int) (px, py []float64) {
	n := min(len(x), len(y))
	if n == 0 {
		return nil, nil
	}
	width := (x[n-1] - x[0]) / float64(max(columns, 1))
	for i := 0; i < n; {
		first, low, high, last := -1, -1, -1, -1
		for end := x[i] + width; i < n && (x[i] < end || first < 0); i++ {
			switch {
			case !finite(x[i]) || !finite(y[i]):
				if first < 0 && !(x[i] < end) {
					end = math.Inf(-1)
				}
				continue
			case first < 0:
				first, low, high = i, i, i
			case y[i] < y[low]:
				low = i
			case y[i] > y[high]:
				high = i
			}
			last = i
		}
		if first < 0 {
			continue
		}
		before := -1
		for _, k := range []int{first, min(low, high), max(low, high), last} {
			if k != before {
				px, py = append(px, x[k]), append(py, y[k])
			}
			before = k
		}
	}
	return px, py
}

// labelOf is the text of an axis with its unit.
func labelOf(b *words.Book, code finding.Code, unit string) string {
	return b.Say(finding.New(code, finding.Text("unit", unit)))
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

func scaled(x []float64, k float64) []float64 {
	for i := range x {
		x[i] *= k
	}
	return x
}
