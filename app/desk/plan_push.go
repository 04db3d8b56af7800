package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"stillair/export/card"
	"stillair/export/results"
	"stillair/export/words"
	"stillair/runs/effect"
	"stillair/runs/marks"
	"stillair/runs/plan"
	"stillair/sensors/units"
)

// pushFlags are what plan takes for questions about power and times.
type pushFlags struct{ power, quicker, over, engine, takes, spread string }

func (p *pushFlags) add(f *pflag.FlagSet) {
	f.StringVar(&p.power, "power", "", "relative change of power that matters, such as 4%")
	f.StringVar(&p.quicker, "quicker", "", "change of time that matters, such as 0.2s; with --over")
	f.StringVar(&p.over, "over", "", `of which time: a launch such as 0-100km/h or "1/4 mile", or a roll-on such as 80-120km/h`)
	f.StringVar(&p.engine, "engine", "", "most power at the road, about, such as 55kW; for --power")
	f.StringVar(&p.takes, "takes", "", "how long it takes now, about, such as 4.5s; for --quicker")
	f.StringVar(&p.spread, "spread", "", "by how much your own repeats vary, one standard deviation: 1% or 0.1s")
}

// asked reports whether the question is about power or a time.
func (p *pushFlags) asked() bool { return p.power != "" || p.quicker != "" || p.over != "" }

// runPush plans pulls, launches or roll-ons.
func (p *planFlags) runPush(w *world, load effect.Load) error {
	q, c, err := p.pushQuestion(load)
	if err != nil {
		return err
	}
	made, err := plan.MakePush(q, c)
	if err != nil {
		return usageError{err}
	}
	sheet := card.Card{Plan: made, FullThrottle: true}
	if q.Push != plan.Launches {
		sheet.From, sheet.To = c.FromMPS, c.ToMPS
	}
	if err := p.writeCard(sheet, string(q.Push)); err != nil {
		return err
	}
	if p.json {
		of := results.ForTime
		if q.Push == plan.Pulls {
			of = results.ForPower
		}
		return results.WritePlan(w.Out, made, of)
	}
	return w.print(planText(made, pushWords(q, c)))
}

// pushQuestion turns the flags into what package plan asks.
func (p *planFlags) pushQuestion(l effect.Load) (q plan.PushQuestion, c plan.PushConditions, err error) {
	switch f := p.push; {
	case p.change != "" || p.faster != "" || f.power != "" && f.quicker != "":
		return q, c, usage("ask one question at a time: --change or --faster, --power, or --quicker with --over")
	case f.power != "":
		q.Push = plan.Pulls
		q.Change, err = parseShare("power", f.power)
	case f.quicker == "" || f.over == "":
		return q, c, usage("--quicker and --over belong together: --quicker 0.2s --over 0-100km/h")
	default:
		q.Change, err = parseSeconds("quicker", f.quicker)
	}
	if err != nil {
		return q, c, err
	}
	var pair marks.SpeedPair
	if q.Push != plan.Pulls {
		if q.Push, q.Mark, pair, err = parseOver(p.push.over); err != nil {
			return q, c, err
		}
	}
	c = plan.DefaultPush(q.Push, l, p.wind())
	c.FixRate = p.rate
	q.Setups, q.MaxPair = p.setups, p.pairs
	if q.Chance, err = parseShare("chance", p.chance); err != nil {
		return q, c, err
	}
	if q.Push == plan.RollOns {
		c.FromMPS, c.ToMPS = pair.From, pair.To
	}
	return q, c, p.pushConditions(q.Push, &c)
}

// pushConditions replaces what is usual by what was entered about the bike and
// its rider.
func (p *planFlags) pushConditions(push plan.Push, c *plan.PushConditions) (err error) {
	f := p.push
	switch {
	case push != plan.Pulls && (p.from != "" || p.to != ""):
		return usage("--from and --to are for coast-downs and pulls; --over says the speeds of a launch or a roll-on")
	case push == plan.Pulls && f.takes != "":
		return usage("--takes is for --quicker; for --power say --engine")
	}
	if err := p.speeds(&c.Conditions); err != nil {
		return err
	}
	if f.engine != "" {
		if c.Power, err = parsePower("engine", f.engine); err != nil {
			return err
		}
	}
	if f.takes != "" {
		if c.Takes, err = parseSeconds("takes", f.takes); err != nil {
			return err
		}
	}
	if f.spread == "" {
		return nil
	}
	read := parseSeconds
	if push == plan.Pulls {
		read = parseShare
	}
	c.Spread, err = read("spread", f.spread)
	return err
}

// parseOver reads which time is asked about: a mark of a launch, or the two
// speeds of a roll-on.
func parseOver(text string) (plan.Push, string, marks.SpeedPair, error) {
	bare := func(s string) string { return strings.ReplaceAll(strings.ToLower(s), " ", "") }
	all := marks.OfLaunches()
	if i := slices.IndexFunc(all, func(name string) bool { return bare(name) == bare(text) }); i >= 0 {
		return plan.Launches, all[i], marks.SpeedPair{}, nil
	}
	pair, err := marks.ParseSpeedPair(text)
	if err != nil {
		return "", "", pair, usage("--over %q: give a mark of a launch (%s) or two speeds such as 80-120km/h", text, strings.Join(all, ", "))
	}
	return plan.RollOns, pair.Name, pair, nil
}

// parseSeconds reads a time such as 0.2s, in s.
func parseSeconds(flag, text string) (float64, error) {
	number, ok := strings.CutSuffix(strings.TrimSpace(text), "s")
	v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	if !ok || err != nil || !(v > 0 && v < 120) {
		return 0, usage("--%s %q is not a time: write it as 0.2s", flag, text)
	}
	return v, nil
}

// parsePower reads a power such as 55kW or 75hp, in W.
func parsePower(flag, text string) (float64, error) {
	for _, u := range []struct {
		name string
		si   float64
	}{{"kW", 1000}, {"hp", units.Horsepower}} {
		if number, ok := strings.CutSuffix(strings.TrimSpace(text), u.name); ok {
			v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
			if err == nil && v > 0 && v < 1000 {
				return v * u.si, nil
			}
		}
	}
	return 0, usage("--%s %q is not a power: write it as 55kW or 75hp", flag, text)
}

func pushWords(q plan.PushQuestion, c plan.PushConditions) planWords {
	w := planWords{runs: "opposite " + string(q.Push), chance: q.Chance, amount: func(x float64) string { return fmt.Sprintf("%.2f s", x) },
		care: words.ThrottleCautions()}
	what := q.Mark
	switch q.Push {
	case plan.Pulls:
		w.amount = func(x float64) string { return fmt.Sprintf("%.1f %%", 100*x) }
		what = fmt.Sprintf("power from %.0f to %.0f km/h", c.FromMPS*3.6, c.ToMPS*3.6)
	case plan.Launches:
		what += " from the rollout"
	}
	w.asked = fmt.Sprintf("To show a change of %s in %s between %d setups, wind differing by %.1f m/s from pair to pair and your own repeats by %s:",
		w.amount(q.Change), what, q.Setups, c.Noise.WindSD, w.amount(c.Spread))
	return w
}
