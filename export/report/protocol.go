package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"stillair/export/report/figure"
	"stillair/export/results"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/sensors/finding"
)

// Test is the input of a protocol: the document, and the results behind it,
// ride by ride.
type Test struct {
	Protocol *results.Protocol
	Rides    []*runs.Result
	Across   []runs.Comparison
}

// protocol is the protocol on a page.
type protocol struct {
	Facts  []fact
	Method []string
	Rides  []protocolRide
	Across []comparisonTable
}

// protocolRide is the test of one recording on a page.
type protocolRide struct {
	Facts       []fact
	Inputs      table
	Setups      table
	Runs        table
	Switches    []runSwitch // parallel to Runs.Rows
	Totals      []total
	Pairs       table
	Road        figure.Figure
	Knots       []string
	Residuals   figure.Figure
	Left        table
	Findings    []string
	Budget      table
	Differences []comparisonTable
	LeftOut     table
	Notes       []string
	Empty       bool // there is no road load
}

// runSwitch is a run that can be switched off on the page.
type runSwitch struct {
	Run, Pair  int
	Setup      int
	Move, Both float64 // change of CdA without the run, and without its pair, m²
}

// total is a setup whose drag area follows the switches.
type total struct {
	Setup string
	CdA   float64
	Shown string
}

// comparisonTable is one difference with its budget.
type comparisonTable struct {
	Title  string
	Said   []string
	Budget table
}

func (t *teller) protocol(test *Test) *protocol {
	if test == nil {
		return nil
	}
	p := &protocol{Facts: []fact{{t.say("program"), test.Protocol.Program}}, Method: []string{t.say("method.motion"), t.say("method.fit"), t.reference(test.Protocol.Method.Reference)}}
	for i := range test.Protocol.Rides {
		p.Rides = append(p.Rides, t.ride(&test.Protocol.Rides[i], test.Rides[i]))
	}
	at := 0
	for _, c := range test.Across {
		if c.CdA != nil && c.Base != nil {
			p.Across = append(p.Across, t.change(test.Protocol.Across[at], c))
			at++
		}
	}
	return p
}

// reference explains how uncertainty is stated, and for which air and speeds A
// and C apply.
func (t *teller) reference(r results.ProtocolReference) string {
	return t.book.Say(finding.New("protocol.method.u", finding.Temperature("air", r.Temperature), finding.Pressure("pressure", r.Pressure),
		finding.Speed("low", r.From), finding.Speed("high", r.To)))
}

func (t *teller) ride(d *results.ProtocolRide, r *runs.Result) protocolRide {
	out := protocolRide{Facts: t.facts(d), Inputs: t.inputs(d), LeftOut: t.leftOut(r), Notes: t.book.Sentences(r.Warnings), Empty: len(d.Setups) == 0}
	if out.Empty {
		return out
	}
	out.Setups, out.Pairs, out.Budget = t.setups(d), t.pairs(d), t.budgets(d)
	out.Runs, out.Switches = t.runs(d)
	for _, s := range d.Setups {
		out.Totals = append(out.Totals, total{t.setup(s.Setup), *s.CdA.X, t.band(s.CdA, 1) + " m²"})
	}
	out.Road, out.Knots = t.road(d)
	out.Residuals, out.Left = t.residuals(d)
	out.Findings = t.book.Sentences(r.Residuals().Findings)
	at := 0
	for _, c := range r.Compared {
		if c.CdA != nil {
			out.Differences = append(out.Differences, t.change(d.Differences[at], c))
			at++
		}
	}
	return out
}

func (t *teller) setup(name string) string {
	if name == "" {
		return t.text("as_ridden")
	}
	return name
}

// band shows a measured value in a unit of so much SI with half of its 95 %
// interval.
func (t *teller) band(m results.Measured, unit float64) string {
	if m.X == nil {
		return "–"
	}
	if m.SE == nil || *m.SE == 0 {
		return t.style.Fixed(*m.X/unit, 3)
	}
	return t.style.Plain(*m.X/unit, shown.Normal95**m.SE/unit)
}

// number shows a bare number, a dash where there is none.
func (t *teller) number(x *float64, unit float64, decimals int) string {
	if x == nil {
		return "–"
	}
	return t.style.Fixed(*x/unit, decimals)
}

// signed shows a change with its sign.
func (t *teller) signed(x *float64, unit float64, decimals int) string {
	text := t.number(x, unit, decimals)
	if x != nil && *x > 0 {
		return "+" + text
	}
	return text
}

func (t *teller) facts(d *results.ProtocolRide) []fact {
	out := []fact{{t.say("recording"), d.Recording}}
	if d.SHA256 != "" {
		out = append(out, fact{"SHA-256", d.SHA256})
	}
	if d.Bike != "" {
		out = append(out, fact{t.say("bike"), d.Bike})
	}
	if d.Started != nil {
		out = append(out, fact{t.say("begun"), d.Started.Format("2006-01-02 15:04 MST")})
	}
	if d.Invented {
		out = append(out, fact{"", t.say("invented")})
	}
	return out
}

