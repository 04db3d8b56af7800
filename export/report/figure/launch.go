package figure

import (
	"math"
	"slices"
	"strings"

	"stillair/export/plot"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/sensors/finding"
)

// labelled are the marks to be labelled, the most important first.
var labelled = []string{"1/4 mile", "0-100 km/h", "0-60 mph", "1/8 mile", "60 ft", "0-100 mph", "1 km", "0-60 km/h", "1000 ft", "330 ft"}

// imperialFirst are labelled for those who read miles.
var imperialFirst = []string{"1/4 mile", "0-60 mph", "0-100 mph", "1/8 mile", "60 ft", "0-100 km/h", "1000 ft", "330 ft", "1 km", "0-60 km/h"}

// Launch draws the speed of one launch over the time since first movement,
// with its marks.
func Launch(r *runs.Result, run runs.Run, b *words.Book) Figure {
	if r.Track == nil {
		return Figure{}
	}
	unit := b.Style.Unit(shown.Speed)
	t, v := within(r.Track.T, r.Track.V, run.Start-1, run.End+0.3)
	if len(t) < 2 {
		return Figure{}
	}
	for i := range t {
		t[i] -= run.Start
	}
	x, y := decimate(t, v, 380)
	p := &plot.Plot{X: plot.Axis{Label: b.Name("figure.since_movement")}, Y: plot.Axis{Label: labelOf(b, "figure.speed", unit.Name)},
		Lines: []plot.Line{{X: x, Y: scaled(y, 1/unit.SI), Tone: plot.Ink}}}
	p.Reach()
	p.X.Min, p.X.Max, p.Y.Min = t[0], t[len(t)-1], 0
	p.Y.Max *= 1.12
	marks := markPoints(run, t, v, 1/unit.SI)
	dots := [2]plot.Dots{{Large: true}, {Large: true, Triangle: true, Tone: 1}}
	for _, m := range marks {
		d := &dots[0]
		if m.distance {
			d = &dots[1]
		}
		d.X, d.Y = append(d.X, m.x), append(d.Y, m.y)
	}
	p.Dots = dots[:]
	for _, m := range withWords(marks, b.Style.System, p.Y.Max) {
		tight := m.x > 0.65*p.X.Max // no room to the right
		p.Marks = append(p.Marks, plot.Mark{X: m.x, Y: m.y, Left: tight, Above: tight, Text: m.name + "  " + b.Style.Fixed(m.x, 2) + " s"})
	}
	id := finding.Count("run", run.ID)
	return DrawIn(b.Style, p, Narrow.width, 250, b.Say(finding.New("figure.launch", id)), b.Say(finding.New("figure.launch_caption", id)))
}

// markPoint is a mark on the speed curve.
type markPoint struct {
	name     string
	x, y     float64 // on the plot
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
		out = append(out, markPoint{name: m.Name, x: m.Time.X, y: speed * scale, distance: !strings.Contains(m.Name, "-")})
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
		if slices.ContainsFunc(out, func(o markPoint) bool { return math.Abs(o.y-marks[i].y) < room }) {
			continue
		}
		out = append(out, marks[i])
	}
	return out
}
