package figure

import (
	"fmt"
	"image/color"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"stillair/export/shown"
	"stillair/runs"
)

// Width is how wide a figure is meant to stand.
type Width struct{ width, height, columns float64 }

// The widths: of a phone or half a page, and of a whole page.
var (
	Narrow = Width{width: 380, height: 330, columns: 380}
	Wide   = Width{width: 900, height: 360, columns: 900}
)

// kinds is how the kinds of run are told apart: by lane and colour.
var kinds = []struct {
	kind   runs.Kind
	colour color.NRGBA
}{
	{runs.Launch, vermillion}, {runs.RollOn, orange}, {runs.Pull, purple}, {runs.CoastDown, blue}, {runs.Stop, green},
}

// Ride draws speed and acceleration over the whole ride, and which stretches
// are runs.
func Ride(r *runs.Result, units shown.System, w Width) Figure {
	t := r.Track
	if t == nil || len(t.T) < 2 {
		return Figure{}
	}
	start := t.T[0]
	since := make([]float64, len(t.T))
	for i := range t.T {
		since[i] = t.T[i] - start
	}
	speedUnit := units.First(shown.Speed)
	speed := series(since, t.V, 1/speedUnit.SI, "", "speed, "+speedUnit.Name, int(w.columns))
	speed.Y.Min = 0
	withoutX(speed)
	accel := series(since, t.A, 1, "", "m/s²", int(w.columns))
	accel.Y.Min, accel.Y.Max = -6, 8
	for _, a := range t.A {
		if finite(a) {
			accel.Y.Min, accel.Y.Max = math.Min(accel.Y.Min, a), math.Max(accel.Y.Max, a)
		}
	}
	withoutX(accel)
	lanes := laneplot(r.Runs, start, since[len(since)-1])
	for _, p := range []*plot.Plot{speed, accel, lanes} {
		p.X.Min, p.X.Max = -0.01*since[len(since)-1], since[len(since)-1]
		if _, noLabels := p.X.Tick.Marker.(bare); noLabels {
			p.X.Tick.Marker = bare{minutes{}}
		} else {
			p.X.Tick.Marker = minutes{}
		}
	}
	caption := fmt.Sprintf("Speed and acceleration over the ride of %s, and below them the runs that were found in it. Hollow: rejected.",
		shown.Duration(since[len(since)-1]))
	return render([]row{{speed, 5}, {accel, 3}, {lanes, 3.2}}, vg.Length(w.width), vg.Length(w.height), "The ride", caption)
}

// series returns a plot of one line.
func series(x, y []float64, scale float64, xLabel, yLabel string, columns int) *plot.Plot {
	p := newPlot(xLabel, yLabel)
	pts := decimate(x, y, columns)
	for i := range pts {
		pts[i].Y *= scale
	}
	p.Add(line(pts, draw.LineStyle{Color: ink, Width: 0.8}))
	return p
}

// laneplot shows each run as a bar in the lane of its kind.
func laneplot(all []runs.Run, start, length float64) *plot.Plot {
	p := newPlot("minutes", "")
	var names []plot.Tick
	for i, k := range kinds {
		names = append(names, plot.Tick{Value: float64(len(kinds) - 1 - i), Label: string(k.kind)})
	}
	p.Y.Tick.Marker = plot.ConstantTicks(names)
	p.Y.Tick.Label.Color = ink
	p.Y.Tick.Length = 0
	p.Y.LineStyle.Width = 0
	p.Y.Min, p.Y.Max = -0.6, float64(len(kinds))-0.4
	p.Add(bars{all, start, length})
	return p
}

// bars draws the runs in their lanes.
type bars struct {
	runs          []runs.Run
	start, length float64
}

// Plot draws the bars; a rejected run is hollow.
func (b bars) Plot(c draw.Canvas, p *plot.Plot) {
	tx, ty := p.Transforms(&c)
	const half, least = 3.6, 1.6 // points
	for _, r := range b.runs {
		for i, k := range kinds {
			if k.kind != r.Kind || !finite(r.Start) || !finite(r.End) {
				continue
			}
			y := ty(float64(len(kinds) - 1 - i))
			left, right := tx(r.Start-b.start), tx(r.End-b.start)
			right = max(right, left+least)
			outline := []vg.Point{{X: left, Y: y - half}, {X: right, Y: y - half}, {X: right, Y: y + half}, {X: left, Y: y + half}, {X: left, Y: y - half}}
			if r.Accepted() {
				c.FillPolygon(k.colour, outline[:4])
				continue
			}
			c.StrokeLines(draw.LineStyle{Color: k.colour, Width: 0.8}, outline)
		}
	}
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

// scaled returns the points with both values multiplied.
func scaled(pts plotter.XYs, kx, ky float64) plotter.XYs {
	for i := range pts {
		pts[i].X, pts[i].Y = pts[i].X*kx, pts[i].Y*ky
	}
	return pts
}
