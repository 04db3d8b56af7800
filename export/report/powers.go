package report

import (
	"fmt"

	"stillair/export/report/figure"
	"stillair/export/shown"
	"stillair/runs"
)

// power is one power curve in words, above the picture of all.
type power struct {
	Setup, Peak string
	Notes       []string
}

func powers(r *runs.Result, u shown.System) []power {
	var out []power
	for _, p := range r.Powers {
		if p.Curve == nil || len(p.Curve.Speed) == 0 {
			continue
		}
		speed, peak, atEnd := p.Curve.Peak()
		text := fmt.Sprintf("at most %s at %s", u.PlusMinus(shown.Power, peak.X, half(peak)), u.Number(shown.Speed, speed, 0))
		if rpm := rpmAt(p, speed); rpm > 0 {
			text += fmt.Sprintf(" (%.0f/min)", rpm)
		}
		if atEnd {
			text += ", where the pulls ended: the peak may lie beyond"
		}
		text += fmt.Sprintf("; from %s", plural(len(p.Curve.Pulls), "pull"))
		out = append(out, power{Setup: figure.PowerName(p), Peak: text, Notes: sentences(p.Notes)})
	}
	return out
}

func rpmAt(p runs.PowerCurve, speed float64) float64 {
	if !(p.RPMPerMPS > 0) {
		return 0
	}
	return p.RPMPerMPS * speed
}
