package figure

import (
	"math"

	"stillair/export/plot"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/sensors/finding"
)

// most is how many dots of one coast-down are drawn.
const most = 60

// CoastDowns draws all coast-downs of a setup over their fitted curves, and the
// residuals below.
func CoastDowns(r *runs.Result, setup string, b *words.Book) Figure {
	unit := b.Style.Unit(shown.Speed)
	top := &plot.Plot{Y: plot.Axis{Label: labelOf(b, "figure.speed", unit.Name)}}
	left := &plot.Plot{X: plot.Axis{Label: b.Name("figure.since_clutch")}, Y: plot.Axis{Label: labelOf(b, "figure.residual", unit.Name)}}
	count, reach, longest, fastest := 0, 0.0, 0.0, 0.0
	for _, run := range r.Runs {
		if run.Kind != runs.CoastDown || run.Setup != setup || !run.Accepted() || run.Curve == nil || len(run.Curve.T) < 2 {
			continue
		}
		count++
		t, v, fit, over := curvePoints(run.Curve, 1/unit.SI)
		back := comesBack(r.Runs, run)
		tone := plot.Tone(0)
		if back {
			tone = 1
		}
		top.Lines = append(top.Lines, plot.Line{X: t, Y: fit, Tone: plot.Soft, Dash: plot.Thin})
		top.Dots = append(top.Dots, plot.Dots{X: t, Y: v, Tone: tone, Triangle: back})
		left.Dots = append(left.Dots, plot.Dots{X: t, Y: over, Tone: tone, Triangle: back})
		for i := range t {
			reach, longest, fastest = math.Max(reach, math.Abs(over[i])), math.Max(longest, t[i]), math.Max(fastest, math.Max(v[i], fit[i]))
		}
	}
	if count == 0 {
		return Figure{}
	}
	left.Lines = []plot.Line{{X: []float64{0, longest}, Y: []float64{0, 0}, Tone: plot.Ink, Dash: plot.Thin}}
	top.X.Max, left.X.Max, top.Y.Max = longest, longest, fastest
	left.Y.Min, left.Y.Max = -1.1*reach, 1.1*reach
	withoutNumbers(b.Style, top)
	caption := b.Say(finding.New("figure.coast_downs_caption", finding.Count("n", count)))
	title := b.Say(finding.New("figure.coast_downs", finding.Text("setup", setup)))
	return render(b.Style, []plot.Row{{Plot: top, Share: 5}, {Plot: left, Share: 2.6}}, Narrow.width, 440, title, caption)
}

// comesBack reports whether a run goes the other way than the first.
func comesBack(all []runs.Run, run runs.Run) bool {
	first := math.NaN()
	for _, r := range all {
		if r.Kind == runs.CoastDown && finite(r.BearingDeg) {
			first = r.BearingDeg
			break
		}
	}
	return math.Cos((run.BearingDeg-first)*math.Pi/180) < 0
}

// curvePoints returns measured and fitted speeds and their difference over the
// time since the run's beginning.
func curvePoints(c *runs.Curve, scale float64) (t, v, fit, over []float64) {
	n := min(len(c.T), len(c.V), len(c.Fit))
	step := 1 + (n-1)/most
	for i := 0; i < n; i += step {
		if !finite(c.V[i]) || !finite(c.Fit[i]) {
			continue
		}
		t, v, fit = append(t, c.T[i]-c.T[0]), append(v, c.V[i]*scale), append(fit, c.Fit[i]*scale)
		over = append(over, (c.V[i]-c.Fit[i])*scale)
	}
	return t, v, fit, over
}
