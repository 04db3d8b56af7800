package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"

	"github.com/spf13/pflag"

	"stillair/export/report"
	"stillair/export/results"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// compareFlags are the flags of compare.
type compareFlags struct {
	matters, at string
	burn        float64
	burnAt      string
	tank        float64
	limitRPM    float64
	system      string
	json        bool
	report      string
	protocol    string
	language    string
	bikes       bool
	given       *given
}

func compareCommand() command {
	return command{
		Name: "compare", Args: "RECORDING...", Summary: "do two setups differ, by how much, and what does that mean",
		Help: `
With one recording, the setups ridden in it are compared: what they share, the
road and the wind of the hour, cancels. With several, setups of different rides
are compared too; that is weaker, and the output says so, since days differ in
more than was measured. One recording given twice is refused, and so are rides
of different bikes, unless --different-bikes asks for them.

Every difference gets one of three answers: it differs; none is shown, and one
above a stated size is unlikely; or it is not clear yet, with the number of
extra pairs of coast-downs needed. --matters is the difference you care about.

--at is the speed at which to calculate what a difference means. With your own
fuel consumption at a steady speed, fuel and range follow too.

Examples:
  desk compare ride.jsonl.gz
  desk compare ride.jsonl.gz --at 130km/h --fuel 5.2 --fuel-at 110km/h --tank 18
  desk compare may.jsonl.gz june.jsonl.gz --matters 3%
  desk compare ride.jsonl.gz --json`,
		Flags: func(f *pflag.FlagSet) runner {
			c := &compareFlags{}
			f.StringVar(&c.matters, "matters", "5%", "relative difference that you care about")
			f.StringVar(&c.at, "at", "120km/h", "speed at which to say what a difference means")
			f.Float64Var(&c.burn, "fuel", 0, "your own consumption at a steady speed with the first setup, l/100 km")
			f.StringVar(&c.burnAt, "fuel-at", "", "that steady speed; for --fuel")
			f.Float64Var(&c.tank, "tank", 0, "fuel in the tank, l; for the range")
			f.Float64Var(&c.limitRPM, "limit-rpm", 0, "the engine's speed limit, 1/min; for the top speed")
			f.StringVar(&c.system, "units", string(shown.Metric), "metric, imperial or both")
			f.BoolVar(&c.bikes, "different-bikes", false, "compare rides of different bikes anyway")
			f.StringVar(&c.report, "report", "", "write a page with the verdicts and the test protocol to this file (HTML)")
			f.StringVar(&c.protocol, "protocol", "", "write the test protocol of all rides to this file (JSON)")
			f.StringVar(&c.language, "language", string(shown.English), "of the page: en or de")
			f.BoolVar(&c.json, "json", false, "print the comparisons as JSON and nothing else")
			c.given = addGiven(f).withColumns(f)
			return c.run
		},
	}
}

func (c *compareFlags) run(ctx context.Context, w *world, args []string) error {
	if len(args) == 0 {
		return usage("it takes one recording or more")
	}
	system, err := shown.ParseSystem(c.system)
	if err != nil {
		return usageError{err}
	}
	matters, err := parseShare("matters", c.matters)
	if err != nil {
		return err
	}
	speed, err := parseSpeed("at", c.at)
	if err != nil {
		return err
	}
	burn, err := c.consumption()
	if err != nil {
		return err
	}
	language, err := parseLanguage(c.language)
	if err != nil {
		return err
	}
	studies, err := c.analyse(ctx, w, args, matters)
	if err != nil {
		return err
	}
	var rides []runs.Named
	for _, s := range studies {
		rides = append(rides, runs.Named{Name: s.name(studies), Result: s.result})
	}
	var across []runs.Comparison
	if len(rides) > 1 {
		if across, err = runs.Across(rides, runs.Asked{Matters: matters, Bikes: c.bikes}); err != nil {
			return orBikes(err)
		}
	}
	if err := c.write(studies, across, report.Options{Units: system, Language: language}); err != nil {
		return err
	}
	if c.json {
		return results.WriteCompared(w.Out, rides, across)
	}
	p := &page{units: system}
	for _, ride := range rides {
		c.ride(p, ride, speed, burn)
	}
	if len(rides) > 1 {
		p.compared(&runs.Result{Compared: across})
		for _, k := range across {
			c.effect(p, &runs.Result{}, k, speed, burn)
		}
	}
	p.title("± is a 95 %% band: 95 of 100 such bands contain the true value.")
	return w.print(p.String())
}

// orBikes names the flag that has different bikes compared.
func orBikes(err error) error {
	var input *sensors.InputError
	if errors.As(err, &input) && input.What.Code == runs.CodeDifferentBikes {
		named := *input
		named.Remedy = finding.New("desk.different_bikes")
		return &named
	}
	return err
}

// consumption is the rider's own, nil where none was given.
func (c *compareFlags) consumption() (*effect.Burn, error) {
	if c.burn == 0 {
		return nil, nil
	}
	if c.burnAt == "" || !(c.burn > 0 && c.burn < 50) {
		return nil, usage("--fuel takes l/100 km and needs --fuel-at, the steady speed at which it was measured")
	}
	v, err := parseSpeed("fuel-at", c.burnAt)
	const litrePer100km = 1e-3 / 1e5 // m³ per metre
	return &effect.Burn{Speed: v, PerMetre: measure.Value{X: c.burn * litrePer100km, SE: 0.02 * c.burn * litrePer100km}}, err
}

