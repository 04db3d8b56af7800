package view

import (
	"stillair/export/share"
	"stillair/export/words"
	"stillair/sensors/finding"
)

// What screens and reports both name has its text in export/words, once.
const (
	namePower      finding.Code = "report.powers"
	nameAsRidden   finding.Code = "report.as_ridden"
	nameGear       finding.Code = "report.gear"
	namePair       finding.Code = "report.pair"
	nameLoads      finding.Code = "report.loads"
	nameDragArea   finding.Code = "report.drag_area"
	nameRolling    finding.Code = "report.rolling_resistance"
	nameFastest    finding.Code = "report.fastest"
	nameHalf       finding.Code = "report.half_difference"
	namePasses     finding.Code = "report.passes_note"
	nameAssumed    finding.Code = "report.assumed"
	nameDate       finding.Code = "report.date"
	nameLimits     finding.Code = "report.limits"
	namePowerLead  finding.Code = "report.powers_lead"
	nameNoBench    finding.Code = "report.no_dynamometer"
	nameFar        finding.Code = "report.standard_far"
	nameBarometer  finding.Code = "sensor.barometer"
	nameCannotRoll finding.Code = "caution.cannot_coast"
	nameTopSpeed   finding.Code = "caution.top_speed"
	nameOtherDay   finding.Code = "compare.other_day"
	nameNothing    finding.Code = "desk.nothing_left"

	axisSpeed    finding.Code = "figure.speed"
	axisForce    finding.Code = "figure.force_axis"
	axisPower    finding.Code = "figure.needed_axis"
	axisResidual finding.Code = "figure.residual"
)

// Names gives those of them that screens show where a view has no place for them.
type Names struct{ c Context }

// Names gives them in the rider's language and units.
func (c Context) Names() Names { return Names{c} }

func (n Names) Power() string         { return n.c.named(namePower) }
func (n Names) PowerLead() string     { return n.sentence(namePowerLead) }
func (n Names) PowerQuantity() string { return n.c.tell(words.Power()) }
func (n Names) NoBench() string       { return n.sentence(nameNoBench) }
func (n Names) Loads() string         { return n.c.named(nameLoads) }
func (n Names) Limits() string        { return n.c.named(nameLimits) }
func (n Names) DragArea() string      { return n.c.named(nameDragArea) + " CdA" }
func (n Names) Rolling() string       { return n.c.named(nameRolling) + " Crr" }
func (n Names) PassesNote() string    { return n.c.named(namePasses) }

// CannotRoll, TopSpeed and OtherDay are cautions.
func (n Names) CannotRoll() string { return n.sentence(nameCannotRoll) }
func (n Names) TopSpeed() string   { return n.sentence(nameTopSpeed) }
func (n Names) OtherDay() string   { return n.sentence(nameOtherDay) }

// NothingLeft says that a ride without its ends is empty.
func (n Names) NothingLeft() string {
	return n.c.sentence(finding.New(nameNothing, finding.Distance("ends", share.Default().EndsCut)))
}

func (n Names) sentence(code finding.Code) string { return n.c.sentence(finding.New(code)) }

// Standards names the airs that power can be stated in.
func (c Context) Standards() []string {
	return []string{c.named(nameAsRidden), c.Book.Power.ToSAE, c.Book.Power.ToISO}
}

// named is the text of a code, with a capital.
func (c Context) named(code finding.Code) string { return capital(c.say().Name(code)) }

// axisName is the label of an axis with its unit.
func (c Context) axisName(code finding.Code, unit string) string {
	return c.tell(finding.New(code, finding.Text("unit", unit)))
}

// gear names a gear, without a capital.
func (c Context) gear(name string) string {
	return c.say().Say(finding.New(nameGear, finding.Text("gear", name)))
}
