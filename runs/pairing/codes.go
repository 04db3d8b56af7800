package pairing

import "stillair/sensors/finding"

// Codes of the reasons why a run has no counterpart.
const (
	codeNoDirection   finding.Code = "pair.no_direction"
	codeTooLong       finding.Code = "pair.too_long_after"
	codeAllTaken      finding.Code = "pair.all_taken"
	codeOtherSetup    finding.Code = "pair.other_setup"
	codeNoCounterpart finding.Code = "pair.no_counterpart"
)
