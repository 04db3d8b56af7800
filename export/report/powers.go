package report

import (
	"math"

	"stillair/export/report/figure"
	"stillair/runs"
	"stillair/runs/air"
	"stillair/sensors/finding"
)

// power is one power curve in words, above the picture of all.
type power struct {
	Setup, Peak string
	Standard    string // the value in standard air
	Notes       []string
}

func (t *teller) powers(r *runs.Result) []power {
	var out []power
	for _, p := range r.Powers {
		if p.Curve == nil || len(p.Curve.Speed) == 0 {
			continue
		}
		speed, peak, atEnd := p.Curve.Peak()
		key := "peak"
		if atEnd {
			key = "peak_at_end"
		}
		text := t.fill(key, finding.Power("power", peak.X).With(peak.SE), finding.Speed("speed", speed), finding.Count("pulls", len(p.Curve.Pulls)))
		if p.RPMPerMPS > 0 {
			text += "; " + t.fill("engine_speed", finding.EngineSpeed("revs", p.RPMPerMPS*speed))
		}
		out = append(out, power{Setup: figure.PowerName(t.book, p), Peak: text, Standard: t.standardAir(r, p), Notes: t.book.Sentences(p.Notes)})
	}
	return out
}

// standardAir describes a curve corrected to standard air. The corrections are
// defined for the engine's power.
func (t *teller) standardAir(r *runs.Result, p runs.PowerCurve) string {
	a := r.Ride.Air
	iso := air.ISO1585(a.Pressure-air.VapourPressure(a.Temperature, a.Pressure, a.Humidity), a.Temperature)
	if !(p.Correction > 0) || !(iso > 0) || math.IsInf(iso, 0) {
		return ""
	}
	text := t.fill("standard", finding.Num("sae", p.Correction), finding.Num("iso", iso))
	if !air.Vouched(p.Correction, a.Temperature) || !air.Vouched(iso, a.Temperature) {
		text += "; " + t.text("standard_far")
	}
	return text + "."
}
