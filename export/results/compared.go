package results

import (
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/compare"
)

func fromComparison(say *words.Book, c runs.Comparison) Comparison {
	out := Comparison{A: c.A, B: c.B, Notes: say.Texts(c.Notes), Verdict: "drag was not compared"}
	if v := c.CdA; v != nil {
		out.DeltaCdA, out.SE = value(v.Delta)
		out.CI, out.P, out.Finding = pair(v.CI), number(v.P, 3), say.Name(v.Finding)
		out.Percent, out.PercentCI = number(v.Percent, 4), pair(v.CIPercent)
		verdict := words.Verdict(c.B, words.Drag(), *v)
		out.Verdict = say.Say(verdict)
		out.Findings = append(out.Findings, findingOf(say, "verdict", verdict))
	}
	out.Findings = append(out.Findings, findingsOf(say, "note", c.Notes)...)
	if v := c.Crr; v != nil {
		out.DeltaCrr, out.DeltaCrrSE = value(v.Delta)
		out.Others = append(out.Others, judged(say, "rolling resistance", *v))
	}
	if v := c.Power; v != nil {
		out.Others = append(out.Others, judged(say, "power", *v))
	}
	for _, t := range c.Times {
		out.Others = append(out.Others, judged(say, t.Mark, t.Verdict))
	}
	return out
}

func judged(say *words.Book, quantity string, v compare.Verdict) Judged {
	return Judged{Quantity: quantity, Finding: say.Name(v.Finding), P: number(v.P, 3), Percent: number(v.Percent, 4), PercentCI: pair(v.CIPercent)}
}

func fromPower(say *words.Book, p runs.PowerCurve) Power {
	out := Power{Setup: p.Setup, Gear: p.Gear, RPMFrom: say.Name(p.RevsFrom), Correction: number(p.Correction, digits), Notes: say.Texts(p.Notes), Findings: findingsOf(say, "note", p.Notes),
		Speed: []float64{}, Power: []float64{}, PowerSE: []float64{}}
	c := p.Curve
	if c == nil {
		return out
	}
	if out.Runs = c.Pulls; len(c.Pulls) > 0 {
		out.Run = c.Pulls[0]
	}
	rpm := p.RPM()
	for i, v := range c.Speed {
		speed, power, se := number(v, digits), number(c.Power[i].X, digits), number(c.Power[i].SE, seDigits)
		if speed == nil || power == nil || se == nil {
			continue // parallel arrays cannot have missing values
		}
		out.Speed, out.Power, out.PowerSE = append(out.Speed, *speed), append(out.Power, *power), append(out.PowerSE, *se)
		if i < len(rpm) {
			out.RPM = append(out.RPM, *number(rpm[i], digits))
		}
	}
	return out
}