func (c *compareFlags) analyse(ctx context.Context, w *world, args []string, matters float64) ([]*study, error) {
	var out []*study
	for _, path := range args {
		ride, err := c.given.open(path)
		if err != nil {
			return nil, err
		}
		if err := c.given.apply(&ride.Log.Ride); err != nil {
			return nil, err
		}
		s, err := w.study(ctx, ride, path, runs.Options{Matters: matters})
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}

// write writes the files asked for.
func (c *compareFlags) write(studies []*study, across []runs.Comparison, o report.Options) error {
	if c.report == "" && c.protocol == "" {
		return nil
	}
	t, err := testOf(studies, across)
	if err != nil {
		return err
	}
	if c.protocol != "" {
		if err := saveProtocol(c.protocol, t); err != nil {
			return err
		}
	}
	if c.report == "" {
		return nil
	}
	return save(c.report, func(out io.Writer) error { return report.WriteComparison(out, t, o) })
}

// ride prints the comparisons of one ride and what they mean.
func (c *compareFlags) ride(p *page, ride runs.Named, speed float64, burn *effect.Burn) {
	r := ride.Result
	p.title("%s", ride.Name)
	p.compared(r)
	if len(r.Compared) == 0 {
		p.wrapped(2, "It holds no two setups with runs that can be compared.")
	}
	for _, k := range r.Compared {
		c.effect(p, r, k, speed, burn)
	}
	p.loads(r)
	for _, s := range r.AtSpeed(speed) {
		p.wrapped(2, fmt.Sprintf("%s: a steady %s takes %s at the road, %.0f %% of it for air drag", named(s.Setup),
			p.units.Number(shown.Speed, speed, 0), p.units.PlusMinus(shown.Power, s.Power.X, shown.Normal95*s.Power.SE), 100*s.AirShare))
	}
	c.tops(p, r)
}

// effect prints what one difference means on the road.
func (c *compareFlags) effect(p *page, r *runs.Result, k runs.Comparison, speed float64, burn *effect.Burn) {
	change, load, ok := costs(r, k)
	if !ok {
		return
	}
	p.means(r, k, speed)
	faster := change.Speed(load, speed)
	p.line("  slower with the same power: %s", p.units.PlusMinus(shown.Speed, -faster.X, shown.Normal95*faster.SE))
	late := change.TimeOver(load, speed, 100e3)
	p.line("  time over 100 km with the same power: %s s", shown.PlusMinus(late.X, shown.Normal95*late.SE))
	if burn == nil {
		return
	}
	share := effect.AssumedWillans()
	fuel := change.Fuel(load, *burn, share)
	p.line("  fuel at %s: %s l/100 km more", p.units.Number(shown.Speed, burn.Speed, 0), shown.PlusMinus(fuel.More.X*litres, shown.Normal95*fuel.More.SE*litres))
	if c.tank > 0 {
		before, after := effect.Range(c.tank*1e-3, burn.PerMetre), effect.Range(c.tank*1e-3, fuel.PerMetre)
		p.line("  range on %g l: %.0f km instead of %.0f", c.tank, after.X/1e3, before.X/1e3)
	}
	if !share.Measured {
		p.wrapped(4, "assuming that fuel changes by 0.8 ± 0.1 % for each 1 % of power, as usual for engines at part load")
	}
}

// usualSpeed is the default speed for the effect of a difference, m/s.
const usualSpeed = 120 * units.KMH

// litres is what consumption is shown in: l/100 km for 1 m³ per metre.
const litres = 1e8

// costs is the additional road load of the second setup of a comparison, and
// the road load of the first.
func costs(r *runs.Result, k runs.Comparison) (change effect.Change, load effect.Load, ok bool) {
	load, err := r.LoadOf(k.A)
	if k.Base != nil { // between rides
		load, err = *k.Base, nil
	}
	if k.Load == nil || err != nil || load.Check() != nil {
		return effect.Change{}, effect.Load{}, false
	}
	return *k.Load, load, true
}

// means prints the effect of a difference at a steady speed.
func (p *page) means(r *runs.Result, k runs.Comparison, speed float64) {
	change, load, ok := costs(r, k)
	if !ok {
		return
	}
	p.title("Cost of %s compared with %s (negative: a saving)", named(k.B), named(k.A))
	at := p.units.Number(shown.Speed, speed, 0)
	power, fuel := change.Power(load, speed), change.AboutFuel(load, speed)
	p.line("  power at %s: %s", at, p.units.PlusMinus(shown.Power, power.X, shown.Normal95*power.SE))
	p.line("  petrol at %s: about %s l/100 km", at, shown.PlusMinus(fuel.X*litres, shown.Normal95*fuel.SE*litres))
}

// tops prints the top speed of each setup.
func (c *compareFlags) tops(p *page, r *runs.Result) {
	limit := math.Inf(1)
	if c.limitRPM > 0 {
		limit = c.limitRPM
	}
	tops := r.TopSpeeds(limit)
	for _, l := range r.RoadLoads {
		top, ok := tops[l.Setup]
		if !ok {
			continue
		}
		at := p.units.PlusMinus(shown.Speed, top.Speed.X, shown.Normal95*top.Speed.SE)
		switch top.Limit {
		case effect.ByPower:
			p.wrapped(2, fmt.Sprintf("%s: power and road load meet at %s", named(l.Setup), at))
		case effect.ByGear:
			p.wrapped(2, fmt.Sprintf("%s: the engine's limit comes first, at %s", named(l.Setup), p.units.Number(shown.Speed, top.Speed.X, 0)))
		default:
			p.wrapped(2, fmt.Sprintf("%s: at %s, the highest speed of the pulls, there is still power to spare; the top speed is higher", named(l.Setup), p.units.Number(shown.Speed, top.Speed.X, 0)))
		}
	}
}
