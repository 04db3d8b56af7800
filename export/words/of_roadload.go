package words

import (
	"slices"

	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// ofRoadLoad holds what is said about the road load: by its fit, by package runs
// about air, mass and pairs, and by package effect about what a change means.
func ofRoadLoad() []Entry {
	return slices.Concat(ofNames(), ofFitErrors(), ofFitNotes(), ofFitRuns(), ofBudgets(), ofAirAndMass(), ofEffect())
}

func ofFitErrors() []Entry {
	why := finding.Of("why", finding.New("load.few_fixes"))
	return []Entry{
		{"load.never_rolls_free", nil, "this bike never rolls free of its drive, so there is no road load; launches, roll-ons and pulls on full throttle can be measured",
			"dieses Motorrad rollt nie frei von seinem Antrieb, daher gibt es keinen Fahrwiderstand; Starts, Durchzüge und Vollgasfahrten lassen sich messen"},
		{"load.no_pairs", nil, "no two coast-downs belong together as a pair of opposite runs, so there is no road load: ride the same stretch in both directions, one soon after the other",
			"keine zwei Ausrollversuche bilden ein Paar hin und zurück, darum gibt es keinen Fahrwiderstand: dieselbe Strecke kurz nacheinander in beiden Richtungen fahren"},
		{"load.no_runs", nil, "there is no coast-down to work with", "es gibt keinen Ausrollversuch, mit dem sich rechnen lässt"},
		{"load.one_direction", nil, "no coast-down has a partner in the other direction: ride the road both ways, otherwise wind and slope look like drag",
			"kein Ausrollversuch hat ein Gegenstück in der anderen Richtung: die Straße in beiden Richtungen fahren, sonst sehen Wind und Gefälle aus wie Luftwiderstand"},
		{"load.no_mass", nil, "the mass of bike and rider is not known: weigh them as ridden",
			"die Masse von Maschine und Fahrer ist nicht bekannt: fahrfertig wiegen"},
		{"load.no_density", nil, "the density of the air is not known: enter temperature and pressure",
			"die Luftdichte ist nicht bekannt: Temperatur und Luftdruck eingeben"},
		{"load.speed_range", nil, "the coast-downs cover too small a range of speed to separate drag from rolling resistance: use a longer road",
			"die Ausrollversuche decken einen zu kleinen Bereich der Geschwindigkeit ab, um Luft- und Rollwiderstand zu trennen: eine längere Strecke nehmen"},
		{"load.few_fixes", nil, "the coast-down holds too few usable fixes", "der Ausrollversuch enthält zu wenige brauchbare Positionen"},
		{"load.no_fit", nil, "the coast-downs do not agree with any drag area and rolling resistance",
			"die Ausrollversuche passen zu keiner Luftwiderstandsfläche und keinem Rollwiderstand"},
		{"load.bad_options", nil, "the expected wind, slope and noise must be greater than zero",
			"erwarteter Wind, Gefälle und Rauschen müssen größer als null sein"},
		{"load.undetermined", nil, "the coast-downs do not determine a road load", "die Ausrollversuche legen keinen Fahrwiderstand fest"},
		{"load.of_run", args(finding.Count("run", 3), why), "run {run~}: {why}", "Lauf {run~}: {why}"},
		{"load.of_setup", args(finding.Count("setup", 2), why), "setup {setup~}: {why}", "Aufbau {setup~}: {why}"},
		{"compare.too_few", nil, "a comparison needs at least two runs of each setup", "ein Vergleich braucht mindestens zwei Läufe je Aufbau"},
	}
}

func ofFitNotes() []Entry {
	slope := finding.Share("slope", 0.002)
	return []Entry{
		{"load.two_parts", args(finding.Area("noise", 0.551).With(0.009), finding.Area("assumed", 0.551).With(0.04)),
			"from noise alone CdA is {noise±}; with the assumptions about tyres, cross-wind and posture alone {assumed±}, and most of that cancels between setups",
			"allein vom Rauschen her ist CdA {noise±}; allein durch die Annahmen zu Reifen, Seitenwind und Haltung {assumed±}; davon hebt sich zwischen Aufbauten das meiste auf"},
		{"load.at_20", args(finding.Temperature("reference", 20), finding.Temperature("at", 8), finding.Num("crr", 0.0164).With(0.0011), finding.Force("a", 46.2).With(3.1)),
			"measured at {at.0}; at {reference.0}, to compare with other days, the same tyres have Crr {crr±} and A {a±}",
			"bei {at.0} gemessen; bei {reference.0}, zum Vergleich mit anderen Tagen, haben dieselben Reifen Crr {crr±} und A {a±}"},
		{"load.cross_wind", args(finding.Wind("across", 1.2).With(0.5)),
			"wind across the road, by the weather station: {across±}",
			"Wind quer zur Straße nach der Wetterstation: {across±}"},
		{"load.cross_wind_strong", args(finding.Wind("across", 3.1).With(1.2), finding.Wind("limit", 2.2)),
			"wind across the road, by the weather station: {across±}, more than the {limit.1} that coast-down standards allow: the ± of CdA and Crr is therefore wide",
			"Wind quer zur Straße nach der Wetterstation: {across±}, mehr als die {limit.1}, die Ausrollnormen zulassen: das ± von CdA und Crr ist deshalb breit"},
		{"load.growth", args(finding.Share("growth", 0.011), finding.Speed("over", 10*units.KMH)),
			"rolling resistance is assumed to grow by {growth.1} for each {over}; the ± of CdA and Crr allows for tyres that grow faster",
			"der Rollwiderstand wächst nach Annahme um {growth.1} je {over}; das ± von CdA und Crr deckt Reifen ab, bei denen er schneller wächst"},
		{"load.gusty", args(finding.Wind("gusts", 1.2), finding.Num("times", 2.5)),
			"it was gusty: gusts of {gusts.1}, {times.1} times what the wind entered makes likely",
			"es war böig: Böen von {gusts.1}, das {times.1}fache dessen, was der eingegebene Wind erwarten lässt"},
		{"load.posture_varies", args(finding.Share("by", 0.05)),
			"the drag area differed from run to run by about {by.0}, more than wind and receiver explain, as if the rider sat differently: the ± allows for it. Keep head, elbows and knees in the same place in every run to make it smaller",
			"die Luftwiderstandsfläche war von Lauf zu Lauf um etwa {by.0} verschieden, mehr als Wind und Empfänger erklären, als hätte der Fahrer jedes Mal anders gesessen: das ± berücksichtigt das. Wer Kopf, Ellbogen und Knie in jedem Lauf gleich hält, macht es kleiner"},
		{"load.no_places", nil, "not every fix has a position, so an uneven road is hard to tell from drag: the ± allows for one as far as the runs show it, and positions in every fix would make it smaller",
			"nicht jeder Messpunkt hat eine Position, darum ist eine unebene Straße schwer vom Luftwiderstand zu trennen: das ± berücksichtigt sie, soweit die Läufe sie zeigen; mit allen Positionen würde es kleiner"},
		{"load.maybe_smooth", args(finding.Share("slope", 0.001)),
			"not every fix has a position; the runs agree as they would on a smooth road, but a road whose slope varies by less than about {slope.1} would look the same",
			"nicht jeder Messpunkt hat eine Position; die Läufe passen zu einer ebenen Straße, aber eine, deren Gefälle um weniger als etwa {slope.1} schwankt, sähe genauso aus"},
		{"load.rough", args(slope), "the road is uneven: its slope seems to vary by about {slope.2}",
			"die Straße ist uneben: ihr Gefälle schwankt anscheinend um etwa {slope.2}"},
		{"load.rough_barometer", args(slope), "the road is uneven: its slope varies by about {slope.2}, found from all runs and the barometer",
			"die Straße ist uneben: ihr Gefälle schwankt um etwa {slope.2}, ermittelt aus allen Läufen und dem Barometer"},
		{"load.rough_apart", args(slope), "the road is uneven: its slope varies by about {slope.2}, found from all runs, which start in different places",
			"die Straße ist uneben: ihr Gefälle schwankt um etwa {slope.2}, ermittelt aus allen Läufen, die an verschiedenen Stellen beginnen"},
		{"load.rough_same_places", args(slope),
			"the road is uneven: its slope varies by about {slope.2}. A phone with a barometer would separate it from drag better, and so would pairs that each start some way farther on than the one before, at the same places with every setup",
			"die Straße ist uneben: ihr Gefälle schwankt um etwa {slope.2}. Ein Telefon mit Barometer könnte sie besser vom Luftwiderstand trennen, ebenso Paare, die jeweils ein Stück weiter beginnen als das vorige, mit jedem Aufbau an denselben Stellen"},
		{"load.uncertain", args(finding.Share("se", 0.22), finding.Count("setup", 1)),
			"setup {setup~}: wind, gusts and receiver leave the drag area uncertain by {se.0} (95 %): more pairs, a longer road or a calmer day would help",
			"Aufbau {setup~}: Wind, Böen und Empfänger lassen die Luftwiderstandsfläche um {se.0} offen (95 %): mehr Paare, eine längere Strecke oder ein ruhigerer Tag helfen"},
		{"load.wind_changed", args(finding.Wind("by", 1.4).With(0.3), finding.Count("pair", 2), finding.Count("first", 3), finding.Count("second", 4)),
			"the wind along the road changed by {by±} between the two runs of pair {pair~} (runs {first~} and {second~}): that pair counts for less",
			"der Wind längs der Straße änderte sich um {by±} zwischen den beiden Läufen von Paar {pair~} (Läufe {first~} und {second~}): dieses Paar zählt weniger"},
		{"load.pairs_disagree", args(finding.Count("pairs", 3)),
			"the pairs disagree by more than gusts explain, as when the wind changes between two runs: in {pairs|1 of them|# of them} such a change could not be detected, and all count for less",
			"die Paare weichen stärker voneinander ab, als Böen erklären, etwa weil der Wind zwischen zwei Läufen drehte: bei {pairs|1 davon|# davon} wäre eine solche Änderung nicht zu erkennen, darum zählen alle weniger"},
		{"load.tyres_warmed", args(finding.Share("by", 0.14).With(0.04)),
			"in the first run rolling resistance was {by±} higher than with warm tyres. Differences between setups are corrected for it; for absolute figures, warm the tyres up before the first coast-down",
			"im ersten Lauf war der Rollwiderstand um {by±} höher als mit warmen Reifen. Unterschiede zwischen Aufbauten sind darum korrigiert; für absolute Werte die Reifen vor dem ersten Ausrollen warm fahren"},
		{"load.tyres_in_general", args(finding.Num("crr", 0.018).With(0.008)),
			"these coast-downs show the force well, but hardly how it divides between air and tyres. Crr relies on what is usual for tyres, {crr±}: longer coast-downs, down to a lower speed, would show it",
			"diese Ausrollversuche zeigen die Kraft gut, aber kaum, wie sie sich auf Luft und Reifen verteilt. Crr stützt sich auf übliche Reifenwerte, {crr±}: längere Läufe bis zu niedrigerem Tempo würden es zeigen"},
		{"load.simpler_fit", nil, "the unevenness of the road could not be found from these runs: the ± is wider to allow for it",
			"die Unebenheit der Straße ließ sich aus diesen Läufen nicht bestimmen: das ± ist deshalb breiter"},
	}
}

func ofFitRuns() []Entry {
	return []Entry{
		{"coast.slowed_suddenly", nil, "the bike slowed more suddenly than rolling and wind explain: a touch of the brake, or the bow wave of a passing vehicle",
			"die Maschine verlor plötzlich mehr Tempo, als Rollen und Wind erklären: kurz gebremst, oder die Bugwelle eines Fahrzeugs"},
		{"coast.eased_suddenly", nil, "the bike suddenly slowed less than rolling and wind explain: throttle, or the wake of a passing vehicle",
			"die Maschine verlor plötzlich weniger Tempo, als Rollen und Wind erklären: Gas, oder der Sog eines Fahrzeugs"},
		{"coast.held_back", nil, "the bike slowed much more than in the other runs: a gear left in, a dragging brake, or another posture",
			"die Maschine wurde viel stärker gebremst als in den anderen Läufen: ein Gang drin, eine schleifende Bremse oder eine andere Haltung"},
		{"coast.helped", nil, "the bike slowed much less than in the other runs: throttle, slipstream, or another posture",
			"die Maschine wurde viel weniger gebremst als in den anderen Läufen: Gas, Windschatten oder eine andere Haltung"},
		{"coast.jumps", nil, "the speed jumps again and again in ways that coasting does not explain",
			"die Geschwindigkeit springt immer wieder, wie es beim Ausrollen nicht sein kann"},
		{"coast.wind_changed", args(finding.Wind("by", 1.4).With(0.3)),
			"the wind along the road changed by about {by±} between this run and the one the other way, so the two count for less",
			"der Wind längs der Straße änderte sich um etwa {by±} zwischen diesem Lauf und dem in Gegenrichtung, darum zählen beide weniger"},
		{"coast.left_out", args(finding.Time("for", 1.5), at(62), finding.Of("why", finding.New("coast.slowed_suddenly"))),
			"{for.1} were left out at {at}: {why}", "{for.1} bei {at} wurden weggelassen: {why}"},
	}
}

func ofAirAndMass() []Entry {
	pressures := args(finding.Pressure("entered", 101300), finding.Distance("altitude", 1500), finding.Pressure("local", 84500))
	return []Entry{
		{"air.sea_level", pressures,
			"the pressure entered, {entered}, is that of sea level; at {altitude.0} it is about {local}, which is used. Enter the pressure of the place itself",
			"der eingegebene Luftdruck, {entered}, gilt auf Meereshöhe; auf {altitude.0} sind es etwa {local}, und damit wird gerechnet. Bitte den Druck am Ort eingeben"},
		{"air.maybe_sea_level", pressures,
			"is {entered} the pressure at the place, or that of sea level? At {altitude.0} the latter would make {local} at the place. The ± allows for both",
			"sind {entered} der Druck am Ort oder auf Meereshöhe? Auf {altitude.0} wären es dann {local} am Ort. Das ± deckt beides ab"},
		{"air.barometer_differs", args(finding.Pressure("entered", 101300), finding.Pressure("measured", 98900)),
			"the pressure entered, {entered}, is not what the phone's barometer shows, {measured}: the barometer is used",
			"der eingegebene Luftdruck, {entered}, ist nicht der, den das Barometer des Telefons zeigt, {measured}: verwendet wird das Barometer"},
		{"compare.heavier_by_pulls", args(finding.Text("setup", "luggage"), finding.Share("thrust", 0.065), finding.Mass("load", 20).With(5), finding.Share("corrected", 0.041)),
			"with {setup} the bike gains speed at full throttle as if it had {thrust.1} less thrust. If nothing was done to the engine, the bike is {load} heavier than entered, and the change of drag would be {corrected.1}: weigh it with {setup} and enter that",
			"bei Vollgas beschleunigt das Motorrad mit {setup}, als hätte es {thrust.1} weniger Schub. Wurde am Motor nichts geändert, ist das Motorrad um {load} schwerer als eingegeben, und die Änderung des Luftwiderstands wäre {corrected.1}: mit {setup} wiegen und das Gewicht eingeben"},
		{"compare.lighter_by_pulls", args(finding.Text("setup", "no luggage"), finding.Share("thrust", 0.065), finding.Mass("load", 20).With(5), finding.Share("corrected", -0.041)),
			"with {setup} the bike gains speed at full throttle as if it had {thrust.1} more thrust. If nothing was done to the engine, the bike is {load} lighter than entered, and the change of drag would be {corrected.1}: weigh it with {setup} and enter that",
			"bei Vollgas beschleunigt das Motorrad mit {setup}, als hätte es {thrust.1} mehr Schub. Wurde am Motor nichts geändert, ist das Motorrad um {load} leichter als eingegeben, und die Änderung des Luftwiderstands wäre {corrected.1}: mit {setup} wiegen und das Gewicht eingeben"},
		{"compare.mass_not_entered", args(finding.Text("setup", "luggage"), finding.Mass("load", 10), finding.Share("as_drag", 0.034), finding.Share("corrected", 0.041)),
			"did the weight change with {setup} too? It was not entered. If it went up by {load}, the drag shown is {as_drag.1} too little, and the change would be {corrected.1}",
			"hat sich mit {setup} auch das Gewicht geändert? Es wurde nicht eingegeben. Bei {load} mehr ist der gezeigte Luftwiderstand {as_drag.1} zu klein, und die Änderung wäre {corrected.1}"},
	}
}

func ofEffect() []Entry {
	return []Entry{
		{"worth.no_mass", nil, "the mass of bike and rider is not given: weigh them as ridden and enter it",
			"die Masse von Maschine und Fahrer fehlt: fahrfertig wiegen und eingeben"},
		{"worth.no_density", nil, "the density of the air is not given: enter temperature and pressure",
			"die Luftdichte fehlt: Temperatur und Luftdruck eingeben"},
		{"worth.no_gravity", nil, "the acceleration of gravity is not given", "die Fallbeschleunigung fehlt"},
		{"worth.bad_cda", args(finding.Area("cda", -0.1)), "a drag area of {cda.3} is not possible: more coast-down pairs are needed",
			"eine Luftwiderstandsfläche von {cda.3} ist nicht möglich: es braucht mehr Ausrollpaare"},
		{"worth.no_curve", nil, "a top speed needs a power curve over at least two ascending speeds",
			"eine Höchstgeschwindigkeit braucht eine Leistungskurve über mindestens zwei steigende Geschwindigkeiten"},
		{"worth.curve_too_high", nil, "the power curve begins above the speed that it can hold: measure power from a lower speed on",
			"die Leistungskurve beginnt über der Geschwindigkeit, die sie halten kann: die Leistung ab einer niedrigeren Geschwindigkeit messen"},
		{"worth.speeds_alike", nil, "the two speeds need nearly the same power: measure consumption at speeds farther apart",
			"die beiden Geschwindigkeiten brauchen fast dieselbe Leistung: den Verbrauch bei weiter auseinanderliegenden messen"},
		{"worth.bad_burn", args(finding.Num("share", 1.8)), "the two consumptions would make fuel follow power by a share of {share.2}, which no engine does: check them",
			"nach den beiden Verbräuchen würde der Kraftstoff der Leistung mit einem Anteil von {share.2} folgen; so verhält sich kein Motor: bitte prüfen"},
	}
}

// ofBudgets names the parts of an uncertainty.
func ofBudgets() []Entry {
	return []Entry{
		{"budget.noise", nil, "noise: gusts, wind, receiver and road, as the runs show them", "Rauschen: Böen, Wind, Empfänger und Straße, wie die Läufe sie zeigen"},
		{"budget.mass", nil, "mass as entered", "Masse wie eingegeben"},
		{"budget.air", nil, "density of the air", "Luftdichte"},
		{"budget.growth_square", nil, "assumed: rolling resistance growing with the square of the speed", "Annahme: Rollwiderstand, der mit dem Quadrat der Geschwindigkeit wächst"},
		{"budget.growth_linear", nil, "assumed: rolling resistance growing with speed", "Annahme: Rollwiderstand, der mit der Geschwindigkeit wächst"},
		{"budget.yaw", nil, "assumed: drag area in yawed flow", "Annahme: Luftwiderstandsfläche bei schräger Anströmung"},
		{"budget.air_across", nil, "assumed: air speed added by cross-wind", "Annahme: Luftgeschwindigkeit durch Seitenwind"},
		{"budget.sit_up", nil, "assumed: posture kept at low speed", "Annahme: gleiche Haltung bei langsamer Fahrt"},
		{"budget.cold_tyres", nil, "assumed: warm tyres", "Annahme: warme Reifen"},
		{"budget.valley", nil, "assumed: no dip in the road, without a barometer", "Annahme: keine Senke in der Straße, ohne Barometer"},
		{"budget.load_not_entered", nil, "mass of a setup that was not entered", "nicht eingegebene Masse eines Aufbaus"},
		{"budget.by_pulls", nil, "mass of a setup that the pulls show and nobody entered", "Masse eines Aufbaus, die sich bei Vollgas zeigt und nicht eingegeben wurde"},
		{"budget.tyres_alike", nil, "assumed: the same tyres roll alike", "Annahme: gleiche Reifen rollen gleich"},
		{"season.one_setup", nil, "a drag budget needs rides with two setups or more", "ein Widerstandsbudget braucht Fahrten mit zwei oder mehr Aufbauten"},
		{"season.no_base", args(finding.Text("setup", "stock")), `no ride has a setup "{setup}"`, "keine Fahrt hat einen Aufbau „{setup}“"},
		{"season.disagree", args(finding.Num("times", 1.6)),
			"the rides disagree by more than their ± explains, so every ± is {times.1} times as wide: a part changes what another costs, a setup was named wrongly, or something changed that nobody noted",
			"die Fahrten widersprechen sich stärker, als ihr ± erklärt, darum ist jedes ± {times.1}-mal so breit: ein Teil ändert, was ein anderes kostet, ein Aufbau ist falsch benannt, oder etwas hat sich geändert, das niemand notiert hat"},
		{"residual.opposite", args(finding.Wind("most", 0.2)),
			"in the two directions the residuals have opposite signs, up to {most.2}: the road or the wind along it, not the bike; it cancels between the two runs of a pair, and what is left of it is in the ±",
			"in den beiden Richtungen haben die Residuen entgegengesetztes Vorzeichen, bis {most.2}: die Straße oder der Wind längs davon, nicht die Maschine; das hebt sich zwischen den zwei Läufen eines Paars auf, der Rest steckt im ±"},
		{"residual.alike", args(finding.Wind("most", 0.2)),
			"in both directions the residuals are alike, up to {most.2}: the force depends on speed in a different way from the model, because of posture, tyres or drive; the part of the ± from assumptions allows for the usual causes",
			"in beiden Richtungen sind die Residuen gleich, bis {most.2}: die Kraft hängt anders vom Tempo ab, als das Modell sagt, durch Haltung, Reifen oder Antrieb; der angenommene Teil des ± deckt die üblichen Ursachen ab"},
		{"residual.none", args(finding.Wind("rms", 0.09)),
			"the residuals show nothing that the pairs have in common, neither by direction nor by speed; their root mean square is {rms.2}",
			"die Residuen zeigen nichts, was die Paare gemeinsam haben, weder nach Richtung noch nach Tempo; ihr quadratisches Mittel ist {rms.2}"},
		{"budget.days", nil, "what differs from day to day", "was sich von Tag zu Tag ändert"},
	}
}
