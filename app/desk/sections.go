package main

import (
	"fmt"
	"slices"
	"strings"

	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/sensors/finding"
)

// band shows a value with its 95 % band.
func band(v runs.Value) string { return shown.PlusMinus(v.X, shown.Normal95*v.SE) }

// headline are the marks of a launch that the summary names.
func (p *page) headline() []string {
	switch p.units {
	case shown.Imperial:
		return []string{"0-60 mph", "1/4 mile"}
	case shown.Both:
		return []string{"0-100 km/h", "0-60 mph", "1/4 mile"}
	}
	return []string{"0-100 km/h", "1/4 mile"}
}

func (p *page) launches(r *runs.Result) {
	counting, found := of(r, runs.Launch)
	if len(counting) == 0 { // starts that were not attempts stand below, with their reasons
		return
	}
	p.counted("Launches", len(counting), found)
	for _, run := range counting {
		lead := fmt.Sprintf("run %d", run.ID)
		for _, m := range run.Marks {
			if !slices.Contains(p.headline(), m.Name) {
				continue
			}
			time, rolledOut := m.Headline()
			text := fmt.Sprintf("  %-7s %-11s %s s", lead, m.Name, band(time))
			if rolledOut {
				text += fmt.Sprintf("  after one foot of rollout (%s s from first movement)", band(m.Time))
			}
			if m.Speed.Known() {
				text += "  at " + p.units.Number(shown.Speed, m.Speed.X, 0)
			}
			p.line("%s", text)
			lead = ""
		}
	}
}

func (p *page) rollOns(r *runs.Result) {
	counting, found := of(r, runs.RollOn)
	if len(counting) == 0 { // starts that were not attempts stand below, with their reasons
		return
	}
	p.counted("Roll-ons", len(counting), found)
	for _, run := range counting {
		var marks []string
		for _, m := range run.Marks {
			marks = append(marks, fmt.Sprintf("%s %s s", m.Name, band(m.Time)))
		}
		gear := r.Gear(run)
		if gear != "" {
			gear = "gear " + gear + "  "
		}
		p.line("  run %-3d %-7s %s%s", run.ID, shown.Heading(run.BearingDeg), gear, strings.Join(marks, "   "))
	}
}

func (p *page) power(r *runs.Result) {
	if len(r.Powers) == 0 {
		return
	}
	p.title("Power at the road")
	for _, c := range r.Powers {
		speed, peak, atEnd := c.Curve.Peak()
		gear := "one gear"
		if c.Gear != "" {
			gear = "gear " + c.Gear
		}
		text := fmt.Sprintf("%s: %s at %s in %s", named(c.Setup), p.units.PlusMinus(shown.Power, peak.X, shown.Normal95*peak.SE), p.units.Number(shown.Speed, speed, 0), gear)
		if atEnd {
			text += ", the fastest that was ridden, so the peak may lie beyond"
		}
		p.wrapped(2, text)
	}
}

func (p *page) stops(r *runs.Result) {
	counting, found := of(r, runs.Stop)
	if len(counting) == 0 {
		return
	}
	p.counted("Stops", len(counting), found)
	for _, run := range counting {
		for _, m := range run.Marks {
			p.line("  run %-3d %s: %s s over %s", run.ID, m.Name, band(m.Time), p.units.PlusMinus(shown.Distance, m.Distance.X, shown.Normal95*m.Distance.SE))
		}
	}
}

func (p *page) loads(r *runs.Result) {
	counting, found := of(r, runs.CoastDown)
	if found == 0 {
		return
	}
	p.counted("Coast-downs", len(counting), found)
	for _, l := range r.RoadLoads {
		p.line("  %-14s CdA %s   Crr %s   (%d there and back)", named(l.Setup), p.units.PlusMinus(shown.Area, l.CdA.X, (l.CdACI[1]-l.CdACI[0])/2),
			shown.PlusMinus(l.Crr.X, (l.CrrCI[1]-l.CrrCI[0])/2), l.Pairs)
		for _, n := range l.Notes {
			p.wrapped(4, p.book().Say(n))
		}
	}
	if len(r.RoadLoads) > 0 {
		p.wrapped(2, "CdA, the drag area, says how much air is pushed aside: it matters most above town speeds. Crr, the rolling resistance, is the share of the weight lost to rolling. Less is better for both.")
	}
	if len(r.RoadLoads) == 0 {
		p.wrapped(2, "Drag area and rolling resistance need coast-downs on the same road in both directions: without the way back, wind and slope look like drag.")
	}
}

func (p *page) compared(r *runs.Result) {
	if len(r.Compared) == 0 {
		return
	}
	p.title("Compared")
	for _, c := range r.Compared {
		p.line("  %s against %s", named(c.B), named(c.A))
		say := func(v *compare.Verdict, quantity finding.Finding) {
			if v != nil {
				p.wrapped(4, p.book().Say(words.Verdict(named(c.B), quantity, *v)))
			}
		}
		say(c.CdA, words.Drag())
		say(c.Crr, words.Rolling())
		say(c.Power, words.Power())
		for _, t := range c.Times {
			say(&t.Verdict, words.TimeFor(t.Mark))
		}
		for _, n := range c.Notes {
			p.wrapped(4, p.book().Say(n))
		}
	}
}

// named names a setup, also one without a name.
func named(setup string) string {
	if setup == "" {
		return "as ridden"
	}
	return setup
}
