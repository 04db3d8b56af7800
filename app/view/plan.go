package view

import (
	"fmt"
	"math"

	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs/air"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/plan"
	"stillair/runs/roadload"
	"stillair/runs/usual"
	"stillair/sensors/units"
)

// Matter is the quantity that a plan is about.
type Matter int

// The quantities, in the order of the switch.
const (
	DragMatters Matter = iota
	TopMatters
	PowerMatters
	TimeMatters
)

// Pushes reports whether the test is ridden at full throttle.
func (m Matter) Pushes() bool { return m >= PowerMatters }

// Asked is a rider's question to a plan, as positions of the switches.
type Asked struct {
	What                    Matter
	Change, Faster, Wind    int
	Stronger, Quicker, Over int // change of power; change of a time, and which time
	Unsteady, Repeats       int // spread of repeats: of pulls, of times
	From, To, Setups, Sure  int
	TopSpeed                *float64 // m/s
	Load                    effect.Load
	NeverRolls              bool               // the drive of the bike cannot be disengaged
	Measured                bool               // Load was measured, not assumed
	Like                    *roadload.Estimate // from one of the rider's rides, for a similar day and road; nil: the wind describes the day
	Power                   float64            // highest measured power at the road, W; 0: not known
}

// UsualAsked is the question about 5 % of drag on a day with light wind.
func UsualAsked() Asked {
	return Asked{Change: 1, Setups: 1, Faster: 1, Wind: 1, From: 2, To: 1, Stronger: 1, Quicker: 1, Repeats: 1, Load: UsualLoad(usual.Mass)}
}

// UsualLoad is the road load of an average motorcycle with a mass in kg, on a
// standard day.
func UsualLoad(mass float64) effect.Load {
	day := air.State{Temperature: measure.Value{X: usual.Celsius}, Pressure: measure.Value{X: usual.Pascals}, Humidity: measure.Value{X: usual.Humidity}}
	return effect.Usual(mass, day.Density().X, air.Gravity(45, 0))
}

// Options of the switches of a plan.
var (
	planChanges = [4]float64{0.02, 0.05, 0.10, 0.20}
	planWinds   = [3]float64{0.5, 1, 1.5} // m/s
	planSetups  = [3]int{1, 2, 3}
	planChances = [2]float64{0.8, 0.9}
	fasterKMH   = [3]float64{2, 5, 10}
	fasterMPH   = [3]float64{1, 3, 6}
	fromKMH     = [4]float64{70, 90, 110, 130}
	fromMPH     = [4]float64{45, 55, 70, 80}
	toKMH       = [3]float64{20, 30, 50}
	toMPH       = [3]float64{15, 20, 30}
)

// PlanChoices are the labels on the switches of a plan.
type PlanChoices struct {
	What, Changes, Faster, Winds, From, To, Setups, Chances []string
	Stronger, Quicker, Over, Unsteady, Repeats              []string
}

// PlanChoices makes the labels on the switches.
func (c Context) PlanChoices() PlanChoices {
	t := c.Book.Plan
	ch := PlanChoices{What: []string{c.tell(words.Drag()), c.named(nameFastest), c.tell(words.Power()), t.Times}, Winds: t.Winds[:]}
	for _, x := range planChanges {
		ch.Changes = append(ch.Changes, c.Number(100*x, 0)+" %")
	}
	for _, x := range planSetups {
		ch.Setups = append(ch.Setups, c.Number(float64(x), 0))
	}
	for _, x := range planChances {
		ch.Chances = append(ch.Chances, c.Number(100*x, 0)+" %")
	}
	c.pushChoices(&ch)
	faster, from, to := c.planSpeeds()
	ch.Faster, ch.From, ch.To = c.speedWords(faster[:]), c.speedWords(from[:]), c.speedWords(to[:])
	return ch
}

// planSpeeds are in the rider's unit.
func (c Context) planSpeeds() (faster [3]float64, from [4]float64, to [3]float64) {
	if c.System == shown.Imperial {
		return fasterMPH, fromMPH, toMPH
	}
	return fasterKMH, fromKMH, toKMH
}

func (c Context) speedWords(all []float64) []string {
	var out []string
	for _, x := range all {
		out = append(out, c.Number(x, 0))
	}
	return out
}

// SpeedQuantity is a speed in the rider's unit.
func (c Context) SpeedQuantity() Quantity {
	return Quantity{Unit: c.SpeedUnit(), SI: c.perSpeed(), Low: 40 * units.KMH, High: 350 * units.KMH}
}

// UsualTop is the top speed of an average bike, m/s, rounded to whole units of
// the rider's system.
func (c Context) UsualTop() float64 {
	if c.System == shown.Imperial {
		return 125 * units.MPH
	}
	return 200 * units.KMH
}

