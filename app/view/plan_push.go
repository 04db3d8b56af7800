package view

import (
	"fmt"
	"io"

	"stillair/export/card"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs/marks"
	"stillair/runs/plan"
	"stillair/sensors/units"
)

// Options of the switches of a plan for power and times.
var (
	planStronger = [4]float64{0.02, 0.04, 0.06, 0.1}
	planQuicker  = [4]float64{0.1, 0.2, 0.5, 1} // s
	planUnsteady = [3]float64{0.01, 0.02, 0.04}
	planRepeats  = [4]float64{0.05, 0.1, 0.2, 0.4} // s
	overMetric   = [4]string{"0-100 km/h", "1/4 mile", "60-100 km/h", "80-120 km/h"}
	overImperial = [4]string{"0-60 mph", "1/4 mile", "40-60 mph", "50-75 mph"}
)

// pushChoices adds the labels for power and times.
func (c Context) pushChoices(ch *PlanChoices) {
	for _, x := range planStronger {
		ch.Stronger = append(ch.Stronger, c.Number(100*x, 0)+" %")
	}
	for _, x := range planUnsteady {
		ch.Unsteady = append(ch.Unsteady, c.Number(100*x, 0)+" %")
	}
	for _, x := range planQuicker {
		ch.Quicker = append(ch.Quicker, c.Number(x, 1)+" s")
	}
	for _, x := range planRepeats {
		ch.Repeats = append(ch.Repeats, c.Number(x, 2)+" s")
	}
	for _, x := range c.planOver() {
		ch.Over = append(ch.Over, c.Book.Say(x))
	}
}

func (c Context) planOver() [4]string {
	if c.System == shown.Imperial {
		return overImperial
	}
	return overMetric
}

// PushQuestion converts the rider's choices about power or a time to a question
// for package plan.
func (c Context) PushQuestion(a Asked) (plan.PushQuestion, plan.PushConditions) {
	q := plan.PushQuestion{Setups: max(2, planSetups[a.Setups]), Chance: planChances[a.Sure]}
	wind := planWinds[a.Wind]
	if a.What == PowerMatters {
		q.Push, q.Change = plan.Pulls, planStronger[a.Stronger]
		k := plan.DefaultPush(plan.Pulls, a.Load, wind)
		k.Spread = planUnsteady[a.Unsteady]
		if c.System == shown.Imperial {
			k.FromMPS, k.ToMPS = 30*units.MPH, 80*units.MPH
		}
		return q, withPower(k, a)
	}
	q.Push, q.Mark, q.Change = plan.Launches, c.planOver()[a.Over], planQuicker[a.Quicker]
	var pair marks.SpeedPair
	if _, _, launch := marks.GoalOf(q.Mark); !launch {
		q.Push = plan.RollOns
		pair, _ = marks.ParseSpeedPair(q.Mark) // one of the four above, so there is no error
	}
	k := plan.DefaultPush(q.Push, a.Load, wind)
	if q.Push == plan.RollOns {
		k.FromMPS, k.ToMPS = pair.From, pair.To
	}
	k.Spread = planRepeats[a.Repeats]
	return q, withPower(k, a)
}

func withPower(k plan.PushConditions, a Asked) plan.PushConditions {
	if a.Power > 0 {
		k.Power = a.Power
	}
	return k
}

// ridden says which runs a question needs.
func (c Context) ridden(a Asked) string {
	t := c.Book.Plan
	if !a.What.Pushes() {
		return t.RiddenCoasts
	}
	q, k := c.PushQuestion(a)
	switch q.Push {
	case plan.Pulls:
		return fmt.Sprintf(t.RiddenPulls, c.SpeedText(k.FromMPS), c.SpeedText(k.ToMPS), c.SpeedUnit())
	case plan.Launches:
		return fmt.Sprintf(t.RiddenLaunches, c.Book.Say(q.Mark))
	}
	return fmt.Sprintf(t.RiddenRollOns, c.Book.Say(q.Mark))
}

// planAmount is a difference in the quantity of the question.
func (c Context) planAmount(a Asked, x float64) string {
	if a.What == TimeMatters {
		return c.Number(x, 2) + "\u00a0s"
	}
	return c.Number(100*x, 1) + " %"
}

// PlanCautions are the cautions that go with a plan.
func (c Context) PlanCautions(a Asked) []string {
	all := words.CoastCautions()
	if a.What.Pushes() {
		all = words.ThrottleCautions()
	}
	return c.say().Sentences(all)
}

// Card writes a plan as a card for printing.
func (c Context) Card(out io.Writer, m *plan.Plan, a Asked) error {
	sheet := card.Card{Plan: m, Runs: c.ridden(a), FullThrottle: a.What.Pushes()}
	if !a.What.Pushes() {
		_, k := c.Question(a)
		sheet.From, sheet.To = k.FromMPS, k.ToMPS
	}
	return card.Write(out, sheet, c.style())
}
