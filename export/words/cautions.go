package words

import "stillair/sensors/finding"

// The cautions that go with a test.
const (
	codeCautionRevs     finding.Code = "caution.revs"
	codeCautionWobble   finding.Code = "caution.wobble"
	codeCautionNoCoast  finding.Code = "caution.cannot_coast"
	codeCautionStopping finding.Code = "caution.stopping"
	codeCautionRoom     finding.Code = "caution.room"
	codeCautionCourse   finding.Code = "caution.closed_course"
	codeCautionLaw      finding.Code = "caution.law"
	codeCautionTop      finding.Code = "caution.top_speed"
)

// CoastCautions are the cautions of coast-downs, in the order in which a rider
// meets them.
func CoastCautions() []finding.Finding {
	return findings(codeCautionLaw, codeCautionNoCoast, codeCautionWobble, codeCautionStopping, codeCautionRevs)
}

// ThrottleCautions are those of runs on full throttle.
func ThrottleCautions() []finding.Finding {
	return findings(codeCautionCourse, codeCautionLaw, codeCautionWobble, codeCautionRoom)
}

func findings(codes ...finding.Code) []finding.Finding {
	var out []finding.Finding
	for _, c := range codes {
		out = append(out, finding.New(c))
	}
	return out
}

// ofCautions has what is common knowledge among riding instructors.
func ofCautions() []Entry {
	return []Entry{
		{codeCautionLaw, nil, "local law and the traffic come before any test; in doubt ask someone qualified",
			"örtliches Recht und der Verkehr gehen jedem Versuch vor; im Zweifel Leute vom Fach fragen"},
		{codeCautionNoCoast, nil, "not every bike can roll free: some automatics, scooters with a belt drive and electric bikes slow down on their own; do not switch anything off to make them roll",
			"nicht jede Maschine kann frei rollen: manche Automatik, Roller mit Riemenautomatik und Elektromaschinen bremsen von selbst; nichts abschalten, damit sie rollen"},
		{codeCautionWobble, nil, "lying flat or holding still can make the bars start to wobble: keep a light grip, do not brake hard, let the speed fall, sit up slowly",
			"wer flach liegt oder ganz stillhält, kann den Lenker zum Pendeln bringen: locker halten, nicht hart bremsen, Tempo abfallen lassen, langsam aufrichten"},
		{codeCautionStopping, nil, "leave room to stop at either end, with a margin: with the clutch in there is no engine braking; keep two fingers on the brake",
			"an beiden Enden Platz zum Anhalten lassen, mit Reserve: mit gezogener Kupplung bremst kein Motor mit; zwei Finger an der Bremse"},
		{codeCautionRoom, nil, "leave room to brake at either end, with a margin", "an beiden Enden Platz zum Bremsen lassen, mit Reserve"},
		{codeCautionRevs, nil, "before the clutch is let out again, choose the gear for the speed and bring up the revs: otherwise the rear wheel locks",
			"bevor die Kupplung wieder greift, den Gang zum Tempo wählen und Gas geben, bis die Drehzahl passt: sonst blockiert das Hinterrad"},
		{codeCautionTop, nil, "top speed is for closed courses only, with room to stop at either end",
			"Höchstgeschwindigkeit nur auf abgesperrter Strecke fahren, mit Auslauf an beiden Enden"},
		{codeCautionCourse, nil, "full throttle belongs on a closed course, with qualified people at hand",
			"Vollgas gehört auf eine gesperrte Strecke, mit Leuten vom Fach in der Nähe"},
	}
}
