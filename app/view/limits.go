package view

import (
	"fmt"

	"stillair/runs"
)

// Limits lists what limits the certainty of one setup's drag area, largest
// first, so that a rider knows what to improve.
type Limits struct {
	Lead string // which setup, and the largest cause
	Help string // what to do about that
	Bars []Bar
}

// Bar is one of several bars on a common scale.
type Bar struct {
	Name   string
	Share  float64 // of the longest, 0 to 1
	Text   string
	Spoken string
}

// slight is the share of the longest bar below which a cause is left out.
const slight = 0.04

// Limits makes the bars of a setup; nil if its causes are not known.
func (c Context) Limits(l runs.RoadLoad) *Limits {
	return c.limitsOf(c.setupName(l.Setup), l.CdA.X, l.Limits)
}

// limitsOf makes the bars under a name, in percent of a drag area.
func (c Context) limitsOf(call string, cda float64, all []runs.Limit) *Limits {
	if len(all) == 0 || !(all[0].SE > 0) || !(cda > 0) {
		return nil
	}
	t := c.Book.Effects
	name, help := c.cause(all[0].Cause)
	v := &Limits{Lead: fmt.Sprintf(t.LimitLead, call, name), Help: help}
	for _, x := range all {
		share := x.SE / all[0].SE
		if share < slight {
			continue
		}
		name, _ := c.cause(x.Cause)
		words := fmt.Sprintf(t.LimitWords, c.Number(196*x.SE/cda, 1))
		v.Bars = append(v.Bars, Bar{Name: capital(name), Share: share, Text: words, Spoken: name + ", " + words})
	}
	return v
}

// cause is the name of a cause, and what helps against it.
func (c Context) cause(x runs.Cause) (name, help string) {
	return c.say().Name(x), c.say().Help(x)
}
