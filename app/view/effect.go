package view

import (
	"fmt"
	"math"

	"stillair/app/store"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/sensors/units"
)

// Worth is what a difference between two setups means at one speed, each
// figure with its ±.
type Worth struct {
	Pair  string
	Lines []WorthLine
	Notes []string
}

// WorthLine is one thing that a difference costs or saves.
type WorthLine struct {
	Name    string
	Reading Reading
	Words   string // beside the reading; may be empty
}

// WorthSpeeds are the speeds that a rider may ask about, m/s.
func (c Context) WorthSpeeds() [3]float64 {
	if c.System == shown.Imperial {
		return [3]float64{40 * units.MPH, 60 * units.MPH, 75 * units.MPH}
	}
	return [3]float64{80 * units.KMH, 100 * units.KMH, 120 * units.KMH}
}

// UsualSpeed is the place of the speed at which it is said first.
const UsualSpeed = 2

// Worths says what every difference of a ride means at speed v, m/s. Fuel and
// range need the bike's own consumption; fuel is nil where it was not entered.
func (c Context) Worths(res *runs.Result, v float64, fuel *store.Fuel) []Worth {
	var out []Worth
	for _, x := range res.Compared {
		load, err := res.LoadOf(x.A)
		if x.Load == nil || err != nil || load.Check() != nil {
			continue
		}
		out = append(out, c.worthOf(x, load, v, fuel))
	}
	return out
}

// worthOf says what one difference means where A has the load.
func (c Context) worthOf(x runs.Comparison, load effect.Load, v float64, fuel *store.Fuel) Worth {
	w := Worth{Pair: c.pairName(x), Lines: c.costs(*x.Load, load, v)}
	if fuel == nil {
		w.Lines = append(w.Lines, c.aboutFuel(*x.Load, load, v))
		w.Notes = append(w.Notes, c.Book.Worth.FuelHow)
	} else {
		w.Lines = append(w.Lines, c.fuelLines(*x.Load, load, *fuel)...)
		w.Notes = append(w.Notes, c.Book.Worth.Share)
	}
	return w
}

// costs are power, speed and time.
func (c Context) costs(change effect.Change, load effect.Load, v float64) []WorthLine {
	t := c.Book.Worth
	at := c.SpeedText(v) + " " + c.SpeedUnit()
	faster := change.Speed(load, v)
	distance := 100e3
	if c.System == shown.Imperial {
		distance = 100 * units.Mile
	}
	longer := change.TimeOver(load, v, distance)
	over := c.of(shown.Journey, measure.Value{X: distance}).Spoken()
	lines := []WorthLine{{Name: fmt.Sprintf(t.PowerName, at), Reading: c.signed(shown.Power, change.Power(load, v))}}
	name := t.Slower
	if faster.X > 0 {
		name = t.Faster
	}
	lines = append(lines, WorthLine{Name: name, Reading: c.reading(shown.Speed, math.Abs(faster.X), half(faster))})
	name = t.Longer
	if longer.X < 0 {
		name = t.Shorter
	}
	return append(lines, WorthLine{Name: fmt.Sprintf(name, over), Reading: c.reading(shown.Time, math.Abs(longer.X), half(longer))})
}

// signed writes a difference with its sign.
func (c Context) signed(q shown.Quantity, v measure.Value) Reading {
	r := c.of(q, v)
	if v.X > 0 {
		r.Number = "+" + r.Number
	}
	return r
}

// consumptionSE is what filling up twice leaves unknown of a consumption,
// relative (common practice).
const consumptionSE = 0.02

// aboutFuel is roughly what a difference takes of petrol, where the consumption
// of the bike is not known.
func (c Context) aboutFuel(change effect.Change, load effect.Load, v float64) WorthLine {
	unit := shown.Unit{Name: "l/100 km", SI: litrePer100Km}
	if gallon := c.FuelUnit.Gallon(); gallon > 0 { // miles per gallon need the consumption itself
		unit = shown.Unit{Name: "gal/100 mi", SI: gallon / (100 * units.Mile)}
	}
	return WorthLine{Name: fmt.Sprintf(c.Book.Worth.AboutFuel, c.SpeedText(v)+" "+c.SpeedUnit()),
		Reading: c.signed(shown.Quantity{Metric: unit, Imperial: unit}, change.AboutFuel(load, v))}
}

func (c Context) fuelLines(change effect.Change, load effect.Load, f store.Fuel) []WorthLine {
	t := c.Book.Worth
	burnt := f.LitresPer100Km * litrePer100Km
	burn := effect.Burn{Speed: f.SpeedMPS, PerMetre: measure.Value{X: burnt, SE: consumptionSE * burnt}}
	after := change.Fuel(load, burn, effect.AssumedWillans())
	at := c.SpeedText(f.SpeedMPS) + " " + c.SpeedUnit()
	lines := []WorthLine{{Name: fmt.Sprintf(t.FuelName, at), Reading: c.fuelChange(burnt, after.PerMetre, after.More)}}
	if f.Tank > 0 {
		q := c.TankQuantity()
		had, has := effect.Range(f.Tank*1e-3, burn.PerMetre), effect.Range(f.Tank*1e-3, after.PerMetre)
		lines = append(lines, WorthLine{Name: fmt.Sprintf(t.RangeName, c.Write(&f.Tank, q)+" "+q.Unit), Reading: c.of(shown.Journey, has),
			Words: fmt.Sprintf(t.RangeFrom, c.of(shown.Journey, measure.Value{X: had.X}).Spoken())})
	}
	return lines
}

// noTop says what a top speed would need where none is known; empty else.
func (c Context) noTop(res *runs.Result) string {
	if len(res.Compared) == 0 || len(res.TopSpeeds(math.Inf(1))) > 0 {
		return ""
	}
	return c.Book.Worth.NoTop
}

// Steady says what holding v takes with every setup, and how fast each goes.
// limitRPM is the engine's highest speed, +Inf where it is not known.
func (c Context) Steady(res *runs.Result, v, limitRPM float64) []WorthLine {
	var out []WorthLine
	for _, s := range res.AtSpeed(v) {
		out = append(out, c.steadyLine(c.setupName(s.Setup), s.Power, s.AirShare))
	}
	return append(out, c.topLines(res, limitRPM, c.setupName)...)
}

func (c Context) steadyLine(name string, power measure.Value, airShare float64) WorthLine {
	return WorthLine{Name: name, Reading: c.of(shown.Power, power), Words: fmt.Sprintf(c.Book.Worth.AirShare, c.Number(100*airShare, 0))}
}

// topLines are the top speeds of the setups, each in the air of its ride.
func (c Context) topLines(res *runs.Result, limitRPM float64, call func(setup string) string) []WorthLine {
	t := c.Book.Worth
	var out []WorthLine
	tops := res.TopSpeeds(limitRPM)
	for _, l := range res.RoadLoads {
		top, ok := tops[l.Setup]
		if !ok {
			continue
		}
		words := map[effect.Limit]string{effect.ByPower: t.TopByPower, effect.ByGear: t.TopByGear, effect.NotInRun: t.TopBeyond}[top.Limit]
		out = append(out, WorthLine{Name: fmt.Sprintf(t.TopName, call(l.Setup)), Words: words,
			Reading: c.of(shown.Speed, top.Speed)})
	}
	return out
}
