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

// Effect is the effect of a difference between two setups at one speed, each
// figure with its ±.
type Effect struct {
	Pair  string
	Lines []EffectLine
	Notes []string
}

// EffectLine is one figure of it, such as power or fuel.
type EffectLine struct {
	Name    string
	Reading Reading
	Words   string // next to the reading; may be empty
}

// EffectSpeeds are the speeds that a rider can choose from, m/s.
func (c Context) EffectSpeeds() [3]float64 {
	if c.System == shown.Imperial {
		return [3]float64{40 * units.MPH, 60 * units.MPH, 75 * units.MPH}
	}
	return [3]float64{80 * units.KMH, 100 * units.KMH, 120 * units.KMH}
}

// UsualSpeed is the index of the speed shown first.
const UsualSpeed = 2

// Effects are the effects of every difference of a ride at speed v, m/s. Fuel
// and range need the bike's own consumption; fuel is nil if it was not entered.
func (c Context) Effects(res *runs.Result, v float64, fuel *store.Fuel) []Effect {
	var out []Effect
	for _, x := range res.Compared {
		load, err := res.LoadOf(x.A)
		if x.Load == nil || err != nil || load.Check() != nil {
			continue
		}
		out = append(out, c.effectOf(x, load, v, fuel))
	}
	return out
}

// effectOf is the effect of one difference, given the load of A.
func (c Context) effectOf(x runs.Comparison, load effect.Load, v float64, fuel *store.Fuel) Effect {
	w := Effect{Pair: c.pairName(x), Lines: c.costs(*x.Load, load, v)}
	if fuel == nil {
		w.Lines = append(w.Lines, c.aboutFuel(*x.Load, load, v))
		w.Notes = append(w.Notes, c.Book.Effects.FuelHow)
	} else {
		w.Lines = append(w.Lines, c.fuelLines(*x.Load, load, *fuel)...)
		w.Notes = append(w.Notes, c.Book.Effects.Share)
	}
	return w
}

// costs are the lines for power, speed and time.
func (c Context) costs(change effect.Change, load effect.Load, v float64) []EffectLine {
	t := c.Book.Effects
	at := c.SpeedText(v) + " " + c.SpeedUnit()
	faster := change.Speed(load, v)
	distance := 100e3
	if c.System == shown.Imperial {
		distance = 100 * units.Mile
	}
	longer := change.TimeOver(load, v, distance)
	over := c.of(shown.Journey, measure.Value{X: distance}).Spoken()
	lines := []EffectLine{{Name: fmt.Sprintf(t.PowerName, at), Reading: c.signed(shown.Power, change.Power(load, v))}}
	name := t.Slower
	if faster.X > 0 {
		name = t.Faster
	}
	lines = append(lines, EffectLine{Name: name, Reading: c.reading(shown.Speed, math.Abs(faster.X), half(faster))})
	name = t.Longer
	if longer.X < 0 {
		name = t.Shorter
	}
	return append(lines, EffectLine{Name: fmt.Sprintf(name, over), Reading: c.reading(shown.Time, math.Abs(longer.X), half(longer))})
}

// signed writes a difference with its sign.
func (c Context) signed(q shown.Quantity, v measure.Value) Reading {
	r := c.of(q, v)
	if v.X > 0 {
		r.Number = "+" + r.Number
	}
	return r
}

// consumptionSE is the relative standard uncertainty of a consumption measured
// by filling up twice (common practice).
const consumptionSE = 0.02

// aboutFuel is roughly the petrol that a difference costs, if the consumption
// of the bike is not known.
func (c Context) aboutFuel(change effect.Change, load effect.Load, v float64) EffectLine {
	unit := shown.Unit{Name: "l/100 km", SI: litrePer100Km}
	if gallon := c.FuelUnit.Gallon(); gallon > 0 { // miles per gallon need the consumption itself
		unit = shown.Unit{Name: "gal/100 mi", SI: gallon / (100 * units.Mile)}
	}
	return EffectLine{Name: fmt.Sprintf(c.Book.Effects.AboutFuel, c.SpeedText(v)+" "+c.SpeedUnit()),
		Reading: c.signed(shown.Quantity{Metric: unit, Imperial: unit}, change.AboutFuel(load, v))}
}

func (c Context) fuelLines(change effect.Change, load effect.Load, f store.Fuel) []EffectLine {
	t := c.Book.Effects
	burnt := f.LitresPer100Km * litrePer100Km
	burn := effect.Burn{Speed: f.SpeedMPS, PerMetre: measure.Value{X: burnt, SE: consumptionSE * burnt}}
	after := change.Fuel(load, burn, effect.AssumedWillans())
	at := c.SpeedText(f.SpeedMPS) + " " + c.SpeedUnit()
	lines := []EffectLine{{Name: fmt.Sprintf(t.FuelName, at), Reading: c.fuelChange(burnt, after.PerMetre, after.More)}}
	if f.Tank > 0 {
		q := c.TankQuantity()
		had, has := effect.Range(f.Tank*1e-3, burn.PerMetre), effect.Range(f.Tank*1e-3, after.PerMetre)
		lines = append(lines, EffectLine{Name: fmt.Sprintf(t.RangeName, c.Write(&f.Tank, q)+" "+q.Unit), Reading: c.of(shown.Journey, has),
			Words: fmt.Sprintf(t.RangeFrom, c.of(shown.Journey, measure.Value{X: had.X}).Spoken())})
	}
	return lines
}

// noTop says what is missing for a top speed if none is known; else empty.
func (c Context) noTop(res *runs.Result) string {
	if len(res.Compared) == 0 || len(res.TopSpeeds(math.Inf(1))) > 0 {
		return ""
	}
	return c.Book.Effects.NoTop
}

// Steady states the power to hold v with every setup, and the top speeds.
// limitRPM is the engine's highest speed, +Inf if it is not known.
func (c Context) Steady(res *runs.Result, v, limitRPM float64) []EffectLine {
	var out []EffectLine
	for _, s := range res.AtSpeed(v) {
		out = append(out, c.steadyLine(c.setupName(s.Setup), s.Power, s.AirShare))
	}
	return append(out, c.topLines(res, limitRPM, c.setupName)...)
}

func (c Context) steadyLine(name string, power measure.Value, airShare float64) EffectLine {
	return EffectLine{Name: name, Reading: c.of(shown.Power, power), Words: fmt.Sprintf(c.Book.Effects.AirShare, c.Number(100*airShare, 0))}
}

// topLines are the top speeds of the setups, each in the air of its ride.
func (c Context) topLines(res *runs.Result, limitRPM float64, call func(setup string) string) []EffectLine {
	t := c.Book.Effects
	var out []EffectLine
	tops := res.TopSpeeds(limitRPM)
	for _, l := range res.RoadLoads {
		top, ok := tops[l.Setup]
		if !ok {
			continue
		}
		words := map[effect.Limit]string{effect.ByPower: t.TopByPower, effect.ByGear: t.TopByGear, effect.NotInRun: t.TopBeyond}[top.Limit]
		out = append(out, EffectLine{Name: c.named(nameFastest) + ", " + call(l.Setup), Words: words,
			Reading: c.of(shown.Speed, top.Speed)})
	}
	return out
}
