package plan

import (
	"stillair/sensors/finding"
)

// Codes of the reasons why a test cannot be planned.
const (
	codeSetups      finding.Code = "plan.setups"
	codeShare       finding.Code = "plan.change_of_drag"
	codePowerShare  finding.Code = "plan.change_of_power"
	codeSeconds     finding.Code = "plan.change_of_time"
	codeChance      finding.Code = "plan.chance"
	codeFewPairs    finding.Code = "plan.few_pairs"
	codeSpeeds      finding.Code = "plan.speeds"
	codeShort       finding.Code = "plan.speeds_short"
	codeRate        finding.Code = "plan.no_rate"
	codeMark        finding.Code = "plan.mark"
	codeNoPower     finding.Code = "plan.no_power"
	codeSpread      finding.Code = "plan.spread"
	codeNoTime      finding.Code = "plan.time_unknown"
	codeTooWeak     finding.Code = "plan.too_weak"
	codeNoBikeTakes finding.Code = "plan.no_bike_takes"
)

// Codes of advice for a plan that is not enough.
const (
	codeCalmer    finding.Code = "plan.calmer"
	codeFaster    finding.Code = "plan.faster"
	codeMorePairs finding.Code = "plan.more_pairs"
	codeOften     finding.Code = "plan.more_fixes"
	codeAlike     finding.Code = "plan.repeats_alike"
)

func morePairs(pairs, instead int) finding.Finding {
	return finding.New(codeMorePairs, finding.Count("pairs", pairs), finding.Count("instead", instead))
}
