package fusion

import (
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Codes of the smoother's findings; export/words holds the texts.
const (
	codeNoMotion   finding.Code = "fusion.no_motion"
	codeFewMotion  finding.Code = "fusion.few_motion"
	codeSlowMotion finding.Code = "fusion.slow_motion"
	codeLagSteps   finding.Code = "fusion.lag_steps"
	codeAlone      finding.Code = "fusion.satellites_alone"
	codeLoses      finding.Code = "fusion.worse_than_alone"
	codeLosesPart  finding.Code = "fusion.worse_for_a_while"
	codeFewFixes   finding.Code = "fusion.few_fixes"
	codeAllowPlace finding.Code = "fusion.allow_location"
	codeApart      finding.Code = "fusion.clocks_apart"
	codeNotFinite  finding.Code = "fusion.not_finite"
	codeReport     finding.Code = "fusion.report_recording"

	codePhoneMoved finding.Code = "fusion.phone_moved"
	codeNoGyro     finding.Code = "fusion.no_gyroscope"
	codeBadGyro    finding.Code = "fusion.gyroscope_contradicts"
	codeLost       finding.Code = "fusion.motion_missing"
	codeFarOff     finding.Code = "fusion.fixes_far_off"
	codeSmooths    finding.Code = "fusion.receiver_smooths"
)

func fewMotion(n int) error {
	if n == 0 {
		return finding.Fail(codeNoMotion)
	}
	return finding.Fail(codeFewMotion, finding.Count("n", n))
}

// slowMotion is the error for readings that are too far apart; step in s.
func slowMotion(step float64) error {
	return finding.Fail(codeSlowMotion, finding.Time("every", step))
}

func fewFixes(n int) error {
	return &sensors.InputError{What: finding.New(codeFewFixes, finding.Count("n", n)), Remedy: finding.New(codeAllowPlace)}
}

// apart is the error for fixes and motion that do not overlap.
func apart(fixes, motion Span) error {
	return finding.Fail(codeApart, finding.Moment("fixes_from", fixes.From), finding.Moment("fixes_to", fixes.To),
		finding.Moment("motion_from", motion.From), finding.Moment("motion_to", motion.To))
}

// stage is a step of the smoother, at whose end every number must be finite.
type stage finding.Code

const (
	stageForce  stage = "fusion.stage_force"
	stageNoise  stage = "fusion.stage_noise"
	stageFilter stage = "fusion.stage_smoother"
	stageTrack  stage = "fusion.stage_track"
)

// finite returns an error if a column parallel to t holds a number that is not
// finite, so that a failed computation never becomes a result.
func (s stage) finite(t []float64, columns ...[]float64) error {
	for _, x := range columns {
		for i := range x {
			if x[i]-x[i] != 0 {
				return s.failed(t[min(i, len(t)-1)])
			}
		}
	}
	return nil
}

// failed is the error that names the stage and the time.
func (s stage) failed(at float64) error {
	return &sensors.InputError{What: finding.New(codeNotFinite, finding.Of("stage", finding.New(finding.Code(s))), finding.Moment("at", at)),
		Remedy: finding.New(codeReport)}
}
