package view

import (
	"fmt"
	"math"

	"stillair/export/plot"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/sensors/units"
)

// Load is the screen of all coast-downs of one setup, and their results.
type Load struct {
	Title, Setup     string
	Curves           Plot
	CurvesHint       string
	CdA, Crr         Reading
	CdAMeans         string
	CrrMeans         string
	CdASure, CrrSure string
	CdABand, CrrBand Interval
	Power            string
	Force            Plot
	Pairs            string
	MorePairs        string
	Assumed          string
	Notes            []string
}

// Load makes the screen of a setup's road load.
func (c Context) Load(res *runs.Result, l runs.RoadLoad) Load {
	t := c.Book.Load
	v := Load{Title: c.named(nameLoads), Pairs: c.pairs(l.Pairs), MorePairs: c.morePairs(l)}
	if l.Setup != "" {
		v.Setup = fmt.Sprintf(t.Setup, l.Setup)
	}
	hw := func(ci [2]float64) float64 { return (ci[1] - ci[0]) / 2 }
	v.CdA, v.Crr = c.reading(shown.Area, l.CdA.X, hw(l.CdACI)), c.reading(shown.Plain, l.Crr.X, hw(l.CrrCI))
	area := c.style().Unit(shown.Area)
	ci := [2]float64{l.CdACI[0] / area.SI, l.CdACI[1] / area.SI}
	v.CdASure, v.CrrSure = c.sureOf(shown.Area, l.CdACI), c.sureOf(shown.Plain, l.CrrCI)
	v.CdABand = c.interval(l.CdA.X/area.SI, ci, 0.2/area.SI, 1/area.SI, 1, area.Name)
	v.CrrBand = c.interval(l.Crr.X, l.CrrCI, 0, 0.04, 2, t.RollScale)
	v.CdABand.Spoken, v.CrrBand.Spoken = v.CdASure, v.CrrSure
	u := c.reference()
	w := loadOf(res, l)
	power := w.Power(u)
	v.CdAMeans = fmt.Sprintf(t.DragMeans, c.SpeedText(u), c.SpeedUnit(), c.force(w.Force(u).X*w.AirShare(u)))
	v.CrrMeans = fmt.Sprintf(t.RollingMeans, c.force(l.Mass*w.Gravity*l.Crr.X), c.Mass(l.Mass))
	v.Power = fmt.Sprintf(t.PowerNeeded, c.SpeedText(u), c.SpeedUnit(), c.of(shown.Power, power).Spoken())
	v.Assumed = fmt.Sprintf(t.Assumed, c.Number(l.Density, 3), c.Mass(l.Mass))
	v.Curves, v.CurvesHint = c.coastCurves(res, l)
	v.Force = c.forcePlot(l, w)
	for _, n := range l.Notes {
		v.Notes = append(v.Notes, c.sentence(n))
	}
	return v
}

// sureOf writes an interval with the digits of the ± that its half is.
func (c Context) sureOf(q shown.Quantity, ci [2]float64) string {
	half := (ci[1] - ci[0]) / 2
	low, _, _ := c.style().Parts(q, ci[0], half)
	high, _, _ := c.style().Parts(q, ci[1], half)
	return fmt.Sprintf(c.Book.Load.SureOf, low, high)
}

// force writes a force with its unit.
func (c Context) force(n float64) string {
	if c.System == shown.Imperial {
		return c.style().Number(shown.Force, n, 1)
	}
	return c.style().Number(shown.Force, n, 0)
}

// reference is the speed at which forces are stated, m/s: 100 km/h or 60 mph.
func (c Context) reference() float64 {
	if c.System == shown.Imperial {
		return 60 * units.MPH
	}
	return 100 * units.KMH
}

// loadOf is a road load in the air of its ride, on a level road without wind,
// with standard gravity if the result does not say where the ride was.
func loadOf(res *runs.Result, l runs.RoadLoad) effect.Load {
	g := res.Gravity
	if g == 0 {
		g = units.StandardGravity
	}
	return l.Load(g)
}

func (c Context) interval(best float64, ci [2]float64, low, high float64, decimals int, scale string) Interval {
	low, high = min(low, ci[0]), max(high, ci[1])
	return Interval{Low: low, High: high, LowText: c.Number(low, decimals), HighText: c.Number(high, decimals), ScaleText: scale,
		Best: best, From: ci[0], To: ci[1]}
}

// leastGain is the gain in ± below which another pair is not recommended, and
// fewest the number of pairs below which it always is.
const (
	leastGain = 0.4
	fewest    = 2
)

