package main

import (
	"context"
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"github.com/spf13/pflag"

	"stillair/app/input"
	"stillair/export/card"
	"stillair/export/results"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/air"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/plan"
	"stillair/runs/usual"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// planFlags are the flags of plan.
type planFlags struct {
	change, topSpeed, faster string
	from, to                 string
	chance                   string
	setups, pairs            int
	cda, crr, rate           float64
	earlier                  string
	push                     pushFlags
	given                    *given
	json                     bool
	like, card, language     string
	measured                 *runs.Result // the ride of like; nil: none
}

func planCommand() command {
	return command{
		Name: "plan", Summary: "how many runs a test needs, and whether it can show the change",
		Help: `
Say what change matters: as a share of the drag (--change 2%) or as top speed
(--faster 5km/h --top-speed 200km/h), for coast-downs; as a share of the power
(--power 4%), for pulls on full throttle in one gear; or as time (--quicker 0.2s
--over 0-100km/h, or 80-120km/h, or "1/4 mile"), for launches or roll-ons. And
say how windy the day is: --wind-sd is how much the wind along the road differs
from pair to pair, about 0.5 m/s on a calm evening, 1.5 m/s on an ordinary day.
The plan says how many pairs of opposite runs each setup needs, in which order
to ride them, how long the road must be, and how likely the test is to show the
change. If it cannot succeed, it says what would help.

With --setups 1 the question is how well the drag of one setup becomes known:
--change 5% asks for ± 5 % from noise alone. Assumptions about tyres, cross-wind
and posture come on top of that, and more pairs do not make them smaller.

--like takes gusts, road, receiver, drag and mass from a ride of your own, for a
day and a road like those; the plan allows for another day being more or less
gusty. Without it the day is described by --wind-sd alone, and the plan allows
for gusts of half or twice what is usual for it.

--card writes the plan as a page to print: order, speeds, road with margins,
checks, cautions and room for notes.

--results takes drag, rolling resistance and mass from what analyse --json
wrote about this bike earlier; otherwise an average bike is assumed. Power and
times also vary from repeat to repeat because riders and engines do: --spread
says by how much, as one standard deviation. Without it 0.1 s is assumed for
launches, 0.05 s for roll-ons, 1 % for pulls; ride a few and see.

Examples:
  desk plan --change 3% --wind-sd 0.5
  desk plan --faster 5km/h --top-speed 210km/h --results results.json
  desk plan --change 4% --like ride.jsonl.gz --card card.html --language de
  desk plan --change 5% --setups 1 --from 130km/h --wind-sd 0.5
  desk plan --change 6% --setups 3 --from 100km/h --to 40km/h --json
  desk plan --power 4% --engine 55kW --from 60km/h --to 140km/h
  desk plan --quicker 0.2s --over 0-100km/h --takes 4.5s --spread 0.15s
  desk plan --quicker 0.5s --over 80-120km/h --takes 6s --wind-sd 0.5`,
		Flags: func(f *pflag.FlagSet) runner {
			p := &planFlags{}
			p.add(f)
			return p.run
		},
	}
}

// add declares the flags.
func (p *planFlags) add(f *pflag.FlagSet) {
	f.StringVar(&p.change, "change", "", "relative change of drag that matters, such as 2%")
	f.StringVar(&p.faster, "faster", "", "change of top speed that matters, such as 5km/h")
	f.StringVar(&p.topSpeed, "top-speed", "", "about how fast the bike goes, such as 200km/h; for --faster")
	f.IntVar(&p.setups, "setups", 2, "how many setups to compare")
	f.IntVar(&p.pairs, "most-pairs", 8, "most pairs of opposite runs you will ride with each setup")
	f.StringVar(&p.chance, "chance", "80%", "how likely the test should be to show the change")
	f.StringVar(&p.from, "from", "", "where a coast-down (usual: 110km/h) or a pull (50km/h) begins")
	f.StringVar(&p.to, "to", "", "where it ends (30km/h, 130km/h)")
	f.Float64Var(&p.cda, "cda", usual.CdA, "drag area expected, m²")
	f.Float64Var(&p.crr, "crr", usual.Crr, "rolling resistance expected")
	f.Float64Var(&p.rate, "fixes", 1, "satellite fixes per second from the phone")
	f.StringVar(&p.earlier, "results", "", "take drag, rolling resistance and mass from these results (JSON)")
	f.StringVar(&p.like, "like", "", "plan for a day and a road like those of this recording")
	f.StringVar(&p.card, "card", "", "write the plan as a card to print to this file (HTML)")
	f.StringVar(&p.language, "language", string(shown.English), "of the card: en or de")
	f.BoolVar(&p.json, "json", false, "print the plan as JSON and nothing else")
	p.push.add(f)
	p.given = addGiven(f)
}

func (p *planFlags) run(ctx context.Context, w *world, args []string) error {
	if len(args) != 0 {
		return usage("it takes no arguments, only flags")
	}
	if _, err := parseLanguage(p.language); err != nil {
		return err
	}
	if err := p.measure(ctx, w); err != nil {
		return err
	}
	load, err := p.load()
	if err != nil {
		return err
	}
	if p.push.asked() {
		return p.runPush(w, load)
	}
	if d := sensors.Drive(p.given.drive); !d.RollsFree() {
		return usage("--drive %s: with such a drive the wheel never rolls free, so there are no coast-downs to plan; plan launches, roll-ons or pulls with --quicker or --power", d)
	}
	q, c, err := p.question(load)
	if err != nil {
		return err
	}
	made, err := plan.Make(q, c)
	if err != nil {
		return usageError{err}
	}
	if err := p.writeCard(card.Card{Plan: made, From: c.FromMPS, To: c.ToMPS}, "coasts"); err != nil {
		return err
	}
	if p.json {
		return results.WritePlan(w.Out, made, results.ForDrag)
	}
	return w.print(planText(made, dragWords(q, c)))
}

// measure measures the ride of --like.
func (p *planFlags) measure(ctx context.Context, w *world) error {
	if p.like == "" {
		return nil
	}
	if p.earlier != "" {
		return usage("--like and --results exclude each other: give one")
	}
	ride, err := input.Open(p.like)
	if err != nil {
		return err
	}
	s, err := w.study(ctx, ride, p.like, runs.Options{})
	if err != nil {
		return err
	}
	if s.result.Estimate == nil {
		return &sensors.InputError{File: p.like, What: finding.New("desk.no_road_load"), Remedy: finding.New("desk.ride_both_ways")}
	}
	p.measured = s.result
	return nil
}

// writeCard writes the card where one was asked for.
func (p *planFlags) writeCard(c card.Card, ridden string) error {
	if p.card == "" {
		return nil
	}
	language, err := parseLanguage(p.language)
	if err != nil {
		return err
	}
	c.Runs = card.Ridden(ridden, language)
	return save(p.card, func(out io.Writer) error {
		return card.Write(out, c, shown.Style{System: shown.Metric, Language: language})
	})
}

// load is the road load to plan for.
func (p *planFlags) load() (effect.Load, error) {
	ride := sensors.UnknownRide()
	if err := p.given.apply(&ride); err != nil {
		return effect.Load{}, err
	}
	or := func(x, instead float64) float64 {
		if math.IsNaN(x) {
			return instead
		}
		return x
	}
	day := air.State{
		Temperature: measure.Value{X: or(ride.Air.Temperature, usual.Celsius)},
		Pressure:    measure.Value{X: or(ride.Air.Pressure, usual.Pascals)},
		Humidity:    measure.Value{X: or(ride.Air.Humidity, usual.Humidity)},
	}
	l := effect.Usual(or(ride.Mass, usual.Mass), day.Density().X, air.Gravity(45, 0))
	l.CdA.X, l.Crr.X = p.cda, p.crr
	if p.measured != nil {
		return p.measured.LoadOf(p.measured.RoadLoads[0].Setup)
	}
	if p.earlier == "" {
		return l, nil
	}
	return p.fromEarlier(l, ride.Mass)
}

// fromEarlier takes the first road load of an earlier results file.
func (p *planFlags) fromEarlier(l effect.Load, givenMass float64) (effect.Load, error) {
	f, err := os.Open(p.earlier)
	if err != nil {
		return l, &sensors.InputError{File: p.earlier, What: finding.New("input.cannot_open", sensors.Cause(err)), Remedy: finding.New("input.check_name"), Err: err}
	}
	defer f.Close()
	d, err := results.Read(f, p.earlier)
	if err != nil {
		return l, err
	}
	for _, r := range d.RoadLoad {
		if r.CdA == nil || r.Crr == nil {
			continue
		}
		l.CdA.X, l.Crr.X = *r.CdA, *r.Crr
		if r.Mass != nil && math.IsNaN(givenMass) {
			l.Mass = *r.Mass
		}
		return l, nil
	}
	return l, &sensors.InputError{File: p.earlier, What: finding.New("desk.no_road_load"),
		Remedy: finding.New("desk.ride_or_flags")}
}

// question turns the flags into what package plan asks.
func (p *planFlags) question(l effect.Load) (q plan.Question, c plan.Conditions, err error) {
	c = plan.DefaultConditions(l, p.wind())
	c.FixRate = p.rate
	if p.measured != nil {
		wind := c.Noise.WindSD
		if c = c.As(p.measured.Estimate); !math.IsNaN(p.given.wind) {
			c.Noise.WindSD = wind
		}
	}
	q = plan.Question{Setups: p.setups, MaxPair: p.pairs}
	if err := p.speeds(&c); err != nil {
		return q, c, err
	}
	if q.Chance, err = parseShare("chance", p.chance); err != nil {
		return q, c, err
	}
	q.CdA, err = p.matters(l)
	return q, c, err
}

// wind is that of an ordinary day where none was given, m/s.
func (p *planFlags) wind() float64 {
	if math.IsNaN(p.given.wind) {
		return usual.Wind
	}
	return p.given.wind
}

// speeds replaces the usual ones by those that were given.
func (p *planFlags) speeds(c *plan.Conditions) (err error) {
	for _, x := range []struct {
		flag, text string
		to         *float64
	}{{"from", p.from, &c.FromMPS}, {"to", p.to, &c.ToMPS}} {
		if x.text == "" {
			continue
		}
		if *x.to, err = parseSpeed(x.flag, x.text); err != nil {
			return err
		}
	}
	return nil
}

// matters is the relative change of drag area that the rider asked about.
func (p *planFlags) matters(l effect.Load) (float64, error) {
	switch {
	case p.change != "" && p.faster != "":
		return 0, usage("give --change or --faster, not both")
	case p.change != "":
		return parseShare("change", p.change)
	case p.faster == "":
		return 0, usage("say what change matters: --change 2%% of drag, --faster 5km/h --top-speed 200km/h, --power 4%%, or --quicker 0.2s --over 0-100km/h")
	case p.topSpeed == "":
		return 0, usage("--faster needs --top-speed, about how fast the bike goes")
	}
	faster, err := parseSpeed("faster", p.faster)
	if err != nil {
		return 0, err
	}
	top, err := parseSpeed("top-speed", p.topSpeed)
	if err != nil {
		return 0, err
	}
	return plan.FromTopSpeed(l, top, faster), nil
}

// planWords are the words that differ between the plans of different questions.
type planWords struct {
	asked  string // the question, as a heading
	runs   string // the runs of the test
	chance float64
	amount func(x float64) string
	care   []finding.Finding
	one    bool // the question is about the accuracy for one setup
}

func dragWords(q plan.Question, c plan.Conditions) planWords {
	asked := fmt.Sprintf("To know the drag of one setup to ± %.1f %% from noise alone, from %.0f to %.0f km/h, wind differing by %.1f m/s from pair to pair:",
		100*q.CdA, c.FromMPS*3.6, c.ToMPS*3.6, c.Noise.WindSD)
	if q.Setups > 1 {
		asked = fmt.Sprintf("To show a change of %.1f %% in drag between %d setups, from %.0f to %.0f km/h, wind differing by %.1f m/s from pair to pair:",
			100*q.CdA, q.Setups, c.FromMPS*3.6, c.ToMPS*3.6, c.Noise.WindSD)
	}
	return planWords{asked: asked, one: q.Setups == 1,
		runs: "opposite coast-downs", chance: q.Chance,
		amount: func(x float64) string { return fmt.Sprintf("%.1f %%", 100*x) },
		care:   words.CoastCautions(),
	}
}

// planText prints the plan.
func planText(m *plan.Plan, say planWords) string {
	p := &page{units: shown.Metric}
	p.wrapped(0, say.asked)
	if m.Enough {
		p.title("%d pairs of %s with each setup will do.", m.Pairs, say.runs)
	} else {
		p.title("This plan cannot show it, even with %d pairs of %s for each setup.", m.Pairs, say.runs)
	}
	if say.one {
		p.line("  chance of that         %.0f %%", percentAtMost99(m.Chance))
		p.otherDays(m)
		p.line("  known to ± %s from noise alone, ± %s with all assumptions (95 %%)", say.amount(m.Half), say.amount(m.Whole))
	} else {
		p.line("  chance of showing it   %.0f %%", percentAtMost99(m.Chance))
		p.otherDays(m)
		p.line("  the difference will be known to ± %s (95 %%)", say.amount(m.Half))
		p.line("  smallest change shown with a chance of %.0f %%: %s", 100*say.chance, say.amount(m.Smallest))
	}
	p.line("  road                   %.1f km straight, level and even, with room to stop at either end; ridden both ways", math.Ceil(m.RoadLength/100)/10)
	p.line("  time                   about %s", shown.Duration(m.Seconds))
	p.title("Order of riding")
	var blocks []string
	for _, b := range m.Blocks {
		blocks = append(blocks, fmt.Sprintf("%s × %d", setupLetter(b.Setup), b.Pairs))
	}
	p.wrapped(2, strings.Join(blocks, ", then ")+"  (pairs: there and back). In this order a drift of wind, tyres or oil falls on all setups alike.")
	if len(m.Advice) > 0 {
		p.title("What would help")
		for _, a := range m.Advice {
			p.wrapped(2, fmt.Sprintf("%s: then the chance is %.0f %%, and a change of %s can be shown", words.ForMachines().Say(a.Change), percentAtMost99(a.Chance), say.amount(a.Smallest)))
		}
	}
	p.title("Take care")
	for _, c := range say.care {
		p.wrapped(2, words.ForMachines().Sentence(c))
	}
	return p.String()
}

// otherDays tells how far the gusts of the day can change the chance of a plan.
func (p *page) otherDays(m *plan.Plan) {
	if m.KnowsDays() {
		p.line("  on a gusty day         %.0f %%, on a calm one %.0f %%: one day in ten is worse, and one better", percentAtMost99(m.Gusty), percentAtMost99(m.Calm))
	}
}

// percentAtMost99 is a share in percent that does not promise certainty.
func percentAtMost99(share float64) float64 { return math.Min(100*share, 99) }

// setupLetter is A, B, C and so on.
func setupLetter(i int) string { return string(rune('A' + i%26)) }
