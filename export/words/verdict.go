package words

import (
	"math"

	"stillair/runs/compare"
	"stillair/sensors/finding"
)

// The codes of a verdict about two setups.
const (
	codeMore    finding.Code = "verdict.more"
	codeLess    finding.Code = "verdict.less"
	codeNone    finding.Code = "verdict.none"
	codeUnclear finding.Code = "verdict.unclear"
	codeCalmer  finding.Code = "verdict.unclear_calmer"
)

// The quantities that a verdict may be about, beside the time of a mark.
const (
	codeDrag    finding.Code = "quantity.drag"
	codeRolling finding.Code = "quantity.rolling"
	codePower   finding.Code = "quantity.power"
	codeTimeFor finding.Code = "quantity.time"
)

// Drag, Rolling, Power and TimeFor name what a verdict is about.
func Drag() finding.Finding { return finding.New(codeDrag) }

// Rolling is rolling resistance.
func Rolling() finding.Finding { return finding.New(codeRolling) }

// Power is power at the road.
func Power() finding.Finding { return finding.New(codePower) }

// TimeFor is the time of a mark.
func TimeFor(mark string) finding.Finding {
	return finding.New(codeTimeFor, finding.Text("mark", mark))
}

// Verdict says a judged difference: direction and size, always with the
// estimate and its 95 % band, as shares of the other setup's value. setup is
// the one that has more or less.
func Verdict(setup string, quantity finding.Finding, v compare.Verdict) finding.Finding {
	change, low, high := v.Percent/100, v.CIPercent[0]/100, v.CIPercent[1]/100
	args := func(more ...finding.Arg) []finding.Arg {
		return append([]finding.Arg{finding.Text("setup", setup), finding.Of("quantity", quantity), finding.Share("change", change),
			finding.Share("low", low), finding.Share("high", high)}, more...)
	}
	switch {
	case v.Finding == compare.Differs && change < 0:
		change, low, high = math.Abs(change), -high, -low
		return finding.New(codeLess, args()...)
	case v.Finding == compare.Differs:
		return finding.New(codeMore, args()...)
	case v.Finding == compare.NoneShown:
		return finding.New(codeNone, args()...)
	case v.Beyond:
		return finding.New(codeCalmer, args(finding.Count("pairs", v.MorePairs))...)
	}
	return finding.New(codeUnclear, args(finding.Count("pairs", v.MorePairs))...)
}

func ofVerdicts() []Entry {
	band := func(more ...finding.Arg) []finding.Arg {
		return append(args(finding.Text("setup", "tall screen"), finding.Of("quantity", Drag()), finding.Share("change", 0.081),
			finding.Share("low", 0.028), finding.Share("high", 0.134)), more...)
	}
	return []Entry{
		{codeDrag, nil, "drag", "Luftwiderstand"},
		{codeRolling, nil, "rolling resistance", "Rollwiderstand"},
		{codePower, nil, "power", "Leistung"},
		{codeTimeFor, args(finding.Text("mark", "1/4 mile")), "time for {mark}", "Zeit für {mark}"},
		{codeMore, band(), "{setup}: {change.1} more {quantity} (95 %: {low~.1} to {high.1})",
			"{setup}: {change.1} mehr {quantity} (95 %: {low~.1} bis {high.1})"},
		{codeLess, band(), "{setup}: {change.1} less {quantity} (95 %: {low~.1} to {high.1})",
			"{setup}: {change.1} weniger {quantity} (95 %: {low~.1} bis {high.1})"},
		{codeNone, band(), "{setup}: no difference in {quantity} that matters; change {change.1} (95 %: {low~.1} to {high.1})",
			"{setup}: kein Unterschied, auf den es ankommt, {quantity} {change.1} (95 %: {low~.1} bis {high.1})"},
		{codeUnclear, band(finding.Count("pairs", 3)),
			"{setup}: {quantity} not clear yet, about {pairs|1 more pair|# more pairs} needed; change {change.1} (95 %: {low~.1} to {high.1})",
			"{setup}: {quantity} noch unklar, etwa {pairs|1 weiteres Paar|# weitere Paare} nötig; Änderung {change.1} (95 %: {low~.1} bis {high.1})"},
		{codeCalmer, band(finding.Count("pairs", 20)),
			"{setup}: {quantity} not clear, even {pairs|1 more pair|# more pairs} would not show it, a calmer day helps more; change {change.1} (95 %: {low~.1} to {high.1})",
			"{setup}: {quantity} unklar, auch {pairs|1 weiteres Paar|# weitere Paare} würden nicht reichen, ein ruhigerer Tag hilft mehr; Änderung {change.1} (95 %: {low~.1} bis {high.1})"},
	}
}
