package engine

import (
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// Codes of the reasons why no engine speed is given.
const (
	codeNoLock      finding.Code = "engine.not_found"
	codeNoRange     finding.Code = "engine.no_range"
	codeStands      finding.Code = "engine.standing"
	codeNoSuchSpeed finding.Code = "engine.no_such_speed"
	codeNoise       finding.Code = "engine.in_noise"
	codeNoOrder     finding.Code = "engine.order_missing"
	codeEdge        finding.Code = "engine.at_edge"
	codeCylinders   finding.Code = "engine.cylinders_unclear"
	codeRival       finding.Code = "engine.two_speeds"
	codeTwoGears    finding.Code = "engine.two_gears"
	codeHalves      finding.Code = "engine.halves_differ"
	codeShort       finding.Code = "engine.too_short"
	codeUneven      finding.Code = "engine.signal_uneven"
	codeNotNumber   finding.Code = "engine.signal_not_number"
	codeBackwards   finding.Code = "engine.signal_backwards"
	codeBadRatio    finding.Code = "engine.ratio_bad"
)

// refuse says why no engine speed is given; it is an ErrNoLock.
func refuse(code finding.Code, args ...finding.Arg) error {
	return finding.Fail(code, args...).Because(ErrNoLock)
}

// rivals are two engine speeds at 100 km/h that explain a pull alike, of q and r
// crank turns a metre.
func rivals(code finding.Code, q, r float64) error {
	return refuse(code, at100("one", q), at100("other", r), finding.Speed("at", 100*units.KMH))
}

// at100 is the engine speed at 100 km/h of q crank turns a metre.
func at100(name string, q float64) finding.Arg {
	return finding.EngineSpeed(name, q*60*100*units.KMH)
}
