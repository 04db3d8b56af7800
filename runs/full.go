package runs

import (
	"math"
	"slices"

	"stillair/sensors/finding"
)

// oneLaunch is the time within which two parts of a launch in different gears begin, s.
const oneLaunch = 30.0

// company is what speaks for a push having been at full throttle: how many other
// pushes in the same gear agree with it, how many of these are alike, how many of
// those went along the same road, and of these how many are closely alike and how
// many within a tight tolerance; and whether its own thrust is unsteady.
type company struct {
	agreeing, alike, along, close, tight int
	unsteady                             bool
}

func (o *throttles) company(i int) company {
	c := company{unsteady: o.drives[i].unsteady()}
	for j, r := range o.with[i] {
		if r.across || o.drives[j].start || !r.agrees() {
			continue
		}
		c.agreeing++
		if r.alike() {
			c.alike++
		}
		if !parallelTo(o.drives[i], o.drives[j]) {
			continue
		}
		if r.alike() {
			c.along++
		}
		if r.closely() {
			c.close++
			if r.loose < mostTight {
				c.tight++
			}
		}
	}
	return c
}

// full is the reason why the ride does not show that a push was at full
// throttle, or "" if it does, from the company of each push.
func (o *throttles) full(i int, companies []company) finding.Code {
	c := companies[i]
	harder, launch, orderly := false, false, true
	for j, r := range o.with[i] {
		other := o.drives[j]
		switch {
		case !r.common:
			continue
		case r.known && r.harder():
			return codeBelowBike
		case other.start:
			launch = launch || r.alike() && (o.borneOut(j, i) || r.closely() && !c.unsteady)
			continue
		}
		harder = harder || r.harder()
		orderly = orderly && companies[j].alike > 0 && (o.meant || r.alike() || !r.known || r.across)
	}
	switch d := o.drives[i]; {
	case d.beginsBelow(ridingOff), d.beginsBelow(slowStart) && !d.gearKnown() && (c.tight < crowd || c.unsteady):
		return codeUnproven
	case launch:
		return ""
	case harder && d.throughGears(), c.alike < bigCrowd && c.unsteady:
		return codeUnproven
	case c.alike >= crowd && (!harder || orderly), c.agreeing >= bigCrowd && !harder:
		return ""
	case (c.close >= meantCrowd && orderly || c.along >= meantCrowd && o.meant) && !harder:
		return ""
	case c.close >= 1 && orderly && (o.meant || o.twin(i)):
		return ""
	case c.tight >= meantCrowd && !harder && o.twin(i): // even where a weaker one has no company
		return ""
	}
	return codeUnproven
}

// borneOut reports whether another push than one, of another launch or of none, agrees
// with a part of a launch.
func (o *throttles) borneOut(part, but int) bool {
	for k, r := range o.with[part] {
		if k != but && r.alike() && (!o.drives[k].start || math.Abs(o.drives[k].from-o.drives[part].from) > oneLaunch) {
			return true
		}
	}
	return false
}

// all is full for each push, extended across gears: torque depends only on
// engine speed, so a push in a known gear with the torque of a full-throttle
// one at the same engine speeds is at full throttle too.
func (o *throttles) all() []finding.Code {
	companies := make([]company, len(o.drives))
	parallel(len(companies), func(i int) { companies[i] = o.company(i) })
	why := make([]finding.Code, len(o.drives))
	for i := range why {
		why[i] = o.full(i, companies)
	}
	out := slices.Clone(why)
	for i, r := range o.with {
		if why[i] != codeUnproven {
			continue
		}
		for j := range r {
			if why[j] == "" && !o.drives[j].start && r[j].gives() {
				out[i] = ""
			}
		}
	}
	return out
}

// twin reports whether another push that agrees began and ended at the same
// widely spaced speeds: a deliberate repetition.
func (o *throttles) twin(i int) bool {
	a := o.drives[i]
	if len(a.v) == 0 || a.high() < meantRatio*a.low() {
		return false
	}
	for j, r := range o.with[i] {
		b := o.drives[j]
		ends := alikeEnds
		if a.way*b.way < 0 {
			ends *= 2 // against the wind a push is given up at a lower speed
		}
		if r.closely() && !r.across && !b.start && parallelTo(a, b) && math.Abs(a.low()-b.low()) < alikeEnds*a.low() && math.Abs(a.high()-b.high()) < ends*a.high() {
			return true
		}
	}
	return false
}

// parallelTo reports whether two pushes went along one straight road in either
// direction, as deliberate runs do; true if a direction is unknown.
func parallelTo(a, b drive) bool {
	return !(math.Abs(math.Remainder(a.bearing-b.bearing, 180)) > oneRoad)
}
