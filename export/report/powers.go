package report

import (
	"fmt"
	"math"

	"stillair/export/report/figure"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/air"
)

// power is one power curve in words, above the picture of all.
type power struct {
	Setup, Peak string
	Standard    string // what standard air makes of it
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
		out = append(out, power{Setup: figure.PowerName(p), Peak: text, Standard: standardAir(r, p), Notes: words.ForMachines().Sentences(p.Notes)})
	}
	return out
}

// standardAir says what the corrections to standard air would make of a curve.
// They are meant for the engine's power.
func standardAir(r *runs.Result, p runs.PowerCurve) string {
	a := r.Ride.Air
	iso := air.ISO1585(a.Pressure-air.VapourPressure(a.Temperature, a.Pressure, a.Humidity), a.Temperature)
	if !(p.Correction > 0) || !(iso > 0) || math.IsInf(iso, 0) {
		return ""
	}
	text := fmt.Sprintf("Shown as ridden, in the air of the day. To standard air: × %s after SAE J1349, × %s after ISO 1585", shown.Fixed(p.Correction, 3), shown.Fixed(iso, 3))
	if !air.Vouched(p.Correction, a.Temperature) || !air.Vouched(iso, a.Temperature) {
		text += "; the day was further from standard air than either is meant for"
	}
	return text + "."
}

func rpmAt(p runs.PowerCurve, speed float64) float64 {
	if !(p.RPMPerMPS > 0) {
		return 0
	}
	return p.RPMPerMPS * speed
}
