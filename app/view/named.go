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

// Names are those of them that screens show where a view has no place for them.
type Names struct {
	Power, PowerLead, NoBench string
	Loads, Limits             string
	DragArea, Rolling         string
	CannotRoll, TopSpeed      string // cautions
	OtherDay, PowerQuantity   string
	PassesNote                string
	NothingLeft               string // of a ride without its ends
}

// Names gives them in the rider's language and units.
func (c Context) Names() Names {
	sentence := func(code finding.Code) string { return c.sentence(finding.New(code)) }
	return Names{Power: c.named(namePower), PowerLead: sentence(namePowerLead), NoBench: sentence(nameNoBench),
		Loads: c.named(nameLoads), Limits: c.named(nameLimits), DragArea: c.named(nameDragArea) + " CdA", Rolling: c.named(nameRolling) + " Crr",
		PassesNote: c.named(namePasses), CannotRoll: sentence(nameCannotRoll), TopSpeed: sentence(nameTopSpeed),
		OtherDay: sentence(nameOtherDay), PowerQuantity: c.tell(words.Power()),
		NothingLeft: c.sentence(finding.New(nameNothing, finding.Distance("ends", share.Default().EndsCut)))}
}

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
