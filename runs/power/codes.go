package power

import "stillair/sensors/finding"

// Codes of the reasons why there is no power curve, or no difference of two.
const (
	codeNoOverlap   finding.Code = "power.no_overlap"
	codeNoPull      finding.Code = "power.no_pull"
	codeSetupsApart finding.Code = "power.setups_apart"
	codeNotDefinite finding.Code = "power.not_definite"
	codePullShort   finding.Code = "power.pull_short"
	codePullUneven  finding.Code = "power.pull_uneven"
	codePullNoWay   finding.Code = "power.pull_no_direction"
	codePullPoint   finding.Code = "power.pull_point"
	codePullGain    finding.Code = "power.pull_gain"
	codeNoRotating  finding.Code = "power.no_rotating_mass"
)
