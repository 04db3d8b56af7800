package words

import (
	"slices"

	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// ofProtocol holds the texts of the test protocol that are not findings.
func ofProtocol() []Entry {
	return slices.Concat(ofProtocolInputs(), ofProtocolResults())
}

func ofProtocolInputs() []Entry {
	reference := args(finding.Temperature("air", 20), finding.Pressure("pressure", 98210), finding.Speed("low", 15*units.KMH), finding.Speed("high", 115*units.KMH))
	return []Entry{
		{"protocol.title", nil, "Test protocol", "Versuchsprotokoll"},
		{"protocol.sign", nil, "Tested by", "Geprüft von"},
		{"protocol.place", nil, "Place, date", "Ort, Datum"},
		{"protocol.signature", nil, "Signature", "Unterschrift"},
		{"protocol.program", nil, "Program", "Programm"},
		{"protocol.recording", nil, "Recording", "Aufzeichnung"},
		{"protocol.bike", nil, "Bike", "Motorrad"},
		{"protocol.begun", nil, "Begun", "Beginn"},
		{"protocol.invented", nil, "Invented: simulated, not ridden", "Erfunden: simuliert, nicht gefahren"},
		{"protocol.method", nil, "Method", "Verfahren"},
		{"protocol.method.motion", nil, "Coast-downs in opposite pairs, clutch in. Each speed curve follows (m + m_rot)·dv/dt = −[½ρ·CdA·u|u| + m·g·Crr·(1 + k·v) + m·g·sin θ], u being the speed of the air against the bike.",
			"Ausrollversuche in gegenläufigen Paaren, Kupplung gezogen. Jede Geschwindigkeitskurve folgt (m + m_rot)·dv/dt = −[½ρ·CdA·u|u| + m·g·Crr·(1 + k·v) + m·g·sin θ]; u ist die Geschwindigkeit der Luft gegen das Fahrzeug."},
		{"protocol.method.fit", nil, "All curves are fitted at once by generalised least squares (Gauss-Newton). Gusts and the receiver's errors are learned by restricted maximum likelihood; wind and slope of each pair and the profile of the road are random effects (Henderson's mixed model).",
			"Alle Kurven werden gemeinsam nach verallgemeinerten kleinsten Quadraten angepasst (Gauß-Newton). Böen und Empfängerfehler werden mit eingeschränkter Maximum-Likelihood (REML) bestimmt; Wind und Gefälle jedes Paars und das Straßenprofil sind zufällige Effekte (gemischtes Modell nach Henderson)."},
		{"protocol.method.u", reference, "± is half of a 95 % interval (Student's t, degrees of freedom after Satterthwaite). Uncertainty is stated after the GUM (JCGM 100:2008); what is assumed and not measured enters by consider covariance analysis (Schmidt). A and C are those of F = A + C·v² in dry air of {air} and {pressure}, fitted to the force between {low} and {high}. Air density after CIPM-2007.",
			"± ist die Hälfte eines 95-%-Intervalls (Student-t, Freiheitsgrade nach Satterthwaite). Unsicherheit nach GUM (JCGM 100:2008); was angenommen und nicht gemessen ist, geht nach Schmidt ein (Consider-Kovarianzanalyse). A und C sind die von F = A + C·v² in trockener Luft von {air} und {pressure}, an die Kraft zwischen {low} und {high} angepasst. Luftdichte nach CIPM-2007."},
		{"protocol.inputs", nil, "Inputs", "Eingangsgrößen"},
		{"protocol.quantity", nil, "quantity", "Größe"},
		{"protocol.value", nil, "value", "Wert"},
		{"protocol.from", nil, "from", "Herkunft"},
		{"protocol.temperature", nil, "air temperature", "Lufttemperatur"},
		{"protocol.pressure", nil, "air pressure at the place", "Luftdruck am Ort"},
		{"protocol.humidity", nil, "relative humidity", "relative Luftfeuchte"},
		{"protocol.density", nil, "air density", "Luftdichte"},
		{"protocol.gravity", nil, "gravity", "Fallbeschleunigung"},
		{"protocol.mass", nil, "mass as ridden", "Masse, fahrfertig mit Fahrer"},
		{"protocol.rotating", nil, "rotating mass", "rotatorische Masse"},
		{"protocol.growth", nil, "growth of Crr with speed, k", "Wachstum von Crr mit dem Tempo, k"},
		{"protocol.growth.fitted", nil, "k after the fit", "k nach der Anpassung"},
		{"protocol.wind.prior", nil, "wind along the road, pair to pair (prior sd)", "Wind längs der Straße, Paar zu Paar (Vorwissen, s)"},
		{"protocol.entered", nil, "entered or measured", "eingegeben oder gemessen"},
		{"protocol.assumed", nil, "assumed", "angenommen"},
		{"protocol.computed", nil, "computed", "berechnet"},
		{"protocol.fitted", nil, "fitted", "angepasst"},
	}
}

func ofProtocolResults() []Entry {
	return []Entry{
		{"protocol.results", nil, "Results", "Ergebnisse"},
		{"protocol.setup", nil, "setup", "Aufbau"},
		{"protocol.inertia", nil, "equivalent inertia", "äquivalente träge Masse"},
		{"protocol.tyres", nil, "tyres", "Reifen"},
		{"protocol.pairs", nil, "pairs", "Paare"},
		{"protocol.conditions", nil, "Runs: conditions, results, influence", "Läufe: Bedingungen, Ergebnisse, Einfluss"},
		{"protocol.run", nil, "run", "Lauf"},
		{"protocol.pair", nil, "pair", "Paar"},
		{"protocol.way", nil, "way", "Richtung"},
		{"protocol.speeds", nil, "speeds", "Tempo"},
		{"protocol.time", nil, "time", "Dauer"},
		{"protocol.headwind", nil, "headwind", "Gegenwind"},
		{"protocol.rms", nil, "residual (rms)", "Residuum (rms)"},
		{"protocol.misfit", nil, "misfit (1 is usual)", "Abweichung (üblich: 1)"},
		{"protocol.without", nil, "CdA without it", "CdA ohne ihn"},
		{"protocol.without.pair", nil, "CdA without it", "CdA ohne das Paar"},
		{"protocol.counts", nil, "counts", "zählt"},
		{"protocol.influence", nil, "Switch off a run to see what becomes of the drag area. A single run or a whole pair is exact with the noise as learned; several are added up.",
			"Einen Lauf ausschalten zeigt, was aus der Luftwiderstandsfläche wird. Ein Lauf oder ein ganzes Paar ist bei gelerntem Rauschen exakt; mehrere werden addiert."},
		{"protocol.now", nil, "with the runs that are on", "mit den eingeschalteten Läufen"},
		{"protocol.bypair", nil, "Pairs: wind, slope, result", "Paare: Wind, Gefälle, Ergebnis"},
		{"protocol.wind", nil, "wind", "Wind"},
		{"protocol.change", nil, "change of wind", "Windänderung"},
		{"protocol.grade", nil, "mean slope", "mittleres Gefälle"},
		{"protocol.alone", nil, "CdA, this pair alone", "CdA, dieses Paar allein"},
		{"protocol.road", nil, "Profile of the road as fitted", "Straßenprofil nach Anpassung"},
		{"protocol.road.none", nil, "The road is taken as smooth: not every fix has a position, or nothing shows a profile.",
			"Die Straße gilt als eben: nicht jeder Messpunkt hat eine Position, oder nichts zeigt ein Profil."},
		{"protocol.road.figure", nil, "Slope of the road beyond each pair's mean, with its 95 % band.",
			"Gefälle der Straße über das Mittel jedes Paars hinaus, mit 95-%-Band."},
		{"protocol.along", nil, "along the road, m", "entlang der Straße, m"},
		{"protocol.slope", nil, "slope, %", "Gefälle, %"},
		{"protocol.residuals", nil, "Residuals", "Residuen"},
		{"protocol.there", nil, "one way", "hin"},
		{"protocol.back", nil, "the other way", "zurück"},
		{"protocol.opposite", nil, "half the difference (road, wind)", "halbe Differenz (Straße, Wind)"},
		{"protocol.alike", nil, "half the sum (forces)", "halbe Summe (Kräfte)"},
		{"protocol.left.figure", nil, "Residuals, measured minus fitted, averaged over all pairs by speed.",
			"Residuen, gemessen minus angepasst, über alle Paare nach Tempo gemittelt."},
		{"protocol.speed", nil, "speed", "Tempo"},
		{"protocol.residual", nil, "residual", "Residuum"},
		{"protocol.budget", nil, "Uncertainty budget of CdA", "Unsicherheitsbudget von CdA"},
		{"protocol.budget.lead", nil, "± (95 %) of each part; their squares add up to the square of the whole.",
			"± (95 %) jedes Anteils; die Quadrate ergeben zusammen das Quadrat des Ganzen."},
		{"protocol.part", nil, "part", "Anteil"},
		{"protocol.whole", nil, "whole", "Ganzes"},
		{"protocol.differences", nil, "Differences", "Differenzen"},
		{"protocol.against", nil, "against", "gegen"},
		{"protocol.difference", nil, "difference", "Differenz"},
		{"protocol.leftout", nil, "Coast-downs left out", "Ausgeschlossene Ausrollversuche"},
		{"protocol.reason", nil, "reason", "Grund"},
		{"protocol.across", nil, "Between rides", "Zwischen Fahrten"},
		{"protocol.days", nil, "Setups of different rides: air and mass are corrected for, what else differs between days is in the ±.",
			"Aufbauten verschiedener Fahrten: Luft und Masse sind berücksichtigt, was sich sonst von Tag zu Tag ändert, steckt im ±."},
		{"protocol.noload", nil, "This recording gave no road load.", "Diese Aufzeichnung ergab keinen Fahrwiderstand."},
		{"protocol.compared", nil, "Comparison", "Vergleich"},
		{"protocol.verdict", nil, "Did it help?", "Hat es geholfen?"},
	}
}
