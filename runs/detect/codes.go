package detect

import "stillair/sensors/finding"

// Codes of the findings about a run.
const (
	codeLaunchShort   finding.Code = "launch.too_short"
	codeLaunchPartial finding.Code = "launch.part_throttle"
	codeLaunchSlow    finding.Code = "launch.slow"
	codeRollOnShort   finding.Code = "rollon.too_short"
	codeEased         finding.Code = "throttle.eased"
	codeStopWeak      finding.Code = "stop.weak"

	codeCoastShort    finding.Code = "coast.too_short"
	codeNotSmooth     finding.Code = "coast.not_smooth"
	codeTooHard       finding.Code = "coast.too_hard"
	codeTooLittle     finding.Code = "coast.too_little"
	codeTooHardFast   finding.Code = "coast.too_hard_fast"
	codeTooLittleFast finding.Code = "coast.too_little_fast"
	codeTooLittleSlow finding.Code = "coast.too_little_slow"
	codeBends         finding.Code = "coast.bends"
	codeSomeBends     finding.Code = "coast.some_bends"
	codeEngineTurns   finding.Code = "coast.engine_turns"
	codeInGear        finding.Code = "coast.in_gear"
	codeUnlike        finding.Code = "coast.unlike_others"
	codePart          finding.Code = "coast.part"
	codeBraked        finding.Code = "coast.braked"
	codePushed        finding.Code = "coast.pushed"
	codeDisturbed     finding.Code = "coast.disturbed"

	codeNoFixes     finding.Code = "run.no_fixes"
	codeHole        finding.Code = "run.hole"
	codeHoleAtStart finding.Code = "run.hole_at_start"
	codeHoleBridged finding.Code = "run.hole_bridged"
	codeUnfelt      finding.Code = "run.not_felt"
	codeGNSSOnly    finding.Code = "run.satellites_alone"
	codePhoneMoved  finding.Code = "run.phone_moved"
)