// morePairs reports whether more pairs help. The half width is proportional to
// t/√n: every pair has its own wind, and the spread between pairs is the limit.
func (c Context) morePairs(l runs.RoadLoad) string {
	t := c.Book.Load
	if l.Pairs < fewest {
		return t.OnlyOne
	}
	now, more, then := c.gain(l)
	if more == 0 {
		return fmt.Sprintf(t.EnoughPairs, c.Number(now, 1))
	}
	if more == 1 {
		return fmt.Sprintf(t.MorePair, c.Number(now, 1), c.Number(then, 1))
	}
	return fmt.Sprintf(t.MorePairs, c.Number(now, 1), more, c.Number(then, 1))
}

// gain returns the present half width of CdA in percent, how many more pairs
// help, and the half width then.
func (c Context) gain(l runs.RoadLoad) (now float64, more int, then float64) {
	n := float64(l.Pairs)
	now = 100 * (l.CdACI[1] - l.CdACI[0]) / 2 / l.CdA.X
	perPair := now / measure.Quantile(0.95, l.DoF) * math.Sqrt(n)
	then = now
	for k := 1; k <= 4; k++ {
		with := measure.Quantile(0.95, l.DoF+float64(k)) * perPair / math.Sqrt(n+float64(k))
		if then-with < leastGain {
			break
		}
		more, then = k, with
	}
	return now, more, then
}

// coastCurves draws every coast-down from the moment when it passed a speed
// that all of them passed.
func (c Context) coastCurves(res *runs.Result, l runs.RoadLoad) (Plot, string) {
	t := c.Book.Load
	used := map[int]bool{}
	for _, id := range l.Runs {
		used[id] = true
	}
	var curves []*runs.Curve
	start := math.Inf(1)
	for _, r := range res.Runs {
		if used[r.ID] && r.Curve != nil && len(r.Curve.V) > 1 {
			curves = append(curves, r.Curve)
			start = min(start, r.Curve.V[0])
		}
	}
	if len(curves) == 0 {
		return Plot{}, ""
	}
	start = math.Floor(c.Speed(start)/5) * 5 * c.perSpeed()
	p, longest := Plot{}, 1.0
	for i, cu := range curves {
		t0 := passed(cu, start)
		var x, y, f []float64
		for j := range cu.T {
			if cu.T[j] >= t0 {
				x, y, f = append(x, cu.T[j]-t0), append(y, c.Speed(cu.V[j])), append(f, c.Speed(cu.Fit[j]))
			}
		}
		longest = max(longest, x[len(x)-1])
		line, fit := Line{X: x, Y: y, Dash: plot.Thin}, Line{X: x, Y: f, Tone: 1, Dash: plot.Dashed}
		if i == 0 {
			line.Name, fit.Name = c.Book.Run.Measured, c.Book.Run.Fitted
		}
		p.Lines = append(p.Lines, line)
		if i < 2 { // one fit for each direction: more would hide the curves
			p.Lines = append(p.Lines, fit)
		}
	}
	p.X = c.axisOf(fmt.Sprintf(t.SinceSpeed, c.SpeedText(start), c.SpeedUnit()), 0, longest, 5)
	p.X.Max = max(longest, 1)
	p.Y = c.axisOf(c.axisName(axisSpeed, c.SpeedUnit()), 0, c.Speed(start), 5)
	p.Spoken = t.AllRuns
	return p, fmt.Sprintf(t.CurvesHint, c.SpeedText(start), c.SpeedUnit())
}

// passed is the time when a falling curve passed a speed.
func passed(cu *runs.Curve, v float64) float64 {
	for i := 1; i < len(cu.V); i++ {
		if cu.Fit[i-1] >= v && cu.Fit[i] < v {
			f := (cu.Fit[i-1] - v) / (cu.Fit[i-1] - cu.Fit[i])
			return cu.T[i-1] + f*(cu.T[i]-cu.T[i-1])
		}
	}
	return cu.T[0]
}

// forcePlot shows how force grows with speed, and the share of the tyres.
func (c Context) forcePlot(l runs.RoadLoad, load effect.Load) Plot {
	t := c.Book.Load
	top := 1.3 * c.reference()
	force := c.style().Unit(shown.Force)
	newtons := force.SI
	var x, all, roll, low, high []float64
	for i := range 41 {
		v := top * float64(i) / 40
		f := load.Force(v)
		h := measure.Quantile(0.95, l.DoF) * f.SE
		x, all, roll = append(x, c.Speed(v)), append(all, f.X/newtons), append(roll, f.X*(1-load.AirShare(v))/newtons)
		low, high = append(low, (f.X-h)/newtons), append(high, (f.X+h)/newtons)
	}
	return Plot{Spoken: t.ShareTitle, X: c.axisOf(c.axisName(axisSpeed, c.SpeedUnit()), 0, c.Speed(top), 5),
		Y:     c.axisOf(c.axisName(axisForce, force.Name), 0, high[len(high)-1], 4),
		Bands: []Band{{X: x, Low: low, High: high}},
		Lines: []Line{{Name: t.AirShare, X: x, Y: all}, {Name: t.RollShare, X: x, Y: roll, Tone: 1, Dash: plot.Dashed}}}
}
