package figure

import (
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"stillair/export/shown"
	"stillair/runs"
)

// labelled are the marks that are worth words, the most wanted first.
var labelled = []string{"1/4 mile", "0-100 km/h", "0-60 mph", "1/8 mile", "60 ft", "0-100 mph", "1 km", "0-60 km/h", "1000 ft", "330 ft"}

// imperialFirst are labelled for those who read miles.
var imperialFirst = []string{"1/4 mile", "0-60 mph", "0-100 mph", "1/8 mile", "60 ft", "0-100 km/h", "1000 ft", "330 ft", "1 km", "0-60 km/h"}

// Launch draws the speed of one launch over the time since first movement,
// with its marks.
func Launch(r *runs.Result, run runs.Run, units shown.System) Figure {
	if r.Track == nil {
		return Figure{}
	}
	unit := units.First(shown.Speed)
	p := newPlot("seconds from first movement", "speed, "+unit.Name)
	t, v := within(r.Track.T, r.Track.V, run.Start-1, run.End+0.3)
	if len(t) < 2 {
		return Figure{}
	}
	for i := range t {
		t[i] -= run.Start
	}
	p.Add(line(scaled(decimate(t, v, 380), 1, 1/unit.SI), draw.LineStyle{Color: ink, Width: 1.4}))
	p.X.Min, p.X.Max, p.Y.Min = t[0], t[len(t)-1], 0
	p.Y.Max *= 1.12
	marks := markPoints(run, t, v, 1/unit.SI)
	speeds, distances := &plotter.Scatter{GlyphStyle: draw.GlyphStyle{Color: blue, Radius: 3, Shape: draw.CircleGlyph{}}},
		&plotter.Scatter{GlyphStyle: draw.GlyphStyle{Color: vermillion, Radius: 3.4, Shape: draw.PyramidGlyph{}}}
	for _, m := range marks {
		if m.distance {
			distances.XYs = append(distances.XYs, m.at)
		} else {
			speeds.XYs = append(speeds.XYs, m.at)
		}
	}
	p.Add(speeds, distances)
	below, above := textStyle(p, 9), textStyle(p, 9)
	below.YAlign, above.YAlign, above.XAlign = text.YTop, text.YBottom, text.XRight
	for _, m := range withWords(marks, units, p.Y.Max) {
		label := words{x: m.at.X, y: m.at.Y, text: fmt.Sprintf("%s  %.2f s", m.name, m.at.X), style: below, dx: 6, dy: 2}
		if m.at.X > 0.65*p.X.Max { // no room to the right
			label.style, label.dx, label.dy = above, -5, 3
		}
		p.Add(label)
	}
	caption := fmt.Sprintf("Run %d: speed since first movement. Dots: speeds reached; triangles: distances covered.", run.ID)
	return render([]row{{p, 1}}, vg.Length(Narrow.width), 250, fmt.Sprintf("Launch, run %d", run.ID), caption)
}

// markPoint is a mark on the speed curve.
type markPoint struct {
	name     string
	at       plotter.XY
	distance bool
}

// markPoints returns the marks of a launch that start at first movement.
func markPoints(run runs.Run, t, v []float64, scale float64) []markPoint {
	var out []markPoint
	for _, m := range run.Marks {
		fromRest := strings.HasPrefix(m.Name, "0-") || !strings.Contains(m.Name, "-")
		speed := at(t, v, m.Time.X)
		if !fromRest || !finite(m.Time.X) || !finite(speed) {
			continue
		}
		out = append(out, markPoint{name: m.Name, at: plotter.XY{X: m.Time.X, Y: speed * scale}, distance: !strings.Contains(m.Name, "-")})
	}
	return out
}

// withWords returns the marks that have room for words: the most wanted first,
// none too close below or above another.
func withWords(marks []markPoint, units shown.System, top float64) []markPoint {
	order := labelled
	if units == shown.Imperial {
		order = imperialFirst
	}
	var out []markPoint
	for _, name := range order {
		i := slices.IndexFunc(marks, func(m markPoint) bool { return m.name == name })
		if i < 0 {
			continue
		}
		room := 0.075 * top
		if slices.ContainsFunc(out, func(o markPoint) bool { return abs(o.at.Y-marks[i].at.Y) < room }) {
			continue
		}
		out = append(out, marks[i])
	}
	return out
}

func abs(x float64) float64 { return max(x, -x) }

// bold is the weight of headings inside a figure.
var bold = font.Font{Weight: 2}