func (t *teller) inputs(d *results.ProtocolRide) table {
	i := d.Inputs
	from := func(field string) string {
		if slices.Contains(i.Defaults, field) {
			return t.say("assumed")
		}
		return t.say("entered")
	}
	fixed := func(x float64, decimals int) string { return t.style.Fixed(x, decimals) }
	row := func(key, value, unit, from string) []string {
		return []string{t.say(key), strings.TrimSpace(value + " " + unit), from}
	}
	return table{Header: []string{t.say("quantity"), t.say("value"), t.say("from")}, Rows: [][]string{
		row("temperature", t.band(i.Temperature, 1), "°C", from("air.temperature_c")),
		row("pressure", t.band(i.Pressure, 100), "hPa", from("air.pressure_hpa")),
		row("humidity", t.band(i.Humidity, 0.01), "%", from("air.humidity_pct")),
		row("density", t.band(i.Density, 1), "kg/m³", t.say("computed")),
		row("gravity", fixed(i.Gravity, 5), "m/s²", t.say("computed")),
		row("mass", t.band(i.Mass, 1), "kg", from("mass_kg")),
		row("rotating", fixed(i.RotatingMass, 1), "kg", from("rotating_mass_kg")),
		row("growth", t.band(i.Growth, 1), "s/m", t.say("assumed")),
		row("growth.fitted", t.band(i.GrowthFitted, 1), "s/m", t.say("fitted")),
		row("wind.prior", fixed(i.WindSD, 1), "m/s", from("wind_sd_mps")),
	}}
}

func (t *teller) setups(d *results.ProtocolRide) table {
	out := table{Header: []string{t.say("setup"), t.say("mass"), t.say("inertia"), t.say("pairs"), "CdA", "Crr", "A", "C"}}
	for _, s := range d.Setups {
		mass := t.number(s.Mass, 1, 1) + " kg"
		if !s.MassEntered {
			mass += " (" + t.say("assumed") + ")"
		}
		name := t.setup(s.Setup)
		if s.Tyres != "" {
			name += " (" + t.say("tyres") + ": " + s.Tyres + ")"
		}
		out.Rows = append(out.Rows, []string{name, mass, t.number(s.Inertia, 1, 1) + " kg", fmt.Sprint(s.Pairs),
			t.interval(s.CdA.X, s.CdACI) + " m²", t.interval(s.Crr.X, s.CrrCI), t.band(s.A, 1) + " N", t.band(s.C, 1) + " N/(m/s)²"})
	}
	return out
}

// interval shows a value with half of its interval.
func (t *teller) interval(x *float64, ci *[2]float64) string {
	if x == nil || ci == nil {
		return "–"
	}
	return t.style.Plain(*x, (ci[1]-ci[0])/2)
}

func (t *teller) runs(d *results.ProtocolRide) (table, []runSwitch) {
	speed, wind := t.style.Unit(shown.Speed), t.style.Unit(shown.Wind)
	out := table{Header: []string{t.say("run"), t.say("setup"), t.say("pair"), t.say("way"), t.say("speeds"), t.say("time"), t.say("density"),
		t.say("headwind"), t.say("rms"), t.say("misfit"), t.say("without")}}
	at := map[string]results.ProtocolSetup{}
	index := map[string]int{}
	for i, s := range d.Setups {
		at[s.Setup], index[s.Setup] = s, i
	}
	var switches []runSwitch
	for _, r := range d.Runs {
		way := t.say("there")
		if r.Direction < 0 {
			way = t.say("back")
		}
		out.Rows = append(out.Rows, []string{fmt.Sprint(r.Run), t.setup(r.Setup), fmt.Sprint(r.Pair), way,
			t.number(r.From, speed.SI, 0) + "–" + t.number(r.To, speed.SI, 0) + " " + speed.Name, t.number(r.CoastTime, 1, 1) + " s", t.number(r.Density, 1, 4) + " kg/m³",
			t.number(r.Against, wind.SI, 1) + " " + wind.Name, t.number(r.Residual, wind.SI, 2) + " " + wind.Name, t.number(r.Misfit, 1, 2), t.share(r.MoveCdA, at[r.Setup].CdA.X)})
		s := runSwitch{Run: r.Run, Pair: r.Pair, Setup: index[r.Setup]}
		if r.MoveCdA != nil {
			s.Move = *r.MoveCdA
		}
		for _, p := range d.Pairs {
			if p.Pair == r.Pair && p.MoveCdA != nil {
				s.Both = *p.MoveCdA
			}
		}
		switches = append(switches, s)
	}
	return out, switches
}

