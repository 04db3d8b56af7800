package runs

import (
	"errors"

	"stillair/sensors/finding"
)

// What is said of a ride, its power and its pairs.
const (
	codeUsualLag        finding.Code = "ride.usual_lag"
	codeNoCourse        finding.Code = "ride.no_course"
	codeNoCurve         finding.Code = "power.no_curve"
	codeOneWay          finding.Code = "power.one_way"
	codeBelowEnvelope   finding.Code = "power.below_envelope"
	codeWeakRollOn      finding.Code = "rollon.weaker"
	codeRevsSplit       finding.Code = "power.revs_split"
	codeNoGear          finding.Code = "power.no_gear"
	codeOthersLoad      finding.Code = "power.others_load"
	codeUsualLoad       finding.Code = "power.usual_load"
	codeByBands         finding.Code = "power.by_bands"
	codeOtherRejected   finding.Code = "pair.other_rejected"
	codeNotPaired       finding.Code = "coast.not_paired"
	codeImpossible      finding.Code = "load.impossible"
	codeImpossibleRun   finding.Code = "coast.impossible_outcome"
	codeNoRoadLoad      finding.Code = "load.none"
	codeUsualMass       finding.Code = "ride.usual_mass"
	codeNotMeasured     finding.Code = "load.not_measured"
	codeFewRides        finding.Code = "compare.few_rides"
	codeOtherDay        finding.Code = "compare.other_day"
	codeSameRecording   finding.Code = "compare.same_recording"
	codeTwoRecordings   finding.Code = "compare.two_recordings"
	codeDifferentBikes  finding.Code = "compare.different_bikes"
	codeOneBike         finding.Code = "compare.one_bike"
	codeOtherBike       finding.Code = "compare.other_bike"
	codeTyresAlike      finding.Code = "compare.tyres_alike"
	codeNoPairs         finding.Code = "load.no_pairs"
	codeWindChanged     finding.Code = "coast.wind_changed"
	codeLeftOut         finding.Code = "coast.left_out"
	codeHeavier         finding.Code = "compare.heavier_by_pulls"
	codeLighter         finding.Code = "compare.lighter_by_pulls"
	codeByPulls         finding.Code = "budget.by_pulls"
	codeMassAsked       finding.Code = "compare.mass_not_entered"
	codeTwoParts        finding.Code = "load.two_parts"
	codeCrossWind       finding.Code = "load.cross_wind"
	codeCrossWindStrong finding.Code = "load.cross_wind_strong"
	codeSeaLevel        finding.Code = "air.sea_level"
	codeMaybeSeaLevel   finding.Code = "air.maybe_sea_level"
	codeBarometer       finding.Code = "air.barometer_differs"
	codeOnePair         finding.Code = "compare.one_pair"
	codeDays            finding.Code = "budget.days"
	codeOppositeLeft    finding.Code = "residual.opposite"
	codeAlikeLeft       finding.Code = "residual.alike"
	codeNothingLeft     finding.Code = "residual.none"
)

// said is the finding of an error.
func said(err error) finding.Finding {
	var e *finding.Error
	if errors.As(err, &e) {
		return e.Finding
	}
	return finding.Said(err.Error())
}
