package words

import "stillair/sensors/finding"

// ofFusion holds what package fusion says.
func ofFusion() []Entry {
	n := finding.Count("n", 12)
	return []Entry{
		{"fusion.no_motion", nil, "there are no accelerometer readings; allow the phone's motion sensors",
			"es gibt keine Messwerte des Beschleunigungssensors; die Bewegungssensoren des Telefons erlauben"},
		{"fusion.slow_motion", args(finding.Time("every", 0.5)), "the accelerometer was read only every {every.1}",
			"der Beschleunigungssensor wurde nur alle {every.1} gelesen"},
		{"fusion.satellites_alone", args(finding.Of("why", finding.New("mount.no_direction"))),
			"all speeds are GPS alone, without the accelerometer: {why}. Coast-downs hardly suffer, but launches and stops cannot be timed",
			"alle Geschwindigkeiten stammen allein aus dem GPS, ohne den Beschleunigungssensor: {why}. Ausrollversuche leiden kaum, aber Starts und Bremsungen lassen sich nicht stoppen"},
		{"fusion.worse_than_alone", args(finding.Speed("fused", 0.9), finding.Speed("alone", 0.4)),
			"it does not fit the GPS speeds: each one left out was missed by {fused.1} with it and by {alone.1} without it",
			"er passt nicht zu den GPS-Geschwindigkeiten: Jede einzelne, weggelassen, wurde mit ihm um {fused.1} verfehlt und ohne ihn um {alone.1}"},
		{"fusion.worse_for_a_while", nil, "for a while the accelerometer does not fit the GPS speeds, so these count alone",
			"eine Zeit lang passt der Beschleunigungssensor nicht zu den GPS-Geschwindigkeiten, daher zählen nur diese"},
		{"fusion.few_motion", args(n), "{n|there is only one usable accelerometer reading|there are only # usable accelerometer readings}",
			"{n|es gibt nur einen brauchbaren Messwert des Beschleunigungssensors|es gibt nur # brauchbare Messwerte des Beschleunigungssensors}"},
		{"fusion.few_fixes", args(n), "{n|there is only one usable GPS speed|there are only # usable GPS speeds}",
			"{n|es gibt nur eine brauchbare GPS-Geschwindigkeit|es gibt nur # brauchbare GPS-Geschwindigkeiten}"},
		{"fusion.allow_location", nil, "let the phone use its location and record under open sky",
			"dem Telefon den Standort erlauben und unter freiem Himmel aufzeichnen"},
		{"fusion.clocks_apart", args(finding.Moment("fixes_from", 1000), finding.Moment("fixes_to", 1060), finding.Moment("motion_from", 0), finding.Moment("motion_to", 60)),
			"the GPS speeds ({fixes_from~.0} to {fixes_to.0}) and the motion readings ({motion_from~.0} to {motion_to.0}) do not overlap in time",
			"die GPS-Geschwindigkeiten ({fixes_from~.0} bis {fixes_to.0}) und die Bewegungsdaten ({motion_from~.0} bis {motion_to.0}) überschneiden sich zeitlich nicht"},
		{"fusion.not_finite", args(finding.Of("stage", finding.New("fusion.stage_track")), finding.Moment("at", 12)),
			"the calculation failed at {at.0} (stage: {stage})", "die Berechnung ist bei {at.0} gescheitert (Schritt: {stage})"},
		{"fusion.stage_force", nil, "force along the road", "Kraft längs der Straße"},
		{"fusion.stage_noise", nil, "sizes of the errors", "Größe der Fehler"},
		{"fusion.stage_smoother", nil, "speed of the whole ride", "Geschwindigkeit der ganzen Fahrt"},
		{"fusion.stage_track", nil, "motion and its uncertainty", "Bewegung und ihre Unsicherheit"},
		{"fusion.report_recording", nil, "please report this and keep the recording", "bitte melden und die Aufzeichnung aufheben"},
		{"fusion.phone_moved", args(finding.Moment("at", 130)), "the phone moved in its holder at about {at.0}; its direction was found again",
			"das Telefon hat sich bei etwa {at.0} in der Halterung bewegt; seine Ausrichtung wurde neu bestimmt"},
		{"fusion.no_gyroscope", nil, "there is no gyroscope: the bike's pitch and its turns cannot be measured",
			"kein Gyroskop: Nicken und Kurven des Motorrads lassen sich nicht messen"},
		{"fusion.gyroscope_contradicts", nil, "the gyroscope contradicts the accelerometer and is left out; its axes or its unit may not be what the recording says",
			"das Gyroskop widerspricht dem Beschleunigungssensor und bleibt außen vor; seine Achsen oder seine Einheit stimmen vielleicht nicht mit der Aufzeichnung überein"},
		{"fusion.motion_missing", args(finding.Time("time", 3.2), finding.Count("n", 4)), "motion readings are missing for {time.1}{n| in one place| in # places}",
			"Bewegungsdaten fehlen für {time.1}{n| an einer Stelle| an # Stellen}"},
		{"fusion.fixes_far_off", args(n, finding.Count("of", 300)), "{n} of {of} GPS speeds are far off and count for little",
			"{n} von {of} GPS-Geschwindigkeiten liegen weit daneben und zählen kaum"},
		{"fusion.receiver_smooths", args(finding.Time("over", 0.5).With(0.05)), "the GPS receiver smooths its speeds over about {over.1}, which is allowed for",
			"der GPS-Empfänger glättet seine Geschwindigkeiten über etwa {over.1}; das ist berücksichtigt"},
		{"mount.no_direction", nil, "no change of speed was seen by both the accelerometer and GPS, so the direction of travel cannot be found; change speed briskly a few times on a straight road",
			"keine Änderung der Geschwindigkeit war sowohl im Beschleunigungssensor als auch im GPS zu sehen, daher ist die Fahrtrichtung nicht bestimmbar; auf gerader Straße mehrmals zügig das Tempo ändern"},
	}
}
