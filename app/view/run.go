package view

import (
	"fmt"
	"math"
	"slices"

	"stillair/export/plot"
	"stillair/export/shown"
	"stillair/runs"
)

// Run is the screen of one run with its curve.
type Run struct {
	Title    string
	Detail   string
	Reasons  []string
	Cautions []string
	Curve    Plot
	Residual Plot // coast-downs that a fit used
	HasFit   bool
	Marks    []MarkRow
	Rollout  bool // the marks have a second time, counted from one foot on
	Coast    bool
	Hints    []string
	Power    Plot // of the curve that a pull is part of
	HasPower bool
}

// MarkRow is one mark in the table.
type MarkRow struct {
	Name          string
	Time, Rollout Reading
	More          string // the speed or distance at the mark
}

// lead is how much of the ride before and after a run is shown, s.
const lead = 1.5

// Run makes the screen of one run.
func (c Context) Run(res *runs.Result, r runs.Run) Run {
	t := c.Book.Run
	v := Run{Title: c.kindName(r.Kind), Detail: c.runDetail(r), Coast: r.Kind == runs.CoastDown}
	for _, s := range r.Reasons {
		v.Reasons = append(v.Reasons, c.sentence(s))
	}
	for _, s := range r.Cautions {
		v.Cautions = append(v.Cautions, c.sentence(s))
	}
	v.Marks, v.Rollout = c.markRows(r)
	v.Curve = c.runCurve(res, r)
	if r.Curve != nil {
		v.HasFit, v.Residual = true, c.residual(r.Curve)
	}
	if r.Kind == runs.Pull {
		v.Power, v.HasPower = c.pullPower(res, r.ID)
	}
	switch {
	case v.Rollout:
		v.Hints = append(v.Hints, t.FootHint)
	case r.Kind == runs.Stop:
		v.Hints = append(v.Hints, t.StopCaution)
	case r.Kind == runs.Pull:
		v.Hints = append(v.Hints, t.PullHint)
	}
	return v
}

func (c Context) markRows(r runs.Run) (rows []MarkRow, rollout bool) {
	for _, m := range c.ownMarks(r.Marks) {
		row := MarkRow{Name: c.markName(m.Name), More: c.markMore(r.Kind, m)}
		if m.Time.Known() {
			row.Time = c.of(shown.Time, m.Time)
		}
		if m.Rollout.Known() {
			row.Rollout, rollout = c.of(shown.Time, m.Rollout), true
		}
		rows = append(rows, row)
	}
	return rows, rollout
}

// ownMarks are the marks in the rider's units, or all where none is.
func (c Context) ownMarks(all []runs.Mark) []runs.Mark {
	own := slices.DeleteFunc(slices.Clone(all), func(m runs.Mark) bool { return c.otherUnit(m.Name) })
	if len(own) == 0 {
		return all
	}
	return own
}

func (c Context) markMore(k runs.Kind, m runs.Mark) string {
	switch {
	case k == runs.Stop && m.Distance.Known():
		return c.of(shown.Distance, m.Distance).Spoken()
	case m.Speed.Known() && k == runs.Launch:
		return fmt.Sprintf(c.Book.Run.SpeedThere, c.SpeedText(m.Speed.X), c.SpeedUnit())
	}
	return ""
}

// runCurve is the speed over the run with its band and its marks.
func (c Context) runCurve(res *runs.Result, r runs.Run) Plot {
	t := c.Book.Run
	p := Plot{Spoken: c.kindName(r.Kind) + ", " + c.runDetail(r)}
	var ts, vs, low, high []float64
	if res.Track != nil {
		ts, vs, low, high = c.bandBetween(res, r.Start-lead, r.End+lead, r.Start)
	}
	tone := 0
	if !r.Accepted() {
		tone = 1
	}
	p.Bands = []Band{{X: ts, Low: low, High: high, Tone: plot.Tone(tone)}}
	p.Lines = []Line{{X: ts, Y: vs, Tone: plot.Tone(tone)}}
	if r.Curve != nil {
		p.Lines[0].Name = t.Measured
		x, y := make([]float64, len(r.Curve.T)), make([]float64, len(r.Curve.T))
		for i := range x {
			x[i], y[i] = r.Curve.T[i]-r.Start, c.Speed(r.Curve.Fit[i])
		}
		p.Lines = append(p.Lines, Line{Name: t.Fitted, X: x, Y: y, Tone: 1, Dash: plot.Dashed})
	}
	top := 1.0
	for _, v := range vs {
		top = max(top, v)
	}
	p.X = c.axisOf(t.TimeAxis, 0, max(r.End-r.Start, 1), 5)
	p.X.Min = -lead
	p.X.Max = max(p.X.Max, r.End-r.Start+lead/3)
	p.Y = c.axisOf(c.axisName(axisSpeed, c.SpeedUnit()), 0, top, 5)
	p.Marks = c.plotMarks(r, ts, vs)
	return p
}

// plotMarks are the two or three most important marks.
func (c Context) plotMarks(r runs.Run, ts, vs []float64) []PlotMark {
	var out []PlotMark
	if r.Kind != runs.Launch {
		return nil
	}
	for _, m := range r.Marks {
		if c.otherUnit(m.Name) || !m.Time.Known() || !c.prominent(m.Name) {
			continue
		}
		if y, ok := at(ts, vs, m.Time.X); ok {
			out = append(out, PlotMark{X: m.Time.X, Y: y, Text: c.markName(m.Name)})
		}
	}
	return out
}

func (c Context) prominent(name string) bool {
	switch name {
	case "0-60 mph", "0-100 km/h", "1/4 mile":
		return true
	}
	return false
}

// bandBetween returns the track's speed with its 95 % band between two times,
// counted from zero, in the rider's unit.
func (c Context) bandBetween(res *runs.Result, from, to, zero float64) (t, v, low, high []float64) {
	tr := res.Track
	step, last := (to-from)/400, math.Inf(-1)
	for i, at := range tr.T {
		if at < from || at > to || at-last < step {
			continue
		}
		last = at
		h := 0.0
		if i < len(tr.VSD) {
			h = shown.Normal95 * tr.VSD[i]
		}
		t, v = append(t, at-zero), append(v, c.Speed(tr.V[i]))
		low, high = append(low, c.Speed(max(0, tr.V[i]-h))), append(high, c.Speed(tr.V[i]+h))
	}
	return t, v, low, high
}

// at interpolates y at x.
func at(xs, ys []float64, x float64) (float64, bool) {
	for i := 1; i < len(xs); i++ {
		if xs[i] >= x && xs[i-1] <= x {
			f := (x - xs[i-1]) / (xs[i] - xs[i-1])
			return ys[i-1] + f*(ys[i]-ys[i-1]), true
		}
	}
	return 0, false
}

func (c Context) residual(cu *runs.Curve) Plot {
	t := c.Book.Run
	x, y := make([]float64, len(cu.T)), make([]float64, len(cu.T))
	most := 0.1
	for i := range x {
		x[i], y[i] = cu.T[i]-cu.T[0], c.Speed(cu.V[i]-cu.Fit[i])
		most = max(most, math.Abs(y[i]))
	}
	p := Plot{Spoken: t.Residual, X: c.axisOf(t.TimeAxis, 0, x[len(x)-1], 5),
		Y: c.axisOf(c.axisName(axisResidual, c.SpeedUnit()), -most, most, 3)}
	p.Lines = []Line{{X: []float64{p.X.Min, p.X.Max}, Y: []float64{0, 0}, Tone: 1, Dash: plot.Dashed}, {X: x, Y: y, Dash: plot.Solid}}
	return p
}