// Question converts the rider's choices to a question for package plan.
func (c Context) Question(a Asked) (plan.Question, plan.Conditions) {
	faster, from, to := c.planSpeeds()
	q := plan.Question{Setups: planSetups[a.Setups], Chance: planChances[a.Sure], CdA: planChanges[a.Change]}
	if a.What == TopMatters {
		top := c.UsualTop()
		if a.TopSpeed != nil {
			top = *a.TopSpeed
		}
		q.CdA = plan.FromTopSpeed(a.Load, top, faster[a.Faster]*c.perSpeed())
	}
	k := plan.DefaultConditions(a.Load, planWinds[a.Wind])
	if a.Like != nil {
		k = k.As(a.Like)
	}
	k.FromMPS, k.ToMPS = from[a.From]*c.perSpeed(), to[a.To]*c.perSpeed()
	return q, k
}

// Plan is a planned test in words.
type Plan struct {
	Answer  string
	Grade   Grade // Fine: it is sufficient; Bad: it cannot succeed
	Facts   []string
	Table   [][2]string
	Order   []PlanBlock
	Help    []PlanHelp
	Made    *plan.Plan
	Trouble string // why nothing could be planned; the rest is empty then
}

// PlanBlock is some pairs with one setup.
type PlanBlock struct{ Letter, Words string }

// PlanHelp is one thing that would help.
type PlanHelp struct{ What, Then string }

// MakePlan calculates the plan that answers the question.
func (c Context) MakePlan(a Asked) (*plan.Plan, error) {
	if a.noRolling() {
		return nil, nil
	}
	if a.What.Pushes() {
		return plan.MakePush(c.PushQuestion(a))
	}
	return plan.Make(c.Question(a))
}

// noRolling reports whether a question needs coast-downs of a bike that cannot
// roll free.
func (a Asked) noRolling() bool { return a.NeverRolls && !a.What.Pushes() }

// Plan puts a plan into words, or the reason why there is none.
func (c Context) Plan(m *plan.Plan, err error, a Asked) Plan {
	t := c.Book.Plan
	if a.noRolling() {
		return Plan{Trouble: c.Book.Drive.NoPlan}
	}
	if err != nil {
		return Plan{Trouble: fmt.Sprintf(t.CannotPlan, c.Error(err))}
	}
	v := Plan{Grade: Fine, Answer: fmt.Sprintf(t.Answer, m.Pairs)}
	if !m.Enough {
		v.Grade, v.Answer = Bad, fmt.Sprintf(t.AnswerNot, m.Pairs)
	}
	chance := fmt.Sprintf(t.ChanceWords, c.percent(m.Chance))
	if m.KnowsDays() {
		chance = fmt.Sprintf(t.ChanceDays, c.percent(m.Chance), c.percent(m.Gusty), c.percent(m.Calm))
	}
	v.Facts = []string{c.ridden(a), chance, fmt.Sprintf(t.Known, c.planAmount(a, m.Half)),
		fmt.Sprintf(t.Smallest, c.percent(planChances[a.Sure]), c.planAmount(a, m.Smallest))}
	if planSetups[a.Setups] == 1 && !a.What.Pushes() {
		v.Facts = []string{c.ridden(a), fmt.Sprintf(t.KnownOne, c.planAmount(a, m.Half)), fmt.Sprintf(t.WholeOne, c.planAmount(a, m.Whole))}
		if m.Enough {
			v.Answer = fmt.Sprintf(t.AnswerOne, m.Pairs)
		}
	}
	v.Made = m
	v.Table = [][2]string{{t.Road, c.Length(math.Ceil(m.RoadLength/100) * 100)}, {t.Time, c.Duration(m.Seconds)}}
	for _, b := range m.Blocks {
		letter := string(rune('A' + b.Setup%26))
		words := fmt.Sprintf(t.Block, letter, b.Pairs)
		if b.Pairs == 1 {
			words = fmt.Sprintf(t.BlockOne, letter)
		}
		v.Order = append(v.Order, PlanBlock{letter, words})
	}
	for _, h := range m.Advice {
		v.Help = append(v.Help, PlanHelp{c.tell(h.Change), fmt.Sprintf(t.HelpWith, c.percent(h.Chance), c.planAmount(a, h.Smallest))})
	}
	return v
}

// percent writes a share, but never as 100 %.
func (c Context) percent(share float64) string { return c.Number(math.Min(100*share, 99), 0) }

// PlanBasis says for which bike a plan was calculated.
func (c Context) PlanBasis(a Asked) string {
	format := c.Book.Plan.BasisUsual
	if a.Measured {
		format = c.Book.Plan.Basis
	}
	basis := fmt.Sprintf(format, c.Number(a.Load.CdA.X, 2), c.Number(a.Load.Crr.X, 3), c.Mass(a.Load.Mass))
	if !a.What.Pushes() {
		return basis
	}
	_, k := c.PushQuestion(a)
	format = c.Book.Plan.BasisPowerUsual
	if a.Power > 0 {
		format = c.Book.Plan.BasisPower
	}
	return basis + " " + fmt.Sprintf(format, c.style().Number(shown.Power, k.Power, 0))
}

// PlanWind says how much wind was assumed.
func (c Context) PlanWind(a Asked) string {
	if a.Like != nil && !a.What.Pushes() {
		return c.Book.Plan.Like
	}
	return fmt.Sprintf(c.Book.Plan.WindWords, c.windText(planWinds[a.Wind]))
}
