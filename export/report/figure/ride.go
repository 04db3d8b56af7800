package figure

import (
	"math"

	"stillair/export/plot"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/sensors/finding"
)

// Width is the intended width of a figure.
type Width struct{ width, height, columns float64 }

// The widths: of a phone or half a page, and of a whole page.
var (
	Narrow = Width{width: 380, height: 330, columns: 380}
	Wide   = Width{width: 900, height: 360, columns: 900}
)

// kinds are the lane and tone of each kind of run.
var kinds = [...]struct {
	kind runs.Kind
	tone plot.Tone
}{
	{runs.Launch, 1}, {runs.RollOn, 3}, {runs.Pull, 4}, {runs.CoastDown, 0}, {runs.Stop, 2},
}

// Ride draws speed and acceleration over the whole ride, and which stretches
// are runs.
func Ride(r *runs.Result, b *words.Book, w Width) Figure {
	t := r.Track
	if t == nil || len(t.T) < 2 {
		return Figure{}
	}
	start := t.T[0]
	since := make([]float64, len(t.T))
	for i := range t.T {
		since[i] = t.T[i] - start
	}
	length := since[len(since)-1]
	unit := b.Style.Unit(shown.Speed)
	speed := series(since, t.V, 1/unit.SI, labelOf(b, "figure.speed", unit.Name), int(w.columns))
	speed.Y.Min = 0
	accel := series(since, t.A, 1, b.Name("figure.acceleration"), int(w.columns))
	accel.Y.Min, accel.Y.Max = math.Min(-6, accel.Y.Min), math.Max(8, accel.Y.Max)
	bars := lanes(r.Runs, start, b)
	for _, p := range []*plot.Plot{speed, accel, bars} {
		p.X.Min, p.X.Max = -0.01*length, length
		p.X.Ticks = minutes(b.Style, p.X.Min, p.X.Max)
	}
	withoutNumbers(b.Style, speed)
	withoutNumbers(b.Style, accel)
	caption := b.Say(finding.New("figure.ride_caption", finding.Text("long", shown.Duration(length))))
	return render(b.Style, []plot.Row{{Plot: speed, Share: 5}, {Plot: accel, Share: 3}, {Plot: bars, Share: 3.2}}, w.width, w.height, b.Name("report.ride"), caption)
}

// series returns a plot of one line.
func series(x, y []float64, scale float64, label string, columns int) *plot.Plot {
	px, py := decimate(x, y, columns)
	p := &plot.Plot{Y: plot.Axis{Label: label}, Lines: []plot.Line{{X: px, Y: scaled(py, scale), Tone: plot.Ink, Dash: plot.Thin}}}
	p.Reach()
	return p
}

// lanes shows each run as a bar in the lane of its kind.
func lanes(all []runs.Run, start float64, b *words.Book) *plot.Plot {
	p := &plot.Plot{X: plot.Axis{Label: b.Name("figure.minutes")}, Y: plot.Axis{Min: -0.6, Max: float64(len(kinds)) - 0.4}}
	for i, k := range kinds {
		lane := float64(len(kinds) - 1 - i)
		p.Y.Ticks = append(p.Y.Ticks, plot.Tick{At: lane, Text: b.Kind(k.kind)})
		for _, r := range all {
			if r.Kind == k.kind && finite(r.Start) && finite(r.End) {
				p.Bars = append(p.Bars, plot.Bar{From: r.Start - start, To: r.End - start, Y: lane, Tone: k.tone, Hollow: !r.Accepted()})
			}
		}
	}
	return p
}

// at returns the track's speed at t by straight lines.
func at(x, y []float64, t float64) float64 {
	for i := 1; i < len(x); i++ {
		if x[i] >= t {
			share := (t - x[i-1]) / (x[i] - x[i-1])
			return y[i-1] + share*(y[i]-y[i-1])
		}
	}
	return math.NaN()
}

// within returns the part of x and y from one time to another.
func within(x, y []float64, from, to float64) (px, py []float64) {
	for i := range x {
		if x[i] >= from && x[i] <= to {
			px, py = append(px, x[i]), append(py, y[i])
		}
	}
	return px, py
}
