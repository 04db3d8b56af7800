package roadload

import "stillair/sensors/finding"

// Codes of the findings about a fit, its runs and the parts left out of them.
const (
	codeOfRun       finding.Code = "load.of_run"
	codeOfSetup     finding.Code = "load.of_setup"
	codeGrowth      finding.Code = "load.growth"
	codeGusty       finding.Code = "load.gusty"
	codeNoPlaces    finding.Code = "load.no_places"
	codeMaybeSmooth finding.Code = "load.maybe_smooth"
	codeRough       finding.Code = "load.rough"
	codeRoughBaro   finding.Code = "load.rough_barometer"
	codeRoughApart  finding.Code = "load.rough_apart"
	codeRoughSame   finding.Code = "load.rough_same_places"
	codeUncertain   finding.Code = "load.uncertain"
	codeWindPair    finding.Code = "load.wind_changed"
	codePosture     finding.Code = "load.posture_varies"
	codeDisagree    finding.Code = "load.pairs_disagree"
	codeWarmed      finding.Code = "load.tyres_warmed"
	codeTyres       finding.Code = "load.tyres_in_general"
	codeSimpler     finding.Code = "load.simpler_fit"

	codeNoise        finding.Code = "budget.noise"
	codeMass         finding.Code = "budget.mass"
	codeAir          finding.Code = "budget.air"
	codeAlike        finding.Code = "budget.tyres_alike"
	codeOwnLoad      finding.Code = "budget.load_not_entered"
	codeSquareGrowth finding.Code = "budget.growth_square"
	codeLinearGrowth finding.Code = "budget.growth_linear"
	codeYaw          finding.Code = "budget.yaw"
	codeAirAcross    finding.Code = "budget.air_across"
	codeSitUp        finding.Code = "budget.sit_up"
	codeColdTyres    finding.Code = "budget.cold_tyres"
	codeValley       finding.Code = "budget.valley"

	codeSlowed finding.Code = "coast.slowed_suddenly"
	codeEased  finding.Code = "coast.eased_suddenly"
	codeHeld   finding.Code = "coast.held_back"
	codeHelped finding.Code = "coast.helped"
	codeTorn   finding.Code = "coast.jumps"
)
