package words

import (
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// ofSimulation holds what is said about invented rides.
func ofSimulation() []Entry {
	speed := finding.Speed("speed", 300*units.KMH)
	act := finding.Count("act", 3)
	return []Entry{
		{"sim.not_finite", args(finding.Text("field", "Scenario.Bike.Mass")), "{field} is not a finite number", "{field} ist keine endliche Zahl"},
		{"sim.outside", args(finding.Text("field", "Bike.Mass"), finding.Num("value", -1), finding.Text("must", "> 0")),
			"{field} is {value.3}, but must be {must}", "{field} ist {value.3}, muss aber {must} sein"},
		{"sim.bend_radius", args(act, finding.Distance("radius", 0.5)), "act {act} of the plan: the bend's radius of {radius.1} is too small", "Teil {act} des Plans: der Kurvenradius von {radius.1} ist zu klein"},
		{"sim.no_act", args(act), "act {act} of the plan is missing", "Teil {act} des Plans fehlt"},
		{"sim.no_gears", nil, "the bike has no gears; give at least one in Bike.Gears", "das Motorrad hat keine Gänge; mindestens einen in Bike.Gears angeben"},
		{"sim.no_torque", nil, "the engine has no torque; give its points in Bike.Engine.Torque", "der Motor hat kein Drehmoment; die Punkte in Bike.Engine.Torque angeben"},
		{"sim.torque_order", args(finding.Count("point", 2)), "point {point} of the torque curve is not at a higher engine speed than the one before",
			"Punkt {point} der Drehmomentkurve liegt nicht bei höherer Drehzahl als der davor"},
		{"sim.act", args(act, finding.Text("kind", "sim.Bend"), finding.Of("why", finding.New("sim.bend_not_done"))),
			"act {act} of the plan ({kind}): {why}", "Teil {act} des Plans ({kind}): {why}"},
		{"sim.engine_brake", args(finding.Speed("to", 20)), "the engine does not slow the bike to {to}", "der Motor bremst das Motorrad nicht auf {to}"},
		{"sim.clutch_slips", nil, "the clutch keeps slipping: the bike is too weak for the slope", "die Kupplung rutscht immer weiter: das Motorrad ist für die Steigung zu schwach"},
		{"sim.no_such_gear", args(finding.Count("gear", 7), finding.Count("has", 6)), "there is no gear {gear}: the bike has {has}", "es gibt keinen Gang {gear}: das Motorrad hat {has}"},
		{"sim.weak_push", args(finding.Time("after", 60), finding.Speed("at", 20)), "the push is too weak: only {at} after {after.0}", "der Schub ist zu schwach: nach {after.0} erst {at}"},
		{"sim.endless", nil, "the ride does not end", "die Fahrt endet nicht"},
		{"sim.not_reached", args(speed), "the bike does not reach {speed}: choose a lower speed or a stronger bike", "das Motorrad erreicht {speed} nicht: niedrigeres Tempo oder stärkeres Motorrad wählen"},
		{"sim.place_not_reached", args(finding.Distance("place", 400), speed), "the point at {place} is not reached at {speed}", "der Punkt bei {place} wird mit {speed} nicht erreicht"},
		{"sim.weak_braking", args(finding.Acceleration("decel", 0.1), speed), "braking at {decel.1} does not slow the bike to {speed}", "Bremsen mit {decel.1} bringt das Motorrad nicht auf {speed}"},
		{"sim.top_speed", args(finding.Speed("at", 60)), "at full throttle it reaches only {at}: choose a lower speed", "mit Vollgas erreicht es nur {at}: niedrigeres Tempo wählen"},
		{"sim.bend_not_done", nil, "the bike does not get round the bend", "das Motorrad kommt nicht um die Kurve"},
		{"sim.demo", nil, "launches, roll-ons, pulls, and coast-downs with two setups", "Starts, Durchzüge, Vollgasfahrten in einem Gang und Ausrollversuche mit zwei Aufbauten"},
		{"sim.short", nil, "two launches and one pair of coast-downs, in a few minutes", "zwei Starts und ein Paar Ausrollversuche in wenigen Minuten"},
		{"sim.coastdowns", nil, "five pairs of coast-downs, out and back", "fünf Paare Ausrollversuche, hin und zurück"},
		{"sim.spoilt", nil, "five pairs, three of them disturbed: brake, truck, gear left in", "fünf Paare, drei davon gestört: Bremse, Lastwagen, eingelegter Gang"},
		{"sim.launches", nil, "six launches beyond a quarter mile", "sechs Starts über mehr als eine Viertelmeile"},
		{"sim.rollons", nil, "six roll-ons in top gear", "sechsmal Durchzug im höchsten Gang"},
		{"sim.pulls", nil, "three pulls each way in the second highest gear", "drei Vollgasfahrten je Richtung im zweithöchsten Gang"},
		{"sim.passes", nil, "twice five kilometres at full throttle, there and back", "zweimal fünf Kilometer Vollgas, hin und zurück"},
		{"sim.town", nil, "forty minutes in town, with nothing to measure", "vierzig Minuten Stadt, in denen es nichts zu messen gibt"},
	}
}