// share formats a relative change in per cent.
func (t *teller) share(change, of *float64) string {
	if change == nil || of == nil {
		return "–"
	}
	x := 100 * *change / *of
	return t.signed(&x, 1, 1) + " %"
}

func (t *teller) pairs(d *results.ProtocolRide) table {
	wind := t.style.Unit(shown.Wind)
	out := table{Header: []string{t.say("pair"), t.say("setup"), t.say("wind"), t.say("change"), t.say("grade"), t.say("alone"), "Crr", t.say("without.pair")}}
	for _, p := range d.Pairs {
		var whole *float64
		for _, s := range d.Setups {
			if s.Setup == p.Setup {
				whole = s.CdA.X
			}
		}
		change := "–"
		if p.Shift.X != nil {
			change = t.band(p.Shift, wind.SI) + " " + wind.Name
		}
		out.Rows = append(out.Rows, []string{fmt.Sprint(p.Pair), t.setup(p.Setup), t.band(p.Wind, wind.SI) + " " + wind.Name, change,
			t.band(p.Grade, 0.01) + " %", t.band(p.CdA, 1) + " m²", t.band(p.Crr, 1), t.share(p.MoveCdA, whole)})
	}
	return out
}

func (t *teller) budgets(d *results.ProtocolRide) table {
	out := table{Header: []string{t.say("part")}}
	var all [][]results.ProtocolPart
	var wholes []results.Measured
	for _, s := range d.Setups {
		out.Header = append(out.Header, t.setup(s.Setup)+", m²")
		all, wholes = append(all, s.Budget), append(wholes, s.CdA)
	}
	out.Rows = t.budgetRows(all, wholes)
	return out
}

// budgetRows has a row for each part that any of the budgets has, and the whole.
func (t *teller) budgetRows(all [][]results.ProtocolPart, wholes []results.Measured) [][]string {
	var codes []string
	for _, b := range all {
		for _, p := range b {
			if !slices.Contains(codes, p.Code) {
				codes = append(codes, p.Code)
			}
		}
	}
	cell := func(se float64) string { return "± " + t.style.Fixed(shown.Normal95*se, 4) }
	var rows [][]string
	for _, code := range codes {
		row := []string{t.book.Say(finding.New(finding.Code(code)))}
		for _, b := range all {
			text := "–"
			for _, p := range b {
				if p.Code == code {
					text = cell(*p.SE)
				}
			}
			row = append(row, text)
		}
		rows = append(rows, row)
	}
	last := []string{t.say("whole")}
	for _, w := range wholes {
		last = append(last, cell(*w.SE))
	}
	return append(rows, last)
}

func (t *teller) change(d results.ProtocolChange, c runs.Comparison) comparisonTable {
	out := comparisonTable{Title: t.setup(c.B) + " " + t.say("against") + " " + t.setup(c.A),
		Said: append([]string{t.book.Sentence(words.Verdict(t.setup(c.B), words.Drag(), *c.CdA))}, t.book.Sentences(c.Notes)...)}
	out.Budget = table{Header: []string{t.say("part"), t.say("difference") + ", m²"}, Rows: t.budgetRows([][]results.ProtocolPart{d.Budget}, []results.Measured{d.CdA})}
	out.Budget.Rows = append([][]string{{t.say("difference"), t.band(d.CdA, 1)}}, out.Budget.Rows...)
	return out
}

// verdicts describes the verdicts of one comparison, drag area first.
func (t *teller) verdicts(c runs.Comparison) []string {
	name := t.setup(c.B) + " " + t.say("against") + " " + t.setup(c.A) + ". "
	var out []string
	add := func(quantity finding.Finding, v *compare.Verdict) {
		if v != nil {
			out = append(out, name+t.book.Sentence(words.Verdict(t.setup(c.B), quantity, *v)))
		}
	}
	add(words.Drag(), c.CdA)
	add(words.Rolling(), c.Crr)
	add(words.Power(), c.Power)
	for i := range c.Times {
		add(words.TimeFor(c.Times[i].Mark), &c.Times[i].Verdict)
	}
	return out
}

func (t *teller) leftOut(r *runs.Result) table {
	out := table{Header: []string{t.say("run"), t.say("setup"), t.say("reason")}}
	for _, run := range r.Runs {
		if run.Kind == runs.CoastDown && !run.Accepted() {
			out.Rows = append(out.Rows, []string{fmt.Sprint(run.ID), t.setup(run.Setup), t.book.Join(run.Reasons)})
		}
	}
	return out
}

// finite reports whether all pointers lead to a number.
func finite(all ...*float64) bool {
	for _, x := range all {
		if x == nil || math.IsNaN(*x) {
			return false
		}
	}
	return true
}
